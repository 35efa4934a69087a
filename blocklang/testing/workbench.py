"""The workbench: plans the blocks of the library, and tries on them what a plugin offers."""

import time
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from importlib.metadata import EntryPoint
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, TypeVar

from blocklang import extensions, hooks
from blocklang.block import LengthUnit
from blocklang.cutting import Cutting
from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.hooks import Check, Output, OutputFile
from blocklang.plan import SewingPlan
from blocklang.testing.holding import hold
from blocklang.testing.planning import Planner, Wanted

if TYPE_CHECKING:
    from blocklang.cutting.methods import CuttingMethod
    from blocklang.language import Cell
    from blocklang.pressing.preferences import PressingPreference

Result = TypeVar("Result")


@dataclass(frozen=True, slots=True)
class Timed:
    """How long something took for a block."""

    what: str
    block: str
    seconds: float


@dataclass(slots=True)
class Workbench:
    """Plans blocks once each, and holds what plugins offer against them; `times` says how long everything took.

    Whatever does not hold is raised as `NotHeldError`; an exception of the plugin itself comes through as it is.
    """

    times: list[Timed] = field(default_factory=list)
    planner: Planner = field(default_factory=Planner)
    _plans: dict[tuple[Wanted, SourceText], SewingPlan] = field(default_factory=dict)
    _asked: dict[int, Wanted] = field(default_factory=dict)

    def blocks(self, *patterns: str) -> tuple[str, ...]:
        """Name the blocks of the library, all or those that fit one of the patterns such as `*star*`."""
        return self.planner.blocks(patterns)

    def plan(
        self,
        block: str | Path,
        *,
        size: str | None = None,
        copies: int = 1,
        unit: LengthUnit | None = None,
        techniques: tuple[str, ...] = (),
    ) -> SewingPlan:
        """Plan a block of the library by name, or a block file by path, as `blocklang plan` does."""
        wanted, source = Wanted(block, size, copies, unit, techniques), self.planner.source(block)
        if (wanted, source) not in self._plans:
            plan = self._timed("plan", str(block), lambda: self.planner.plan(wanted, source))
            self._plans[wanted, source], self._asked[id(plan)] = plan, wanted
        return self._plans[wanted, source]

    def plugin(self, module: ModuleType) -> None:
        """Load a module as blocklang loads a plugin, ask it for everything, and hold that nothing is wrong with it."""
        loaded = extensions.load_plugins([EntryPoint("tested", module.__name__, hooks.PROJECT)])
        asks: tuple[Callable[[extensions.Plugins], extensions.Offered[object]], ...] = (
            extensions.outputs, extensions.checks, extensions.cells, extensions.cutting_methods,
            extensions.pressing_preferences, extensions.library_folders,
        )  # type: ignore[assignment]  # fmt: skip
        offered = [ask(loaded) for ask in asks]
        said = [*loaded.diagnostics, *(one for each in offered for one in each.diagnostics)]
        hold(not said, " ".join(one.found for one in said))
        hold(any(each.items for each in offered), f"The module {module.__name__} offers nothing: has it `@hookimpl`?")

    def output(
        self,
        output: Output,
        plan: SewingPlan,
        *,
        honours: Sequence[str] = (),
        settings: Mapping[str, Sequence[str]] | None = None,
    ) -> tuple[OutputFile, ...]:
        """Make an output in every format twice, then with every option; return the files of its default format.

        `honours` names the options and settings that must make a difference for this block: paper, unit, copies,
        black_and_white, large_print, language, or a setting. `settings` gives values for settings that take any text.
        """
        from blocklang.testing.outputs import make_several, try_output

        asked = self._asked.get(id(plan))
        again = None if asked is None else lambda copies, unit: self._again(asked, copies, unit)

        def work() -> tuple[OutputFile, ...]:
            files = try_output(output, plan, again, honours, settings or {})
            make_several(output, (plan, plan))
            return files

        return self._timed(f"output {output.name}", _block_of(plan, asked), work)

    def folder(self, output: Output, blocks: Sequence[str]) -> tuple[OutputFile, ...]:
        """Make an output that is a whole folder of library blocks, and return its files."""
        from blocklang.testing.folders import BlockOnBench, try_folder

        at_hand = [BlockOnBench(name, self) for name in blocks]
        return self._timed(f"output {output.name}", f"{len(at_hand)} blocks", lambda: try_folder(output, at_hand))

    def check(self, check: Check, plan: SewingPlan) -> tuple[Diagnostic, ...]:
        """Run a check twice, and return what it says."""
        from blocklang.testing.techniques import try_check

        asked = self._asked.get(id(plan))
        return self._timed(f"check {check.name}", _block_of(plan, asked), lambda: try_check(check, plan))

    def cutting_method(self, method: "CuttingMethod", plan: SewingPlan) -> Cutting:
        """Cut a block with a method that is asked before all others, and return the cutting list."""
        from blocklang.testing.techniques import try_cutting_method

        asked = self._asked.get(id(plan))
        work: Callable[[], Cutting] = lambda: try_cutting_method(method, plan)  # noqa: E731
        return self._timed(f"cutting method {method.name}", _block_of(plan, asked), work)

    def pressing_preference(self, preference: "PressingPreference", plan: SewingPlan) -> tuple[float, ...]:
        """Weigh every seam of a block from both sides, and return the weights."""
        from blocklang.testing.techniques import try_pressing_preference

        return try_pressing_preference(preference, plan)

    def cell(self, cell: "Cell") -> None:
        """Draw a cell with its least, its usual and its greatest number, and hold that it fills its square."""
        from blocklang.testing.techniques import try_cell

        try_cell(cell)

    def _again(self, asked: Wanted, copies: int, unit: LengthUnit) -> SewingPlan:
        return self.plan(asked.block, size=asked.size, copies=copies, unit=unit, techniques=asked.techniques)

    def _timed(self, what: str, block: str, work: Callable[[], Result]) -> Result:
        started = time.perf_counter()
        result = work()
        self.times.append(Timed(what, block, time.perf_counter() - started))
        return result


def _block_of(plan: SewingPlan, asked: Wanted | None) -> str:
    return plan.block.name if asked is None else str(asked.block)
