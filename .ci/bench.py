"""Times the route on growing blocks, pressing, cutting plans, the library's blocks, and the start of `blocklang check`.

With names of blocks, those blocks are timed and the grids are left out.
"""

import subprocess
import sys
import time
from collections.abc import Callable
from typing import TypeVar

from cloth_bench import print_cutting_plans
from growth import print_growth
from pressing_growth import print_pressing_growth

from blocklang import route
from blocklang.cli.plugged import Plugged
from blocklang.cli.walking import Walk
from blocklang.language import Overrides
from blocklang.plan import PlanOptions

Value = TypeVar("Value")


def timed(work: Callable[[], Value]) -> tuple[Value, float]:
    """Return what some work gives, and its milliseconds."""
    started = time.perf_counter()
    value = work()
    return value, (time.perf_counter() - started) * 1000


def stages(name: str, walk: Walk, techniques: route.Techniques) -> tuple[float, float, float]:
    """Return the milliseconds of drafting, checking and planning one block."""
    drafted, drafting = timed(lambda: walk.draft(name, Overrides()))
    checked, checking = timed(lambda: route.check(drafted))
    _, planning = timed(lambda: route.plan(checked, PlanOptions(), techniques))
    return drafting, checking, planning


def start_up(*arguments: str, runs: int = 15) -> float:
    """Return the least milliseconds that a Python process takes from start to exit."""
    command = [sys.executable, *arguments]
    return min(timed(lambda: subprocess.run(command, check=False, capture_output=True))[1] for _ in range(runs))


def main() -> None:
    """Print the growth over the grids, one line a block, and the start-up times."""
    if not sys.argv[1:]:
        print_growth()
        print_pressing_growth()
        print_cutting_plans()
    walk, techniques = Walk(), Plugged().techniques()
    names = sys.argv[1:] or sorted(walk.library.everything())
    print(f"{'block':<32}{'draft':>10}{'check':>10}{'plan':>10}  ms")
    for name in names:
        print(f"{name:<32}" + "".join(f"{milliseconds:>10.1f}" for milliseconds in stages(name, walk, techniques)))
    print(f"bare Python, start to exit: {start_up('-c', 'pass'):.0f} ms")
    print(f"blocklang check nine-patch: {start_up('-m', 'blocklang', 'check', 'nine-patch'):.0f} ms")


if __name__ == "__main__":
    main()
