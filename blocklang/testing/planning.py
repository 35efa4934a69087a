"""Planning blocks for tests as the commands plan them, with all plugins that are installed."""

from dataclasses import dataclass, field
from fnmatch import fnmatchcase
from pathlib import Path

from blocklang import extensions, route
from blocklang.block import LengthUnit
from blocklang.cutting.values import CuttingOptions, Rounding
from blocklang.diagnostics import SourceText
from blocklang.hooks import Output
from blocklang.language import Overrides
from blocklang.library import Library
from blocklang.plan import PlanOptions, SewingPlan
from blocklang.testing.holding import NotHeldError


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a plan is asked for: a block by name or path, and what is chosen about it."""

    block: str | Path
    size: str | None
    copies: int
    unit: LengthUnit | None
    techniques: tuple[str, ...]


@dataclass(slots=True)
class Planner:
    """Plans blocks; plugins are loaded once."""

    _plugins: extensions.Plugins | None = field(default=None)

    def blocks(self, patterns: tuple[str, ...]) -> tuple[str, ...]:
        """Name the blocks of the library, all or those that fit one of the patterns."""
        names = self._library().names()
        return tuple(name for name in names if not patterns or any(fnmatchcase(name, one) for one in patterns))

    def output(self, name: str) -> Output | None:
        """Return an output that is installed, by its name."""
        return next((one for one in extensions.outputs(self._loaded()).items if one.name == name), None)

    def source(self, block: str | Path) -> SourceText:
        """Return the text of a library block, or of a block file by path."""
        library = self._library()
        entry = library.entry(block) if isinstance(block, str) else None
        path = block if isinstance(block, Path) else entry.path if entry is not None else None
        if path is None:
            raise NotHeldError(f"The library has no block `{block}`.")
        read = library.read(path)
        if not isinstance(read, SourceText):
            raise NotHeldError(" ".join(one.found for one in read))
        return read

    def plan(self, wanted: Wanted, source: SourceText) -> SewingPlan:
        """Plan a block whose text has been read."""
        plugins = self._loaded()
        library = self._library(wanted.block.parent if isinstance(wanted.block, Path) else None)
        overrides = Overrides(wanted.size, (), wanted.unit)
        checked = route.check(route.draft(source, overrides, library, lambda: extensions.cells(plugins).items))
        unit = LengthUnit.INCH if checked.graph is None else checked.graph.block.unit
        planned = route.plan(checked, _options(wanted, unit), _techniques(plugins))
        if planned.plan is None:
            raise NotHeldError(f"{wanted.block}: " + " ".join(one.found for one in planned.diagnostics))
        return planned.plan

    def _library(self, home: Path | None = None) -> Library:
        return Library(home, more_folders=lambda: extensions.library_folders(self._loaded()).items)

    def _loaded(self) -> extensions.Plugins:
        if self._plugins is None:
            self._plugins = extensions.load_plugins()
        return self._plugins


def _options(wanted: Wanted, unit: LengthUnit) -> PlanOptions:
    rounding = Rounding.EIGHTHS if unit is LengthUnit.INCH else Rounding.MILLIMETRES
    return PlanOptions(CuttingOptions(copies=wanted.copies, rounding=rounding), wanted.techniques)


def _techniques(plugins: extensions.Plugins) -> route.Techniques:
    return route.Techniques(
        extensions.cutting_methods(plugins).items,
        extensions.pressing_preferences(plugins).items,
        extensions.checks(plugins).items,
    )
