"""Files that mean harm: each is refused, or read, within two seconds of processor time and 500 MB, without a traceback."""

import json
import subprocess
import sys
from pathlib import Path

import pytest

from tests.language.reading_blocks import HEADING

SECONDS = 2.0
MEGABYTES = 500
RUN = """
import json, re, sys, time
from pathlib import Path
from blocklang.language import evaluate, parse, read_source
begun = time.process_time()
source = read_source(Path(sys.argv[1]))
found = source if isinstance(source, tuple) else ()
if not found:
    parsed = parse(source)
    found = parsed.diagnostics
    if parsed.tree is not None:
        found += evaluate(parsed.tree).diagnostics
spent = time.process_time() - begun
# what the process itself took at most: the figure of getrusage also counts its parent before the start
peak = int(re.search(r"VmHWM:\\s+(\\d+)", Path("/proc/self/status").read_text()).group(1)) / 1024
print(json.dumps([sorted({one.code for one in found}), spent, peak]))
"""

SQUARE = "patch p of fog at 0, 0 size 6\npatch q of deep at 0, 0 size 6\n"
HOSTILE = {
    "nested groups": ("turn 2 about centre\n" * 200_000, ["file-too-large"]),
    "nested groups in a small file": (HEADING + "turn 2 about centre\n" * 20_000 + "end\n" * 20_000, ["too-deep"]),
    "50 MB": ("# sea\n" * 9_000_000, ["file-too-large"]),
    "turn 1000000": (HEADING + "turn 1000000 about centre\npatch p of fog at 0, 0 size 1\nend\n", ["number-out-of-range"]),
    "groups that multiply": (HEADING + "turn 360 about centre\n" * 6 + SQUARE + "end\n" * 6, ["too-many-patches"]),
    "points that multiply": (HEADING + "turn 360 about centre\n" * 6 + "point m at 1, 1\n" + "end\n" * 6, ["too-many-points"]),
    "10^400": (HEADING + f"let x = 1{'0' * 400}\n" + SQUARE, ["number-too-long"]),
    "a power by multiplying": (HEADING + "let x = 999999\nlet y = x * x\nlet z = y * y\n" + SQUARE, ["number-too-large"]),
    "a million patches": (HEADING + "rows\n" + (" F" * 1000 + "\n") * 990 + "end\n", ["too-many-words"]),
    "brackets": (HEADING + f"let x = {'(' * 40_000}1{')' * 40_000}\n" + SQUARE, []),
    "minus after minus": (HEADING + f"let x = {'-' * 80_000}1\n" + SQUARE, ["too-deep"]),
    "a long sum": (HEADING + f"let x = {'1 + ' * 40_000}1\n" + SQUARE, ["too-deep"]),
    "root of root": (HEADING + f"let x = {'sqrt ' * 80_000}1\n" + SQUARE, ["too-deep"]),
    "a markup name": (HEADING + "fabric <script> accent dark #000000\n" + SQUARE, ["strange-character"]),
    "a hidden name": (HEADING + "fabric a\x1b]0;b\x07 accent dark #000000\n" + SQUARE, ["control-character"]),
    "a text that turns round": (HEADING + 'note "a\u202eb"\n' + SQUARE, ["control-character"]),
    "a long name": (HEADING + f"point {'a-' * 900_000}a at 0, 0\n" + SQUARE, ["name-too-long"]),
    "quotation marks": ('"' * 1_900_000, ["unknown-line"]),
    "open texts": ('"\n' * 900_000, ["text-not-closed"]),
    "many faulty lines": ("pacth\n" * 300_000, ["unknown-line"]),
    "many unknown names": (HEADING + "point p at z, 2\n" * 12_000, ["name-taken", "unknown-value"]),
    "one row": (HEADING + "rows\n" + " F" * 80_000 + "\nend\n", ["too-many-patches"]),
    "many corners": (HEADING + "patch p of fog through " + "sw " * 80_000 + "\n", ["too-many-corners"]),
    "many names": (HEADING + SQUARE + "sew first " + "p " * 80_000 + "as x\n", ["too-many-names"]),
    "many stripes": (HEADING + "patch p striped " + "fog " * 80_000 + "along sw se through sw se ne nw\n", ["too-many-stripes"]),
    "spaces": (HEADING + "let x = 1" + " " * 1_900_000 + "\n" + SQUARE, []),
    "empty lines": (HEADING + "\n" * 1_900_000, ["too-many-words"]),
}  # fmt: skip


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_file_is_dealt_with_in_time(name: str, tmp_path: Path) -> None:
    text, expected = HOSTILE[name]
    path = tmp_path / "hostile.block"
    path.write_text(text, encoding="utf-8")
    ran = subprocess.run([sys.executable, "-c", RUN, str(path)], capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stderr[-2000:]
    found, spent, peak = json.loads(ran.stdout)
    assert found == expected
    assert spent < SECONDS
    assert peak < MEGABYTES
