"""The cutting list in its formats."""

import csv
import io
import json
from dataclasses import replace
from fractions import Fraction

import pytest
from blocklang_cutting_list import blocklang_outputs
from blocklang_cutting_methods import blocklang_cutting_methods
from pypdf import PdfReader

from blocklang.block import LengthUnit
from blocklang.cutting import (
    CuttingOptions,
    FabricNeed,
    cut,
    describe_need,
    describe_offer,
    describe_piece,
    describe_yards,
    with_offers,
)
from blocklang.hooks import OutputOptions, Paper
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
    ("inches", "shrinkage", "said"),
    [(3.5, 0, "10 cm"), (4, 0, "20 cm"), (39, 0, "1 m"), (39.4, 0, "1.1 m"), (35.4, Fraction(1, 10), "1 m")],
)
def test_cloth_is_bought_by_ten_centimetres_where_lengths_are_metric(inches, shrinkage, said):
    need = FabricNeed("fog", (), inches, 0.0, Fraction(1))
    assert describe_need(need, CuttingOptions(shrinkage=Fraction(shrinkage)), LengthUnit.CENTIMETRE) == said
    assert describe_need(need, CuttingOptions(), LengthUnit.INCH) == "1 yard"


@pytest.mark.parametrize(
    ("amount", "said"),
    [(Fraction(1, 8), "1/8 yard"), (Fraction(1), "1 yard"), (Fraction(9, 8), "1 1/8 yards"), (Fraction(0), "0 yard")],
)
def test_yards(amount, said):
    assert describe_yards(amount) == said


def table(plan, **options):
    return list(csv.DictReader(io.StringIO(made(plan, format="csv", **options), newline="")))


@pytest.mark.parametrize("name", NAMES)
def test_table_counts_every_patch_and_every_yard(name):
    plan = named_plan(name)
    rows = table(plan)
    assert {row["line"] for row in rows} <= {"buy", "strip", "piece", "strip set", "other way"}
    assert sum(int(row["count"]) for row in rows if row["line"] == "piece") == len(plan.block.patches)
    assert [Fraction(row["yards"]) for row in rows if row["line"] == "buy"] == [n.yards for n in plan.cutting.needs]
    widths = {float(width.shown) for need in plan.cutting.needs for width, _ in need.strips}
    assert {float(row["width"]) for row in rows if row["line"] == "strip"} == {round(width, 3) for width in widths}


FORMULAS = ["=1+1", "+cmd", "-2", "@SUM(A1)", "\t=1", "\r=1", "|calc", "%0A=1"]


@pytest.mark.parametrize("text", FORMULAS)
def test_no_cell_of_the_table_is_a_formula(text):
    plan = named_plan("four-patch")
    cutting = replace(plan.cutting, pieces=tuple(replace(piece, name=text) for piece in plan.cutting.pieces))
    rows = table(replace(plan, cutting=cutting))
    named = [row["name"] for row in rows if row["line"] == "piece"]
    assert named
    assert all(name.startswith("'") and name.isprintable() for name in named)
    assert not any(cell.startswith(tuple("=+-@")) for row in rows for cell in row.values())


@pytest.mark.parametrize("paper", [Paper.LETTER, Paper.A4])
@pytest.mark.parametrize("name", ["star", "striped-star", "path"])
def test_pages_hold_every_piece_in_readable_type(name, paper):
    plan = named_plan(name)
    (file,) = OUTPUT.make(plan, OutputOptions("pdf", paper=paper, black_and_white=True))
    pages = PdfReader(io.BytesIO(file.data)).pages
    sizes = []
    for page in pages:
        assert tuple(map(round, page.mediabox[2:])) == ((612, 792) if paper is Paper.LETTER else (595, 842))
        page.extract_text(visitor_text=lambda text, _cm, _tm, _font, size: sizes.append(size) if text.strip() else None)
    assert min(sizes) >= 8
    flat = "".join("".join(page.extract_text().split()) for page in pages)
    for piece in plan.cutting.pieces:
        assert "".join(f"{piece.name}: {describe_piece(piece)}".split()) in flat
    assert file.data == OUTPUT.make(plan, OutputOptions("pdf", paper=paper, black_and_white=True))[0].data


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_stay_words_on_paper(text):
    plan = named_plan("four-patch")
    fabrics = tuple(replace(fabric, title=text, role=text) for fabric in plan.block.fabrics)
    (file,) = OUTPUT.make(replace(plan, block=replace(plan.block, fabrics=fabrics)), OutputOptions("pdf"))
    assert len(PdfReader(io.BytesIO(file.data)).pages) >= 1


def test_what_a_size_comes_out_at_stands_beside_it():
    text = " ".join(made(named_plan("star"), format="text").split())
    assert "Cut 4 squares 4 1/8 in. Exactly 4.015 in." in text
    assert "cut 8 at 45 degrees, 3 in apart. Exactly 2.985 in." in text
    metric = " ".join(made(named_plan("star"), format="text", unit=LengthUnit.MILLIMETRE).split())
    assert "Exactly 102 mm." in metric


def test_other_ways_are_told_in_every_format():
    plan = named_plan("pinwheel")
    offered = with_offers(plan.cutting, plan.assembly, blocklang_cutting_methods())
    assert len(offered.offers) >= 2
    plan = replace(plan, cutting=offered)
    flat = " ".join(made(plan, format="text").split())
    page = " ".join("".join(read(made(plan, format="html").encode()).text).split())
    (file,) = OUTPUT.make(plan, OutputOptions("pdf"))
    paper = "".join("".join(page.extract_text().split()) for page in PdfReader(io.BytesIO(file.data)).pages)
    data = json.loads(made(plan, format="json"))
    assert [way["method"] for way in data["other_ways"]] == [offer.method for offer in offered.offers]
    assert {row["name"] for row in table(plan) if row["line"] == "other way"} == {o.title for o in offered.offers}
    for offer in offered.offers:
        for sentence in (offer.title, *describe_offer(offer)):
            assert sentence in flat
            assert sentence in page
            assert "".join(sentence.split()) in paper
