"""Stock as it is typed, and what the output `cutting-plan` says and draws of it."""

import re
from fractions import Fraction
from xml.etree import ElementTree

import pytest
from blocklang_cutting_plan.stock_setting import EXAMPLE, read_stock

from blocklang.block import LengthUnit
from blocklang.cloth import Precut, Stock
from blocklang.hooks import CannotMakeError
from tests.cloth.test_output import made, of_twenty

FABRICS = of_twenty("star").block.fabrics
FIRST, SECOND = (fabric.id for fabric in FABRICS[:2])
USABLE = Fraction(40)


def stock(text: str) -> str:
    """Return a setting for the first two fabrics of the star, written A and B."""
    return re.sub(r"\bB\b", SECOND, re.sub(r"\bA\b", FIRST, text))


def test_what_is_typed_is_read() -> None:
    read = read_stock(stock("A: 4 fat quarters, 6 strips 2 1/2 in; B: 12 squares 5 in"), FABRICS, USABLE)
    assert read == (
        Stock(FIRST, Precut.FAT_QUARTER, Fraction(21), Fraction(35, 2), 4),
        Stock(FIRST, Precut.STRIP, USABLE, Fraction(5, 2), 6),
        Stock(SECOND, Precut.SQUARE, Fraction(5), Fraction(5), 12),
    )


@pytest.mark.parametrize(
    "text",
    [
        "A:4 fat quarters 17 1/2 x 21 in",
        " FOG :  4  Fat-Quarters   21x17.5 ; ",
        "A: 1 fat quarter 17½ × 21, 3 fat quarters",
        'A: 4fat quarters 17 1/2" x 21";;',
        "A: 4 fat quarters 44.45 x 53.34 cm, 0 strips 3",
        "A: 2 fat quarters; A: 2 fat quarters",
    ],
)
def test_spaces_order_and_signs_do_not_matter(text: str) -> None:
    assert read_stock(stock(text), FABRICS, USABLE) == (
        Stock(FIRST, Precut.FAT_QUARTER, Fraction(21), Fraction(35, 2), 4),
    )


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("A 4 fat quarters", "with a fabric and a colon"),
        ("mud: 3 squares 5", "is no fabric of this block; its fabrics are"),
        ("A: some scraps", "“some scraps” cannot be read"),
        ("A: 3 strips", "say how wide “3 strips” are"),
        ("A: 3 squares 5 x 6", "a square has one size"),
        ("A: 3 squares 0", "sizes above 0"),
        ("A: 3 squares 1/0", "sizes above 0"),
        ("A: 3 squares 999", "up to 120 in"),
        ("A: 2 fat quarters 21", "say both sides"),
        ("A: 501 squares 5", "at most 500 pieces"),
        ("A: 300 squares 5, 300 squares 5", "at most 500 pieces"),
        ("A: " + "9" * 1500 + " squares 5", "at most 500 pieces"),
        ("A: 1 square " + "9" * 1500, "up to 120 in"),
        ("A:" + " 1 square 5," * 400, "too long to read"),
    ],
)
def test_what_cannot_be_read_is_answered_plainly(text: str, says: str) -> None:
    with pytest.raises(CannotMakeError, match=re.escape(says)) as told:
        made(of_twenty("star"), settings=(("stock", stock(text)),))
    assert len(str(told.value)) < 1800


def test_the_example_can_be_read_by_who_has_those_fabrics() -> None:
    text = EXAMPLE.replace("fog", FIRST).replace("harbour", SECOND)
    assert sum(each.count for each in read_stock(text, FABRICS, USABLE)) == 4 + 6 + 12


ENOUGH = stock("A: 40 fat quarters; B: 1 fat quarter, 2 strips 1 in")


@pytest.mark.parametrize("unit", [LengthUnit.INCH, LengthUnit.CENTIMETRE])
def test_the_text_tells_what_is_used_and_what_is_left(unit: LengthUnit) -> None:
    text = " ".join(made(of_twenty("star"), settings=(("stock", ENOUGH),), unit=unit).decode().split())
    used = re.search(r"From your stock: (\d+) of 40 fat quarters\. Left whole: (\d+) fat quarters\.", text)
    assert used is not None
    assert int(used[1]) + int(used[2]) == 40
    assert f"Fat quarters 1 to {used[1]} of 40" in text or re.search(r"Fat quarters? 1 (to \d+ )?of 40", text)
    assert "buy nothing" in text
    assert "There is enough of it: nothing has to be bought." in text
    assert "Without the stock you would buy" in text


def test_stock_that_saves_nothing_stays_whole_and_that_is_said() -> None:
    text = " ".join(made(of_twenty("star"), settings=(("stock", stock("A: 20 strips 1/2 in")),)).decode().split())
    assert "Your stock of this fabric stays whole" in text
    assert "From your stock" not in text


def test_the_drawing_names_each_piece_and_stays_inside() -> None:
    root = ElementTree.fromstring(made(of_twenty("star"), "svg", settings=(("stock", ENOUGH),), black_and_white=True))
    svg = "{http://www.w3.org/2000/svg}"
    texts = [text.text or "" for text in root.iter(f"{svg}text")]
    assert any(text.startswith("Fat quarter") for text in texts)
    assert min(float(text.attrib["font-size"]) for text in root.iter(f"{svg}text")) >= 8
    for inner in root.iter(f"{svg}svg"):
        if inner is not root:
            assert float(inner.attrib["x"]) + float(inner.attrib["width"]) <= float(root.attrib["viewBox"].split()[2])


@pytest.mark.parametrize("form", ["pdf", "svg", "text"])
def test_the_same_bytes_with_stock(form: str) -> None:
    plan = of_twenty("star")
    assert made(plan, form, settings=(("stock", ENOUGH),)) == made(plan, form, settings=(("stock", ENOUGH),))
