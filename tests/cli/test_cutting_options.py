"""What may be chosen about cutting, as a person types it."""

import json
from fractions import Fraction

import pytest

from blocklang.cli.cutting_choices import chosen
from blocklang.cutting import CuttingOptions


def listed(command, block, *options):
    ran = command("make", "cutting-list", block, "-o", "-", "-f", "json", *options)
    assert (ran.code, ran.err) == (0, "")
    return json.loads(ran.out)


def test_nothing_said_is_as_it_was(command, good) -> None:
    data = listed(command, good)
    assert data["usable_width"] == 40
    assert chosen(CuttingOptions()) == CuttingOptions()


@pytest.mark.parametrize(
    ("typed", "inches"),
    [("44in", 44), ("42 1/2 in", 42.5), ("110cm", 110 / 2.54), ("1100 mm", 110 / 2.54), ("36.5in", 36.5)],
)
def test_the_width_of_the_fabric(command, good, typed, inches) -> None:
    assert listed(command, good, "--fabric-width", typed)["usable_width"] == pytest.approx(inches)


def test_larger_outsides_are_told_with_the_size_to_trim_to(command, good) -> None:
    notes = " ".join(listed(command, good, "--oversize", "1/2in")["notes"])
    assert "Cut 1/2 in larger on the outside" in notes
    assert "square it up to 9 1/2 x 9 1/2 in" in notes


@pytest.mark.parametrize(
    ("options", "side"),
    [
        ((), Fraction(29, 8)),
        (("--rounding", "sixteenths"), Fraction(57, 16)),
        (("--nearest",), Fraction(7, 2)),
        (("--rounding", "millimetres"), Fraction(90 * 10, 254)),
    ],
)
def test_rounding(command, good, options, side) -> None:
    """A block of 9 1/10 in has squares of 3 1/30 in, cut at 3.5333 in (89.75 mm) exactly."""
    (piece, *_) = listed(command, good, "--size", "9.1in", *options)["pieces"]
    assert piece["cut"][0]["exact"] == pytest.approx(3.533333)
    assert Fraction(piece["cut"][0]["shown"]) == side


def test_shrinking_is_bought_on_top(command, good) -> None:
    """What loses 20 per cent of its length is bought a quarter longer; what is cut stays the same."""
    plain, shrinks = (listed(command, good, "--copies", "60", *more) for more in ((), ("--shrinkage", "20")))
    for before, after in zip(plain["fabrics"], shrinks["fabrics"], strict=True):
        assert before["length"] == after["length"]
        longer = Fraction(str(before["length"])) / 36 * Fraction(5, 4)
        assert 0 <= Fraction(after["yards"]) - longer < Fraction(1, 8)
    assert any("20 per cent of shrinking" in note for note in shrinks["notes"])


@pytest.mark.parametrize(
    ("option", "typed", "said"),
    [
        ("--oversize", "a bit", "`a bit` is not a length. Write it like `3/8in`, `42 in` or `110cm`."),
        ("--oversize", "3/0in", "`3/0in` is not a length."),
        ("--oversize", "5in", "`5in` is not between 0 and 4 inches."),
        ("--fabric-width", "40", "`40` is not a length."),
        ("--fabric-width", "1in", "`1in` is not between 4 and 200 inches."),
        ("--shrinkage", "30", "30"),
        ("--rounding", "thirds", "thirds"),
    ],
)
def test_what_cannot_be_is_refused(command, good, option, typed, said) -> None:
    ran = command("make", "cutting-list", good, "-o", "-", option, typed)
    assert (ran.code, ran.out) == (2, "")
    assert said in ran.err
