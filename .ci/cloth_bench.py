"""Times cutting plans: orders of cloth, one hundred blocks of about fifty patches, and panels to fill."""

import sys
import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import TypeVar

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT))

from blocklang.cloth import ClothOptions, Turning, fill_panel, lay_out, plan_cloth  # noqa: E402
from tests.cloth import test_panels  # noqa: E402
from tests.cloth.orders import cloth_order  # noqa: E402
from tests.cloth.quilts import quilt  # noqa: E402

Value = TypeVar("Value")
#: Library blocks of 45 to 60 patches.
FIFTY = ("bears-paw", "kansas-troubles", "storm-at-sea")


def timed(work: Callable[[], Value]) -> tuple[Value, float]:
    """Return what some work gives, and the seconds of this process that it takes."""
    started = time.process_time()
    value = work()
    return value, time.process_time() - started


def orders(turning: bool) -> Iterator[str]:
    """Yield a line for fifteen orders of cloth, turned or not."""
    over, plain, seconds, proven = [], [], [], 0
    for seed in range(1, 16):
        order = cloth_order(seed, turning)
        layout, took = timed(lambda order=order: lay_out(order))
        over.append(layout.length / layout.bound - 1)
        plain.append(layout.length / float(layout.relaxed) - 1)
        seconds.append(took)
        proven += layout.proven
    yield (
        f"15 orders{', turned' if turning else ''}: {100 * sum(over) / 15:.2f} % over the bound, "
        f"{100 * sum(plain) / 15:.2f} % over the plain linear program, {proven} proven, "
        f"{sum(seconds) / 15:.2f} s each, {max(seconds):.2f} s the slowest"
    )


def hundred_blocks() -> Iterator[str]:
    """Yield a line for a hundred copies of each block of about fifty patches."""
    for name in FIFTY:
        block, cutting = quilt(name, 100)
        for turning in Turning:
            cloth, took = timed(lambda: plan_cloth(block, cutting, ClothOptions(turning=turning)))  # noqa: B023
            least = all(fabric.least_to_buy for fabric in cloth.fabrics)
            yield (
                f"100 x {name} ({len(block.patches)} patches), turned {turning}: {took:.2f} s, "
                f"{float(sum(fabric.length for fabric in cloth.fabrics))} in, "
                f"least to buy {'proven' if least else 'not proven'}"
            )


def panels() -> Iterator[str]:
    """Yield a line for the published panels, where they lie beside the project."""
    right, total = 0, 0.0
    for row in test_panels.OPTIMA:
        panel = test_panels.published(row["Path"])
        filled, took = timed(lambda panel=panel: fill_panel(panel))
        right += filled.worth == int(row["Best known solution value"])
        total += took
    yield f"panels: {right} of {len(test_panels.OPTIMA)} at the published optimum, {total:.1f} s together"


def print_cutting_plans() -> None:
    """Print everything; seconds are those of the process, not of the clock."""
    for lines in (panels(), orders(False), orders(True), hundred_blocks()):
        for line in lines:
            print(line, flush=True)


if __name__ == "__main__":
    print_cutting_plans()
