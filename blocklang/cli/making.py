"""Making one block's results: planned once, however many outputs are made of it; in this process or another."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from blocklang.cli.asked import Asked
from blocklang.cli.items import Item
from blocklang.cli.opening import open_block
from blocklang.cli.walking import Walk
from blocklang.cli.wanted import Wanted
from blocklang.diagnostics import Diagnostic, Severity, SourceText

if TYPE_CHECKING:
    from blocklang.calling import Made, MadeShare
    from blocklang.hooks import OutputFile, OutputOptions
    from blocklang.plan import SewingPlan

Tell = Callable[[str], None]


@dataclass(frozen=True, slots=True)
class Finished:
    """What was made of one block: an answer for each output, none when the block cannot be planned."""

    made: "tuple[Made, ...]"
    diagnostics: tuple[Diagnostic, ...]
    plan: "SewingPlan | None" = None


@dataclass(frozen=True, slots=True)
class Bench:
    """A place where blocks are worked on: a way along the route, and what was typed."""

    walk: Walk
    asked: Asked

    def make(self, item: Item, outputs: tuple[Wanted, ...], tell: Tell) -> Finished:
        """Plan a block and make the outputs of it."""
        from blocklang.calling import make_files

        tell(f"Planning {item.stem or item.file}")
        planned = self.walk.plan(item.file, self.asked.overrides(), self.asked.copies)
        if planned.plan is None:
            return Finished((), self._told(planned.diagnostics))
        made = []
        for one in outputs:
            tell(f"Making the {one.name} of {item.stem or item.file}")
            options = self.asked.options(one.form, one.settings, planned.plan.block.unit)
            made.append(make_files(one.output, planned.plan, options))
        return Finished(tuple(made), self._told(planned.diagnostics), planned.plan)

    def share(self, item: Item, one: Wanted) -> "MadeShare":
        """Have a block's share of a folder made; a block that cannot be read is left out."""
        from blocklang.calling import MadeShare, make_share

        source = open_block(item.file, self.walk.library)
        if not isinstance(source, SourceText):
            return MadeShare(None, self._told(source))
        drafted = self.walk.draft(item.file, self.asked.overrides())
        if drafted.block is None or _errors(drafted.diagnostics):
            return MadeShare(None, self._told(drafted.diagnostics))
        block = AtHand(self, item, source)
        made = make_share(one.output, block, self.asked.options(one.form, one.settings, drafted.block.unit))
        named = (replace(one, title=f"{one.title} of {item.stem}") for one in made.diagnostics)
        return MadeShare(made.share, self._told((*block.diagnostics, *named)))

    def _told(self, diagnostics: tuple[Diagnostic, ...]) -> tuple[Diagnostic, ...]:
        return self.walk.all_of(diagnostics)


@dataclass(slots=True)
class AtHand:
    """A block as an output that is a folder gets it."""

    bench: Bench
    item: Item
    source: SourceText
    diagnostics: list[Diagnostic] = field(default_factory=list)

    @property
    def name(self) -> str:
        """Return what its file is called, without .block."""
        return self.item.stem

    def plan(self, size: str = "") -> "SewingPlan | None":
        """Return its plan, at another size when one is given."""
        asked = self.bench.asked
        planned = self.bench.walk.plan(self.item.file, asked.overrides(size), asked.copies)
        # What another size only warns of stands in its plan; told here, it would drown what is wrong with the block.
        self.diagnostics += _errors(planned.diagnostics) if size else planned.diagnostics
        return planned.plan

    def make(self, output: str, plan: "SewingPlan", options: "OutputOptions") -> "tuple[OutputFile, ...]":
        """Return the files of another output; what it declines to make of this block is not told."""
        from blocklang.calling import make_files

        known = next((one for one in self.bench.walk.outputs() if one.name == output), None)
        if known is None:
            return ()
        made = make_files(known, plan, options)
        self.diagnostics += () if made.declined else made.diagnostics
        return made.files


def _errors(diagnostics: tuple[Diagnostic, ...]) -> tuple[Diagnostic, ...]:
    return tuple(one for one in diagnostics if one.severity is Severity.ERROR)
