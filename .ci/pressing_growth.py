"""Times the pressing on arrangements of growing size: consistent ones, contradictory lines, and fields of one block.

The arrangements are those of the tests. Times are of the processor, so that a busy machine changes them little.
"""

import gc
import math
import sys
import time
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent.parent))

from blocklang.assembly import Assembly
from blocklang.pressing import press
from tests.pressing.dissections import wishes
from tests.pressing.fields import block_of, field_text
from tests.pressing.sewing import sew_rows
from tests.support.blocks import grid
from tests.support.route import assembly_of

Arrangement = Callable[[int], Assembly]


def lines_in(share: float) -> Arrangement:
    """Return grids of a side in which a share of the seams has an author's line, toward one side or the other."""

    def arrange(side: int) -> Assembly:
        plain = sew_rows(grid(side, side), side, side)
        said = wishes(plain.graph, 1, round(share * len(plain.graph.seams)))
        return sew_rows(replace(plain.graph.block, wishes=said), side, side) if said else plain

    return arrange


def field(side: int) -> Assembly:
    """Return a square field of nine-patches."""
    return assembly_of(block_of(field_text("nine-patch", side)))


KINDS: tuple[tuple[str, Arrangement, tuple[int, ...]], ...] = (
    ("consistent", lines_in(0.0), (8, 23, 71)),
    ("5 % lines", lines_in(0.05), (8, 23, 32)),
    ("10 % lines", lines_in(0.1), (8, 23, 32)),
    ("nine-patches", field, (2, 5, 10)),
)


def print_pressing_growth() -> None:
    """Print one line an arrangement: seam segments, milliseconds, whether it is proven, and the exponent at the end."""
    print(f"{'pressing':<14}{'segments':>10}{'ms':>10}  proven")
    for name, arrange, sides in KINDS:
        measured = [_measure(name, arrange(side)) for side in sides]
        (fewer, shorter), (more, longer) = measured[-2:]
        print(f"{name:<14}{'exponent':>10}{math.log(longer / shorter) / math.log(more / fewer):>10.2f}")


def _measure(name: str, assembly: Assembly) -> tuple[int, float]:
    gc.collect()
    started = time.process_time()
    pressing = press(assembly)
    milliseconds = (time.process_time() - started) * 1000
    segments = len(pressing.directions)
    print(f"{name:<14}{segments:>10,}{milliseconds:>10.1f}  {'yes' if pressing.proven else 'no'}", flush=True)
    return segments, milliseconds


if __name__ == "__main__":
    print_pressing_growth()
