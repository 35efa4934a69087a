"""Times every stage on grids and stars of ever more patches, and says how fast each stage's time grows."""

import gc
import math
import time
from collections.abc import Callable
from typing import TypeVar

from blocklang_diagram import make_diagram

from blocklang.assembly import assemble
from blocklang.cutting import METHODS, CuttingOptions, cut
from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.graph import build_graph
from blocklang.hooks import OutputOptions
from blocklang.language import Overrides, evaluate, parse
from blocklang.library import Library
from blocklang.plan import make_plan
from blocklang.pressing import DEFAULTS, press

Value = TypeVar("Value")
Times = dict[str, float]

STAGES = ("parse", "evaluate", "graph", "assembly", "pressing", "cutting", "drawing")
SIDES = (3, 10, 32, 100)
STARS = (2, 5, 12, 35)  # diamonds along each side of a point
FEW_PATCHES = 2_000  # up to here a run is short enough to be repeated


def grid_text(side: int) -> str:
    """Return the block file of a grid of squares in two fabrics, by turns; every square is an inch."""
    rows = ("  " + " ".join("FD"[(row + column) % 2] for column in range(side)) for row in range(side))
    heading = f'block "Grid"\nlanguage 1\nsize {side} in\n'
    fabrics = "fabric fog as F background light #e8eef2\nfabric deep as D accent dark #1f3a5f\n"
    return f"{heading}{fabrics}rows\n" + "\n".join(rows) + "\nend\n"


def star_text(side: int) -> str:
    """Return the block file of an eight-pointed star; each point has `side` by `side` diamonds in two fabrics."""
    rows = ("    " + " ".join("TH"[(row + column) % 2] for column in range(side)) for row in range(side))
    fabrics = "fabric fog background light #e8eef2\nfabric tide as T star medium #4d8296\nfabric deep as H star dark #1f3a5f\n"
    points = (
        "let d = size / (2 + sqrt 2)\npoint c at centre\nturn 8 about c\n  point a from c by d toward 0 deg\n"
        "  point tip from a by d toward 45 deg\n  point b from c by d toward 45 deg\n  rows as ray in c a b\n"
    )
    ground = (
        "turn 4 about c\n  patch corner of fog through b.1 tip.1 ne tip.2\n"
        "  patch side of fog through a.1 tip.8 tip.1\nend\n"
    )
    heading = f'block "Star"\nlanguage 1\nsize {4 * side} in\n'
    return f"{heading}{fabrics}{points}" + "\n".join(rows) + f"\n  end\nend\n{ground}"


def stage_times(text: str) -> Times:
    """Return the milliseconds that every stage takes on one block."""
    times: Times = {}

    def timed(stage: str, work: Callable[[], Value]) -> Value:
        gc.collect()  # what the stage before left behind is not this one's work
        started = time.perf_counter()
        value = work()
        times[stage] = (time.perf_counter() - started) * 1000
        return value

    source = SourceText("grown.block", text)
    parsed = timed("parse", lambda: parse(source))
    tree = needed(parsed.tree, parsed.diagnostics)
    found = timed("evaluate", lambda: evaluate(tree, overrides=Overrides(), finder=Library(), more_cells=lambda: ()))
    block = needed(found.block, found.diagnostics)
    graphed = timed("graph", lambda: build_graph(block))
    graph = needed(graphed.graph, graphed.diagnostics)
    assembled = timed("assembly", lambda: assemble(graph))
    assembly = needed(assembled.assembly, assembled.diagnostics)
    pressing = timed("pressing", lambda: press(assembly, DEFAULTS))
    cutting = timed("cutting", lambda: cut(graph, CuttingOptions(), METHODS))
    plan = make_plan(assembly, pressing, cutting, ())
    timed("drawing", lambda: make_diagram(plan, OutputOptions("svg")))
    return times


def needed(value: Value | None, diagnostics: tuple[Diagnostic, ...]) -> Value:
    """Return a stage's value; a grid that a stage refuses ends the benchmark with what the stage said."""
    if value is None:
        raise SystemExit(f"a grid was refused: {diagnostics}")
    return value


def least_times(text: str, patches: int) -> Times:
    """Return the least milliseconds of every stage over the runs that a block of this size is given."""
    runs = [stage_times(text) for _ in range(3 if patches <= FEW_PATCHES else 1)]
    return {stage: min(run[stage] for run in runs) for stage in STAGES}


def exponent(fewer: int, shorter: float, more: int, longer: float) -> float:
    """Return the power of the number of patches that a time grows with between two sizes."""
    return math.log(longer / shorter) / math.log(more / fewer)


def print_growth() -> None:
    """Print one line a block, then the power that every stage grows with between the two largest of a kind."""
    stage_times(grid_text(SIDES[0]))  # once for the imports that wait for their first use
    _print_kind("grids", [(side * side, grid_text(side)) for side in SIDES])
    _print_kind("stars", [(8 * side * side + 8, star_text(side)) for side in STARS])


def _print_kind(kind: str, blocks: list[tuple[int, str]]) -> None:
    print(f"{kind:<10}" + "".join(f"{stage:>11}" for stage in STAGES) + "  ms")
    measured = []
    for patches, text in blocks:
        measured.append((patches, least_times(text, patches)))
        print(f"{patches:<10,}" + "".join(f"{measured[-1][1][stage]:>11.1f}" for stage in STAGES), flush=True)
    (few, short), (many, long) = measured[-2:]
    powers = (exponent(few, short[stage], many, long[stage]) for stage in STAGES)
    print(f"{'exponent':<10}" + "".join(f"{power:>11.2f}" for power in powers))
