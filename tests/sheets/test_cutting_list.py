"""The cutting list in its three formats."""

import json
from dataclasses import replace
from fractions import Fraction

import pytest
from blocklang_cutting_list import blocklang_outputs, words

from blocklang.block import LengthUnit
from blocklang.cutting import CuttingOptions, cut, describe_piece
from blocklang.hooks import OutputOptions
from tests.sheets.plans import NAMES, named_plan
from tests.sheets.test_sewing_sheet import HOSTILE, in_our_words, read

(OUTPUT,) = blocklang_outputs()


def made(plan, **options):
    (file,) = OUTPUT.make(plan, OutputOptions(**options))
    assert file.name == ""
    return file.data.decode()


@pytest.mark.parametrize("name", ["four-patch", "striped-star"])
def test_text(name, snapshot):
    assert made(in_our_words(named_plan(name)), format="text") == snapshot


@pytest.mark.parametrize("name", NAMES)
def test_every_piece_is_told_once_in_every_format(name):
    plan = named_plan(name)
    flat = " ".join(made(plan, format="text").split())
    page = " ".join("".join(read(made(plan, format="html").encode()).text).split())
    for piece in plan.cutting.pieces:
        sentence = f"{piece.name}: {describe_piece(piece, LengthUnit.INCH)}"
        assert sentence in flat
        assert sentence in page


@pytest.mark.parametrize("name", NAMES)
def test_json_holds_every_patch_once(name):
    plan = named_plan(name)
    data = json.loads(made(plan, format="json"))
    assert data["schema"] == "blocklang.cutting-list/1"
    assert sorted(patch for piece in data["pieces"] for patch in piece["patches"]) == sorted(
        p.id for p in plan.block.patches
    )
    for piece in data["pieces"]:
        assert all(float(Fraction(side["shown"])) >= side["exact"] - 0.001 for side in piece["cut"])


@pytest.mark.parametrize("name", NAMES)
def test_text_fits_a_terminal(name):
    assert max(map(len, made(named_plan(name), format="text").splitlines())) <= 78


def test_copies_come_from_the_plan():
    plan = named_plan("star")
    many = replace(plan, cutting=cut(plan.graph, CuttingOptions(copies=20)))
    text = made(many, format="text")
    assert "For 20 blocks, from fabric 40 in wide" in text
    assert "corner: Cut 80 squares" in text


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_stay_words(text):
    plan = named_plan("four-patch")
    fabrics = tuple(replace(fabric, title=text, role=text) for fabric in plan.block.fabrics)
    hostile = replace(plan, block=replace(plan.block, name=text, fabrics=fabrics))
    assert "script" not in read(made(hostile, format="html").encode()).tags
    assert "\x00" not in made(hostile, format="text")
    assert json.loads(made(hostile, format="json"))["block"] == text


@pytest.mark.parametrize(
    ("amount", "said"),
    [(Fraction(1, 8), "1/8 yard"), (Fraction(1), "1 yard"), (Fraction(9, 8), "1 1/8 yards"), (Fraction(0), "0 yard")],
)
def test_yards(amount, said):
    assert words.yards(amount) == said
