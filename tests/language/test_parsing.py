"""The parser: held against lark's own, and made to go on after mistakes."""

import random
import re

import pytest
from lark import Lark

from blocklang.diagnostics import SourceText
from blocklang.language import parse
from blocklang.language.table import load_table
from blocklang.language.table_making import GRAMMAR, TABLE, table_text
from tests.language.reading_blocks import LIBRARY

TEXTS = {path.stem: path.read_text(encoding="utf-8") for path in sorted(LIBRARY.rglob("*.block"))}


def test_the_table_is_made_from_the_grammar() -> None:
    assert TABLE.read_text(encoding="utf-8") == table_text()


@pytest.fixture(scope="module")
def lark() -> Lark:
    return Lark(GRAMMAR.read_text(encoding="utf-8"), parser="lalr", start="file")


@pytest.mark.parametrize("name", TEXTS)
def test_lark_reads_the_library_as_we_do(name: str, lark: Lark) -> None:
    text = "\n".join(line for line in TEXTS[name].splitlines() if line.strip() and not line.startswith("#")) + "\n"
    items = lark.parse(text).children
    parsed = parse(SourceText(name, TEXTS[name]))
    assert parsed.tree is not None
    assert len(items) == len(parsed.tree.items)


@pytest.mark.parametrize(
    ("text", "lines"),
    [
        ("pacth\npoint\npoint a at\n", [1, 2, 3]),
        ("turn 8 abut c\n  pacth\nend\n", [1, 2]),
        ("turn 8 about c\n  pacth\nend\n", [2]),
        ("rows 1 2 by\n  a / / b\nend\nspin x\n", [1, 4]),
        ("rows\n  a / / b\n  a b\nend\n", [2]),
        ("cut\n  anything goes here\nend\n", [1]),
        ("turn 2 about c\nend end\nend\n", [2, 3]),
        ("turn 2 about c\n  mirror across a b\nend\n", [1]),
        ("end\nend\n", [1, 2]),
        ("point a at 3 +", [1]),
    ],
)
def test_every_faulty_line_is_reported_once(text: str, lines: list[int]) -> None:
    parsed = parse(SourceText("test", text))
    assert parsed.tree is None
    assert sorted(found.span.position()[0] for found in parsed.diagnostics if found.span) == lines


@pytest.mark.parametrize("text", ["", "\n\n", "# nothing\n", "# nothing", "   \t \n"])
def test_a_file_may_be_empty(text: str) -> None:
    parsed = parse(SourceText("test", text))
    assert parsed.tree is not None
    assert parsed.tree.items == ()


def test_a_colour_is_no_remark_and_a_remark_is_no_colour() -> None:
    text = (
        'fabric fog background light #abc # the sea\nfabric deep accent dark #123456 "Deep"# more\nnote "a # b" #abc\n'
    )
    tree = parse(SourceText("test", text)).tree
    assert tree is not None
    assert [getattr(item, "colour", item[1]).text for item in tree.items] == ["#abc", "#123456", "a # b"]  # type: ignore[union-attr]  # fmt: skip


def test_no_message_shows_the_names_of_the_parser() -> None:
    kinds = {
        *load_table().words.values(),
        "_NL",
        "$END",
        "NAME",
        "NUMBER",
        "STRING",
        "COLOUR",
        "BAD",
        "STRANGE",
        "HASH",
    }
    rng = random.Random(3)
    words = " ".join(TEXTS.values()).split()
    for _ in range(300):
        line = " ".join(rng.choices(words, k=rng.randint(1, 6)))
        for found in parse(SourceText("test", line)).diagnostics:
            said = f"{found.title} {found.found} {found.advice}".replace(f"`{line}`", "")
            assert not kinds & set(re.findall(r"(?<![\w`])[A-Z_$]{3,}", said)), said
