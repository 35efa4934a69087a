"""What somebody at a terminal sees while `make` is at work: how far it has come and with what, and little else."""

import os
import pty
import re
import subprocess
import sys
from pathlib import Path

CONTROLS = re.compile(r"\x1b\[[0-9;?]*[A-Za-z]")


def at_a_terminal(folder: Path, *arguments: str, columns: int = 120) -> tuple[int, list[str]]:
    """Run a command at a terminal of its own, and return its exit code and every line that stood there for a moment."""
    ours, theirs = pty.openpty()
    environment = os.environ | {"TERM": "xterm", "COLUMNS": str(columns), "NO_COLOR": "1"}
    command = [sys.executable, "-m", "blocklang", "make", *arguments]
    process = subprocess.Popen(command, cwd=folder, env=environment, stdout=theirs, stderr=theirs, stdin=theirs)
    os.close(theirs)
    seen = b""
    while True:
        try:
            more = os.read(ours, 65536)
        except OSError:  # nobody holds the other end any more
            break
        if not more:
            break
        seen += more
    os.close(ours)
    lines = re.split(r"[\r\n]+", CONTROLS.sub("", seen.decode()))
    return process.wait(), [line.strip() for line in lines if line.strip()]


def test_bar_names_block_and_output_and_goes_away(good, folder) -> None:
    code, lines = at_a_terminal(folder, "diagram,cutting-list", "good.block", "-o", "class")
    assert code == 0
    assert any(re.search(r"0/2 Planning good \.\.\.$", line) for line in lines)
    assert any(re.search(r"0/2 Making the cutting-list of good \.\.\.$", line) for line in lines)
    assert any("2/2" in line for line in lines)
    assert lines[-1] == "Made 2 of 2 in class."
    assert not any("Wrote" in line for line in lines)


def test_messages_stand_whole_above_the_bar(bad, good, folder) -> None:
    code, lines = at_a_terminal(folder, "diagram", "bad.block", "good.block", "-o", "class", columns=40)
    assert code == 1
    assert "No fabric is called `deap`. Did you mean `deep`?" in lines  # wider than the terminal
    assert lines[-1] == "Made 1 of 2 in class; not made: diagram of bad."


def test_one_result_has_no_bar_and_is_named(good, folder) -> None:
    code, lines = at_a_terminal(folder, "diagram", "good.block", "-o", "good.svg")
    assert code == 0 and "Wrote good.svg" in lines
    assert any(line.endswith("Making the diagram of good ...") for line in lines)
    assert not any("0/1" in line for line in lines)
