"""`blocklang check` loads little and starts fast; a closed pipe is nobody's fault."""

import os
import resource
import subprocess
import sys

import pytest

HEAVY = (
    "cairosvg", "click", "coloraide", "difflib", "highspy", "importlib.metadata", "jinja2", "lark", "numpy", "pluggy",
    "rich", "shapely", "svgwrite", "typst", "blocklang.assembly.assemble", "blocklang.cutting", "blocklang.hooks",
    "blocklang.pressing", "blocklang.extensions",
)  # fmt: skip
#: `check` may take 120 ms where bare Python takes 11; both grow alike on a slower or busier machine.
MOST_TIMES_BARE = 120 / 11
RUNS = 12


def modules_of(*arguments: str) -> set[str]:
    command = ["blocklang", *arguments]
    code = f"import atexit, sys; atexit.register(lambda: print(*sys.modules)); sys.argv = {command!r}"
    code += "; from blocklang.cli import main; main()"
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    return set(ran.stdout.split())


def test_check_loads_nothing_heavy(good) -> None:
    assert modules_of("check", str(good)).isdisjoint(HEAVY)


def test_check_of_a_library_block_loads_nothing_heavy() -> None:
    assert modules_of("check", "nine-patch").isdisjoint(HEAVY)


@pytest.mark.parametrize("arguments", [("outputs",), ("--help",), ("library", "--help")])
def test_lists_load_no_solver_and_draw_nothing(arguments) -> None:
    drawing = {"cairosvg", "highspy", "numpy", "shapely", "svgwrite", "typst"}
    assert modules_of(*arguments).isdisjoint(drawing)


def least_seconds(environment: dict[str, str], *arguments: str) -> float:
    """Return the least processor time of many runs, which a busy machine disturbs less than the clock's."""
    best = float("inf")
    for _ in range(RUNS):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        subprocess.run([sys.executable, *arguments], env=environment, check=True, capture_output=True)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        best = min(best, after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime)
    return best


@pytest.mark.start_up
def test_check_starts_fast(good, tmp_path) -> None:
    # Compiled modules are kept, as they are wherever blocklang is installed.
    environment = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    environment["PYTHONPYCACHEPREFIX"] = str(tmp_path / "compiled")
    bare = least_seconds(environment, "-c", "pass")
    checked = least_seconds(environment, "-m", "blocklang", "check", str(good))
    assert checked <= MOST_TIMES_BARE * bare, f"{checked * 1000:.0f} ms, bare Python {bare * 1000:.0f} ms"


def test_reader_that_leaves_early_causes_no_complaint() -> None:
    command = f"{sys.executable} -m blocklang library | head -n 1; exit ${{PIPESTATUS[0]}}"
    ran = subprocess.run(["bash", "-c", command], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stderr) == (0, "")
    assert ran.stdout.count("\n") == 1


def test_full_disk_behind_standard_output_is_one_sentence() -> None:
    command = f"{sys.executable} -m blocklang library > /dev/full"
    ran = subprocess.run(["bash", "-c", command], capture_output=True, text=True, check=False)
    assert (ran.returncode, ran.stderr) == (2, "Standard output cannot be written: no space left on device.\n")
