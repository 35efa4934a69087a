"""docs/tutorial.md: every block in it is right and tidy, and every command says what the page shows."""

import re
from pathlib import Path

import pytest

from blocklang import route
from blocklang.cli.choices import overrides_from
from blocklang.cli.walking import Walk
from blocklang.diagnostics import SourceText, render_long
from blocklang.language import format_text

TEXT = (Path(__file__).parents[2] / "docs" / "tutorial.md").read_text(encoding="utf-8")
FENCES = re.findall(r"^```(\w+)\n(.*?)^```$", TEXT, re.DOTALL | re.MULTILINE)
SAVED = re.findall(
    r"`([\w-]+\.block)`[^`\n]*(?:`[\w-]+\.block`:)?\n\n```(block|mistake)\n(.*?)^```$", TEXT, re.S | re.M
)
BLOCKS = [(name, text) for name, kind, text in SAVED if kind == "block"]
((MISTAKE, WRONG),) = ((name, text) for name, kind, text in SAVED if kind == "mistake")
SHOWN = [
    shown
    for kind, body in FENCES
    if kind == "console"
    for shown in re.findall(r"^\$ (.*)\n((?:(?!\$ ).*\n)*)", body, re.M)
]


@pytest.fixture
def typed(folder) -> None:
    """Type in every block of the page."""
    for name, _, text in SAVED:
        (folder / name).write_text(text, encoding="utf-8")


def test_every_example_is_of_a_kind_that_is_run() -> None:
    assert {kind for kind, _ in FENCES} == {"block", "mistake", "console"}
    assert len(SAVED) == sum(kind != "console" for kind, _ in FENCES)


@pytest.mark.parametrize(("name", "text"), BLOCKS, ids=[name for name, _ in BLOCKS])
def test_every_block_is_right_and_can_be_sewn(typed, name, text) -> None:
    planned = Walk().plan(name, overrides_from(None, ()), 1)
    assert planned.diagnostics == ()
    assert planned.plan is not None


@pytest.mark.parametrize("text", [text for _, _, text in SAVED], ids=[name for name, _, _ in SAVED])
def test_every_block_is_tidy(text) -> None:
    formatted, _ = format_text(SourceText("tutorial.block", text))
    assert formatted == text


def test_the_mistake_gets_the_message_that_is_shown(typed) -> None:
    (diagnostic,) = Walk().check(MISTAKE, overrides_from(None, ())).diagnostics
    (message,) = (said for words, said in SHOWN if MISTAKE in words)
    assert route.has_errors((diagnostic,))
    assert render_long((diagnostic,)).strip() == message.strip()


@pytest.mark.parametrize(("words", "said"), SHOWN, ids=[words for words, _ in SHOWN])
def test_every_command_says_what_the_page_shows(command, typed, words, said) -> None:
    program, *arguments = words.split()
    ran = command(*arguments)
    assert program == "blocklang"
    assert (ran.out + ran.err).strip() == said.strip()
    assert ran.code == (1 if MISTAKE in words else 0)
    for made in re.findall(r"^Wrote (.*)$", said, re.MULTILINE):
        assert Path(made).stat().st_size > 0


@pytest.mark.parametrize("words", sorted(set(re.findall(r"`blocklang ((?:plan|format|library)[^`]*)`", TEXT))))
def test_every_command_in_a_sentence_works(command, typed, words) -> None:
    assert command(*words.split()).code == 0
