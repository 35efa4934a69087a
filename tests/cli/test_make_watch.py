"""`blocklang make --watch`: a real process, files saved in the ways of editors, and what is made and said of it."""

import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from blocklang.cli.asked import Asked, Errand
from blocklang.cli.plugged import Plugged
from blocklang.cli.wanted import Named
from blocklang.cli.watching import Watch
from blocklang.hooks import OutputFile
from tests.cli.conftest import GOOD
from tests.plugins.strangers import an_output

#: Seconds to wait for what should come within one or two; the machines that tests run on are busy.
PATIENCE = 60
PLACING = """\
block "Harbour Mat"
language 1
size 18 in
fabric fog  background light #e8eef2
fabric deep accent     dark  #1f3a5f
place "tide" as tide at 0, 0 size 18 in
"""


class Watching:
    """A watch that is running, and what it has said so far."""

    def __init__(self, folder: Path, *arguments: str) -> None:
        command = [sys.executable, "-u", "-m", "blocklang", "make", *arguments, "--watch"]
        self.process = subprocess.Popen(command, cwd=folder, stderr=subprocess.PIPE, stdout=subprocess.PIPE, text=True)
        self.said: list[str] = []
        self._reader = threading.Thread(target=self._read, daemon=True)
        self._reader.start()

    def _read(self) -> None:
        assert self.process.stderr is not None
        self.said.extend(iter(self.process.stderr.readline, ""))

    def wait_for(self, words: str, times: int = 1) -> None:
        """Wait until it has said something."""
        self.wait_until(lambda: "".join(self.said).count(words) >= times, words)

    def wait_until(self, condition: Callable[[], bool], what: str) -> None:
        until = time.monotonic() + PATIENCE
        while not condition():
            assert time.monotonic() < until and self.process.poll() is None, f"{what}, not: {''.join(self.said)}"
            time.sleep(0.05)

    def end(self, how: signal.Signals) -> int:
        self.process.send_signal(how)
        code = self.process.wait(PATIENCE)
        self._reader.join(PATIENCE)
        return code


@pytest.fixture
def watching(good, folder) -> Iterator[Callable[..., Watching]]:
    """Start watches, and leave none running."""
    started: list[Watching] = []

    def start(*arguments: str) -> Watching:
        started.append(Watching(folder, *arguments))
        started[-1].wait_for("Watching for changes; Ctrl-C ends.")
        return started[-1]

    yield start
    for one in started:
        one.process.kill()
        one.process.wait()


