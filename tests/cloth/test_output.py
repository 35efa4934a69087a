"""The output `cutting-plan` in its formats."""

import re
from dataclasses import replace
from fractions import Fraction
from io import BytesIO
from xml.etree import ElementTree

import pytest
from blocklang_cutting_plan import blocklang_outputs, words
from blocklang_cutting_plan.contents import cloth_of
from blocklang_drawing import cut_lines
from pypdf import PdfReader

from blocklang.block import LengthUnit
from blocklang.cutting import CuttingOptions, Lay, cut, describe_yards
from blocklang.hooks import CannotMakeError, OutputOptions, Paper
from blocklang.plan import SewingPlan
from tests.sheets.plans import NAMES, named_plan

(OUTPUT,) = blocklang_outputs()
LETTER, A4 = (612, 792), (595, 842)


def made(plan: SewingPlan, form: str = "text", **options: object) -> bytes:
    """Return the one file of the output."""
    (file,) = OUTPUT.make(plan, OutputOptions(format=form, **options))
    assert file.name == ""
    return file.data


def of_twenty(name: str) -> SewingPlan:
    """Return a plan with what is cut for twenty blocks."""
    plan = named_plan(name)
    return replace(plan, cutting=cut(plan.graph, CuttingOptions(copies=20)))


@pytest.mark.parametrize("name", NAMES)
def test_the_text_tells_every_strip_and_every_piece(name: str) -> None:
    plan = of_twenty(name)
    text = " ".join(made(plan).decode().split())
    for fabric in cloth_of(plan, OutputOptions("text")).fabrics:
        assert f"buy {describe_yards(fabric.yards)}" in text
        for strip in fabric.strips:
            assert f"{words.numbers(strip)}, {words.wide(strip, LengthUnit.INCH)}" in text
    for piece in plan.cutting.pieces:
        assert piece.strip_set is not None or f"{piece.name}. " in text


def test_no_line_of_the_text_is_wider_than_a_terminal() -> None:
    assert max(map(len, made(of_twenty("striped-star")).decode().splitlines())) <= 78


@pytest.mark.parametrize(("paper", "size"), [(Paper.LETTER, LETTER), (Paper.A4, A4)])
def test_pages_are_of_the_paper_that_was_asked_for(paper: Paper, size: tuple[int, int]) -> None:
    pages = PdfReader(BytesIO(made(of_twenty("star"), "pdf", paper=paper))).pages
    for page in pages:
        assert (round(float(page.mediabox.width)), round(float(page.mediabox.height))) == size
    told = " ".join(" ".join(page.extract_text() for page in pages).split())
    assert words.BLADE in told
    for fabric in cloth_of(of_twenty("star"), OutputOptions("pdf")).fabrics:
        assert f"Buy {describe_yards(fabric.yards)}" in told


@pytest.mark.parametrize("form", OUTPUT.formats)
def test_the_same_bytes_every_time(form: str) -> None:
    plan = of_twenty("striped-star")
    assert made(plan, form) == made(plan, form)


@pytest.mark.parametrize("name", NAMES)
def test_the_drawing_stays_inside_and_its_type_can_be_read(name: str) -> None:
    root = ElementTree.fromstring(made(of_twenty(name), "svg", black_and_white=True))
    sizes = [float(text.attrib["font-size"]) for text in root.iter("{http://www.w3.org/2000/svg}text")]
    assert min(sizes) >= 8
    wide = float(root.attrib["viewBox"].split()[2])
    for inner in root.iter("{http://www.w3.org/2000/svg}svg"):
        if inner is not root:
            assert float(inner.attrib["x"]) + float(inner.attrib["width"]) <= wide


@pytest.mark.parametrize("name", ["star", "flower", "striped-star", "pinwheel"])
def test_cuts_stay_inside_what_they_take(name: str) -> None:
    plan = of_twenty(name)
    for fabric in cloth_of(plan, OutputOptions("svg")).fabrics:
        for strip in fabric.strips:
            for each in strip.cuts:
                lines = list(
                    cut_lines(
                        plan.cutting.pieces[each.piece],
                        each.count,
                        float(each.width),
                        float(each.length),
                        mirrored=each.mirrored,
                    )
                )
                places = [place for line in lines for place in (line.start, line.end)]
                assert max(x for x, _ in places) <= float(each.length) + 1e-6
                assert min(x for x, _ in places) >= -1e-6
                assert {y for _, y in places} == {0.0, float(each.width)}
                assert sum(not line.later for line in lines) == each.count + 1


def test_trapezoids_turn_to_and_fro() -> None:
    from blocklang.cutting import Measure

    (piece,) = (p for p in of_twenty("four-patch").cutting.pieces if p.fabric == "fog")
    high, long = Measure(2.0, Fraction(2)), Measure(6.0, Fraction(6))
    for lay, length, ends in ((Lay.BOTH_ENDS, 14, 14.0), (Lay.ONE_END, 16, 16.0)):
        trapezoid = replace(piece, lay=lay, cut=(high, long), angle=45.0)
        lines = list(cut_lines(trapezoid, 3, 2.0, length))
        assert len(lines) == 4
        longest = [
            max(abs(b.start[0] - a.start[0]), abs(b.end[0] - a.end[0])) for a, b in zip(lines, lines[1:], strict=False)
        ]
        assert longest == pytest.approx([6.0, 6.0, 6.0]), lay
        assert max(max(line.start[0], line.end[0]) for line in lines) == pytest.approx(ends)


@pytest.mark.parametrize(
    ("setting", "says"),
    [
        (("shrinkage", "lots"), "For shrinkage write a number"),
        (("shrinkage", "90"), "For shrinkage write a number"),
        (("reserve", "1/0"), "For reserve write a number"),
        (("reserve", "-1"), "For reserve write a number"),
        (("reserve", "9" * 5000), "For reserve write a number"),
    ],
)
def test_a_setting_that_means_nothing_is_answered_plainly(setting: tuple[str, str], says: str) -> None:
    with pytest.raises(CannotMakeError, match=re.escape(says)):
        made(named_plan("star"), settings=(setting,))


def test_settings_change_what_is_bought_and_are_told() -> None:
    plan = of_twenty("star")
    settings = (("shrinkage", "5"), ("reserve", "4 1/2"))
    text = " ".join(made(plan, settings=settings).decode().split())
    assert "What to buy includes 4 1/2 in to spare and what 5 % of shrinking takes" in text


def test_in_centimetres_cloth_is_bought_by_five_of_them() -> None:
    text = made(of_twenty("star"), unit=LengthUnit.CENTIMETRE).decode()
    bought = [int(found) for found in re.findall(r"buy (\d+) cm", text)]
    assert bought and all(length % 5 == 0 for length in bought)
    assert " in " not in " ".join(re.findall(r"strips take [^;]*", text)).replace(" in no piece", "")
