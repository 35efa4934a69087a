"""docs/making.md: every command on the page says what the page shows and writes what it says."""

import re
import signal
from pathlib import Path

import pytest

from tests.cli.conftest import GOOD
from tests.cli.test_make_watch import Watching

TEXT = (Path(__file__).parents[2] / "docs" / "making.md").read_text(encoding="utf-8")
SHOWN = re.findall(r"^```console\n\$ ([^\n]*)\n(.*?)^```$", TEXT, re.M | re.S)
WATCHED = [(words, said) for words, said in SHOWN if "--watch" in words]
MADE = [(words, said) for words, said in SHOWN if "--watch" not in words]


def test_the_page_shows_commands() -> None:
    assert (len(MADE), len(WATCHED)) == (4, 1)


@pytest.mark.parametrize(("words", "said"), MADE, ids=[words for words, _ in MADE])
def test_command_says_what_the_page_shows(command, folder, words, said) -> None:
    program, *arguments = words.split()
    ran = command(*arguments)
    assert program == "blocklang"
    assert (ran.out, ran.err) == ("", said)
    assert ran.code == (1 if "error: " in said else 0)
    assert all(Path(name).stat().st_size > 0 for name in re.findall(r"^Wrote (.*)$", said, re.M))


def test_watch_says_what_the_page_shows(folder) -> None:
    ((words, said),) = WATCHED
    block = folder / "harbour-steps.block"
    block.write_text(GOOD, encoding="utf-8")
    watch = Watching(folder, *words.removesuffix(" --watch").split()[2:])
    try:
        watch.wait_for("Watching for changes")
        block.write_text(GOOD.replace("size 9 in", "size 12 in"), encoding="utf-8")
        watch.wait_for("Wrote harbour-steps.svg", times=2)
    finally:
        code = watch.end(signal.SIGINT)
    assert ("".join(watch.said), code) == (said, 0)