def test_list_follows_the_file_and_mistakes_are_waited_for(watching, good, folder) -> None:
    watch, listed = watching("cutting-list", "good.block", "-o", "good.txt"), folder / "good.txt"
    first = listed.read_bytes()

    good.write_text(GOOD.replace("size 9 in", "size 12 in"))
    watch.wait_for("good: finished 12 in instead of 9 in.")
    watch.wait_for("Wrote good.txt", times=2)
    second = listed.read_bytes()
    assert second != first

    good.write_text(GOOD[: len(GOOD) // 2])  # as a file is half-way through being saved
    watch.wait_for("good is made as soon as this is right:\nerror: ")
    assert listed.read_bytes() == second

    saved = folder / ".good.block.swap"  # as an editor saves that writes another file and renames it
    saved.write_text(GOOD.replace("  fog  deep fog\n", "  fog  fog/deep fog\n"))
    saved.replace(good)
    watch.wait_for("good: finished 9 in instead of 12 in; 1 patch more;")
    watch.wait_for("Wrote good.txt", times=3)
    assert listed.read_bytes() not in (first, second)

    good.unlink()
    watch.wait_for("There is no file `good.block`.")
    good.write_text(GOOD)
    watch.wait_for("good: 1 patch fewer;")
    watch.wait_until(lambda: listed.read_bytes() == first, "the first listed again")

    assert watch.end(signal.SIGINT) == 0
    assert "Traceback" not in "".join(watch.said) and watch.said[-1].startswith("Wrote")
    assert sorted(path.name for path in folder.iterdir()) == ["good.block", "good.txt"]


def test_placed_file_counts_as_part_of_the_block(watching, good, folder) -> None:
    (folder / "mat.block").write_text(PLACING)
    watch = watching("cutting-list,diagram", ".", "-o", "class")  # mat places a block that is not there yet
    watch.wait_for("mat is made as soon as this is right:")
    assert sorted(path.name for path in (folder / "class").iterdir()) == ["good-cutting-list.txt", "good-diagram.svg"]

    (folder / "tide.block").write_text(GOOD)
    watch.wait_for("Made 4 of 4 in class.")  # the new block and the one that was waiting for it
    before = (folder / "class" / "mat-diagram.svg").read_bytes()

    (folder / "tide.block").write_text(GOOD.replace("  deep fog  deep\nend", "  deep fog  fog/deep\nend"))
    watch.wait_for("mat (tide.block): 1 patch more")
    watch.wait_for("Wrote class/mat-diagram.svg", times=2)
    assert (folder / "class" / "mat-diagram.svg").read_bytes() != before
    assert "".join(watch.said).count("Wrote class/good-diagram.svg") == 1  # nothing in it changed

    assert watch.end(signal.SIGTERM) == 0


@pytest.fixture
def watch_here(monkeypatch, folder) -> Callable[..., Watch]:
    """Set up a watch in this process, which looks when it is told to."""
    (folder / "class").mkdir()

    def set_up(*files: str) -> Watch:
        output = an_output("names", make=lambda plan, options: (OutputFile("", plan.block.name.encode()),))
        return Watch(Errand(Asked(), "names", files, "class/"), Plugged(), (Named(output),))

    return set_up


def test_change_is_not_forgotten_while_another_file_is_away(watch_here, good, folder, capfd) -> None:
    marsh = good.with_name("marsh.block")
    marsh.write_text(GOOD)
    watch = watch_here("good.block", "marsh.block")
    watch.make_new()
    capfd.readouterr()
    good.write_text(GOOD.replace("Harbour Steps", "Harbour Stairs"))
    text = marsh.read_text()
    marsh.unlink()
    watch.make_new()
    assert capfd.readouterr().err.startswith("There is no file `marsh.block`.")
    marsh.write_text(text)
    watch.make_new()
    assert capfd.readouterr().err == "good: now called “Harbour Stairs”.\nWrote class/good.txt\n"
    assert (folder / "class" / "good.txt").read_bytes() == b"Harbour Stairs"


def test_file_that_is_saved_as_it_was_makes_nothing(watch_here, good, folder, capfd) -> None:
    watch = watch_here("good.block")
    watch.make_new()
    (folder / "class" / "good.txt").unlink()
    capfd.readouterr()
    good.write_text(GOOD)
    watch.make_new()
    watch.make_new()
    assert capfd.readouterr().err == ""
    assert list((folder / "class").iterdir()) == []


def test_file_that_somebody_else_wrote_meanwhile_is_left_as_it_is(watch_here, good, folder, capfd) -> None:
    (folder / "more").mkdir()
    (folder / "more" / "reed.block").write_text(GOOD)
    watch = watch_here("more", "good.block")
    watch.make_new()
    (folder / "class" / "sedge.txt").write_bytes(b"mine")
    (folder / "more" / "sedge.block").write_text(GOOD)
    watch.make_new()
    err = capfd.readouterr().err
    assert "`class/sedge.txt` is there already, and is left as it is; --force writes over it." in err
    assert (folder / "class" / "sedge.txt").read_bytes() == b"mine"


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("diagram", "-", "-o", "a.svg"), "Only files are watched"),
        (("diagram", "good.block", "-o", "-"), "Only files are watched"),
        (("diagram", "none.block", "-o", "a.svg"), "There is no file `none.block`."),
    ],
)
def test_what_cannot_be_watched_is_said_at_once(command, good, arguments, sentence) -> None:
    ran = command("make", *arguments, "--watch")
    assert ran.code == 2 and sentence in ran.err
