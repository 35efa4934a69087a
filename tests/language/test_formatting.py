"""The one layout: fixed examples, and trees drafted at random that must come back as they were."""

import random

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from blocklang.diagnostics import SourceText
from blocklang.language import format_text, parse
from tests.language.drafting import ITEMS
from tests.language.printing import bare, statement
from tests.language.reading_blocks import LIBRARY, work_out

LIBRARY_FILES = sorted(LIBRARY.rglob("*.block"))


def laid_out(text: str) -> str:
    formatted, diagnostics = format_text(SourceText("test", text))
    assert formatted is not None, diagnostics
    return formatted


@pytest.mark.parametrize(
    ("text", "layout"),
    [
        ("", ""),
        ("\n\n\n", ""),
        ("#remark", "# remark\n"),
        ("#", "#\n"),
        ("\n\nsize   12in\n\n\n\nnote “sea” #here\n\n", 'size 12 in\n\nnote "sea"  # here\n'),
        ("size 12½ inches by 6°", "size 12 1/2 in by 6 deg\n"),
        ("let a=-b -c*(-2+-d)/sqrt(2)", "let a = -b - c * (-2 + -d) / sqrt (2)\n"),
        ("let a = sqrt ½", "let a = sqrt ½\n"),
        ("point p at 1 ,-2", "point p at 1, -2\n"),
        ("set in a between b,c and d", "set in a between b, c and d\n"),
        ("turn 8 about c\n\npoint p at q\n\nend", "turn 8 about c\n  point p at q\nend\n"),
        ("turn 8 about c\nturn 2 about c # in\n#deep\nend\nend", "turn 8 about c\n  turn 2 about c  # in\n    # deep\n  end\nend\n"),
        (
            "rows\na  bb . # x\nccc/d f( g , h )\n\"sea\" turn 90, k\\l\nend",
            'rows\n  a              bb      .  # x\n  ccc/d          f(g, h)\n  "sea" turn 90, k\\l\nend\n',
        ),
        (
            "fabric a b light #ABC\nfabric long as L bb dark #123456 \"T\"\n\nfabric x y light #000",
            'fabric a         b  light #abc\nfabric long as L bb dark  #123456 "T"\n\nfabric x y light #000\n',
        ),
    ],
)  # fmt: skip
def test_a_text_has_one_layout(text: str, layout: str) -> None:
    assert laid_out(text) == layout


def test_a_faulty_text_is_left_alone() -> None:
    formatted, diagnostics = format_text(SourceText("test", "pacth\n"))
    assert formatted is None
    assert [found.code for found in diagnostics] == ["unknown-line"]


@pytest.mark.parametrize("path", LIBRARY_FILES, ids=lambda path: path.stem)
def test_the_library_is_laid_out(path: object) -> None:
    text = path.read_text(encoding="utf-8")  # type: ignore[attr-defined]
    assert laid_out(text) == text


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(ITEMS, st.randoms(use_true_random=False))
def test_a_drafted_tree_comes_back_from_its_text(items: tuple[object, ...], chance: random.Random) -> None:
    text = untidied("\n".join(map(statement, items)), chance)
    tree = parse(SourceText("drafted", text)).tree
    assert tree is not None, (text, parse(SourceText("drafted", text)).diagnostics)
    assert bare(tree) == bare(items)
    layout = laid_out(text)
    again = parse(SourceText("laid out", layout)).tree
    assert again is not None
    assert bare(again) == bare(items)
    assert laid_out(layout) == layout
    assert [line.partition("# ")[2] for line in layout.splitlines() if "# why" in line] == ["why not"] * text.count(
        "# why"
    )


def untidied(text: str, chance: random.Random) -> str:
    """Add idle spaces, empty lines and remarks."""
    lines = []
    for line in text.splitlines():
        lines += [""] * chance.choice((0, 0, 0, 1, 3))
        lines.append(" " * chance.choice((0, 1, 5)) + line + chance.choice(("", "", " ", " # why not")))
    return "\n".join(lines) + chance.choice(("", "\n", "\n\n"))


@pytest.mark.parametrize("path", LIBRARY_FILES, ids=lambda path: path.stem)
def test_a_layout_draws_the_same_block(path: object) -> None:
    text = path.read_text(encoding="utf-8")  # type: ignore[attr-defined]
    untidy = untidied(text, random.Random(7))
    drawn, again = work_out(untidy)[0], work_out(laid_out(untidy))[0]
    assert drawn is not None and again is not None
    assert [(p.id, p.fabric, p.outline, p.stripes) for p in drawn.patches] == [
        (p.id, p.fabric, p.outline, p.stripes) for p in again.patches
    ]
