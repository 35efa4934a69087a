"""docs/highlighting: an engine that is not ours gives every word of every file the colour of what it counts as."""

import json
import re
import runpy
from functools import cache
from itertools import chain
from pathlib import Path

import pytest

from blocklang.diagnostics import SourceText
from blocklang.language.formatting import Recorder
from blocklang.language.scanning import Token
from blocklang.language.table import load_table

ROOT = Path(__file__).parents[2]
GRAMMAR = ROOT / "docs" / "highlighting" / "blocklang.tmLanguage.json"
PAGE = (ROOT / "docs" / "editing.md").read_text(encoding="utf-8")
WORDS = load_table().words
SIGNS = {name for sign, name in WORDS.items() if not sign.isalpha() and sign != "°"}
UNITS = {"INCH", "INCHES", "CM", "MM", "DEG", "DEGREE"}
FUNCTIONS = {"SQRT", "SIN", "COS", "TAN"}
KEYWORD = ("keyword.control.", "keyword.other.", "storage.type.")
EXPECTED = {
    "NAME": ("variable.other.", "entity.name.", "constant.language.", "support.function.cell."),
    "STRING": ("string.quoted.double.", "punctuation.definition.string."),
    "NUMBER": ("constant.numeric.",),
    "COLOUR": ("constant.other.color.",),
    "SIZE": ("keyword.control.", "keyword.other.", "variable.language."),
    "WIDTH": ("variable.language.",),
    "HEIGHT": ("variable.language.",),
    **dict.fromkeys(SIGNS, ("keyword.operator.", "punctuation.", "constant.language.empty.")),
    **dict.fromkeys(UNITS, ("keyword.other.unit.",)),
    **dict.fromkeys(FUNCTIONS, ("support.function.arithmetic.",)),
}


def files() -> dict[str, str]:
    """Return every block file of the library, the documents and the tests, by name."""
    paths = [*ROOT.glob("blocks/*/*.block"), *Path(__file__).parent.glob("*.block")]
    found = {path.name: path.read_text(encoding="utf-8") for path in sorted(paths)}
    for name in ("language.md", "tutorial.md", "cookbook.md"):
        text = (ROOT / "docs" / name).read_text(encoding="utf-8")
        for place, body in enumerate(re.findall(r"^```(?:block|step)\n(.*?)^```$", text, re.DOTALL | re.MULTILINE)):
            found[f"{name} {place}"] = body
    return found


FILES = files()


def read(text: str) -> Recorder:
    """Let the language read a text."""
    recorder = Recorder(SourceText("a.block", text), load_table())
    recorder.run()
    assert not recorder.diagnostics, [one.found for one in recorder.diagnostics]
    return recorder


@cache
def engine():
    from textmate_grammar.parsers.base import LanguageParser

    return LanguageParser(json.loads(GRAMMAR.read_text(encoding="utf-8")))


def colours(text: str) -> list[str]:
    """Return the innermost scope of every character."""
    starts = [0, *(place + 1 for place, letter in enumerate(text) if letter == "\n")]
    scopes = [""] * len(text)
    for (row, column), content, names in engine().parse_string(text).flatten():
        start = starts[row] + column
        assert text.startswith(content, start)
        scopes[start : start + len(content)] = [names[-1]] * len(content)
    return scopes


def wrong(text: str, scopes: list[str], token: Token) -> str:
    """Say what is wrong with the colour of a token; "" when it is right."""
    allowed = EXPECTED.get(token.kind, KEYWORD)
    if token.kind == "IN":
        allowed = ("keyword.other.",)
    got = set(scopes[token.start : token.end])
    fits = all(scope.startswith(allowed) for scope in got)
    return "" if fits else f"{token.text} in {text[: token.end].splitlines()[-1]!r} counts as {token.kind}, not {got}"


@pytest.mark.parametrize("name", FILES)
def test_every_word_has_the_colour_of_what_it_counts_as(name: str) -> None:
    text = FILES[name]
    recorder, scopes = read(text), colours(text)
    assert [fault for token in recorder.taken if (fault := wrong(text, scopes, token))] == []
    told = set(chain.from_iterable(range(token.start, token.end) for token in recorder.taken))
    remarks = set(chain.from_iterable(range(*place) for place in recorder.comments))
    assert {place for place, scope in enumerate(scopes) if scope.startswith("comment.line.")} == remarks
    assert {letter for place, letter in enumerate(text) if place not in told | remarks} <= set(" \t\n")
    for kind, scope in (("STRING", ("string.", "punctuation.definition.string.")), ("NUMBER", ("constant.numeric.",))):
        own = {place for token in recorder.taken if token.kind == kind for place in range(token.start, token.end)}
        assert {place for place, name in enumerate(scopes) if name.startswith(scope)} == own


def test_every_word_of_the_language_is_coloured_somewhere() -> None:
    """A new word fails here, until a rule and a line of every-word.block have it."""
    seen = {token.kind for text in FILES.values() for token in read(text).taken}
    assert {name for name in WORDS.values() if name not in seen} == set()


def test_the_file_is_made_from_the_rules() -> None:
    maker = runpy.run_path(str(ROOT / ".ci" / "highlighting.py"))
    assert maker["text"]() == GRAMMAR.read_text(encoding="utf-8")


def test_every_scope_begins_as_themes_expect() -> None:
    """The first words of the names that the format's convention lists."""
    names = re.findall(r'"name": "([a-z.-]+)"', GRAMMAR.read_text(encoding="utf-8"))
    first = ("comment", "constant", "entity", "keyword", "punctuation", "storage", "string", "support", "variable")
    assert all(name.startswith(first) and name.endswith(".blocklang") for name in names)
    assert len(names) > 50


@pytest.mark.parametrize(
    "text", ['note "half\n', "fabric x\n", "rows\n  F\n", "patch\n", "size 3-1/2 in # odd\n", "é\n"]
)
def test_a_line_that_is_half_typed_does_not_colour_the_next_ones(text: str) -> None:
    scopes = colours(f"{text}{'end' if 'rows' in text else ''}\nlet a = 2\n")
    assert scopes[-10:-7] == ["storage.type.blocklang"] * 3


def test_the_page_names_scopes_of_the_grammar() -> None:
    rows = re.findall(r"^\| (?!what|---).* \| (.*) \|$", PAGE, re.MULTILINE)
    told = [name for row in rows for name in re.findall(r"`([a-z]+\.[a-z.]+)`", row)]
    grammar = GRAMMAR.read_text(encoding="utf-8")
    assert len(told) >= 11
    assert [name for name in told if f'"{name}.' not in grammar] == []
    assert json.loads(grammar)["scopeName"] in PAGE
