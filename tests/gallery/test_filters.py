"""The questions on the first page: which ranges there are, and which of them a block falls under."""

from dataclasses import replace

import pytest
from blocklang_gallery.filters import filters_for

from blocklang.block import LengthUnit
from blocklang.catalogue.facts import Facts
from blocklang.geometry import TICKS_PER_INCH

FACTS = Facts(
    "Whirl", "strips", "square", "in", 9 * TICKS_PER_INCH, 9 * TICKS_PER_INCH, 3, 5, 8, 0, 0, 1, 0, 5, 3 * TICKS_PER_INCH, "moderate",
    ("1 partial seam",), "Odile Fenwick", "CC-BY-4.0", "",
)  # fmt: skip


def said(name, unit=LengthUnit.INCH, **changed):
    """Return the words of the choice that a block falls under."""
    facts = replace(FACTS, **changed)
    (found,) = [one for one in filters_for((facts,), unit) if one.name == name]
    (choice,) = found.among([facts])
    return choice[1]


@pytest.mark.parametrize(
    ("patches", "words"),
    [
        (1, "up to 9"),
        (9, "up to 9"),
        (10, "10 to 24"),
        (24, "10 to 24"),
        (25, "25 to 60"),
        (60, "25 to 60"),
        (61, "over 60"),
        (656, "over 60"),
    ],
)
def test_patches(patches, words):
    assert said("patches", patches=patches) == words


@pytest.mark.parametrize(("fabrics", "words"), [(1, "up to 2"), (2, "up to 2"), (3, "3"), (4, "4"), (5, "over 4")])
def test_fabrics(fabrics, words):
    assert said("fabrics", fabrics=fabrics) == words


@pytest.mark.parametrize(
    ("width", "height", "words"),
    [
        (6, 6, "up to 6 in"),
        (6.02, 6, "up to 6 in"),
        (6.5, 6, "over 6 in, up to 9 in"),
        (3, 9, "over 6 in, up to 9 in"),
        (12, 4, "over 9 in, up to 12 in"),
        (12.5, 1, "over 12 in"),
    ],
)
def test_size_is_that_of_the_longer_side(width, height, words):
    assert said("size", width=round(width * TICKS_PER_INCH), height=round(height * TICKS_PER_INCH)) == words


def test_size_in_centimetres():
    assert said("size", LengthUnit.CENTIMETRE) == "over 15 cm, up to 25 cm"
    assert said("size", LengthUnit.CENTIMETRE, width=round(15 / 2.54 * TICKS_PER_INCH), height=1) == "up to 15 cm"


def test_set_in_family_and_difficulty():
    assert said("setin") == "none"
    assert said("setin", set_in=4) == "some"
    assert said("family") == "Strips"
    assert said("family", family="nine-patch") == "Nine patch"
    assert said("family", family="") == "Other blocks"
    assert said("difficulty") == "moderate"


def test_only_what_is_there_is_offered_in_its_order():
    facts = tuple(
        replace(FACTS, family=family, difficulty=level)
        for family, level in (("stars", "expert"), ("", "easy"), ("curves", "easy"))
    )
    asked = {one.name: [words for _, words in one.among(facts)] for one in filters_for(facts, LengthUnit.INCH)}
    assert asked["family"] == ["Curves", "Stars", "Other blocks"]
    assert asked["difficulty"] == ["easy", "expert"]
    assert list(asked) == ["family", "difficulty", "patches", "setin", "size", "fabrics"]
