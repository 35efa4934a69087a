"""Sentences and lengths as a quilter would say and read them."""

from fractions import Fraction

import pytest

from blocklang.block import LengthUnit
from blocklang.cutting import (
    CuttingOptions,
    Measure,
    cut,
    describe_layout,
    describe_piece,
    describe_strip,
    format_measure,
)
from tests.cutting.shapes import block_of, graph
from tests.support import blocks


@pytest.mark.parametrize(
    ("inches", "unit", "said"),
    [
        ("33/8", LengthUnit.INCH, "4 1/8 in"),
        ("4", LengthUnit.INCH, "4 in"),
        ("3/8", LengthUnit.INCH, "3/8 in"),
        ("65/16", LengthUnit.INCH, "4 1/16 in"),
        ("1050/254", LengthUnit.INCH, "4.134 in"),
        ("1050/254", LengthUnit.CENTIMETRE, "10.5 cm"),
        ("1050/254", LengthUnit.MILLIMETRE, "105 mm"),
        ("1000/254", LengthUnit.CENTIMETRE, "10 cm"),
        ("33/8", LengthUnit.CENTIMETRE, "10.5 cm"),  # 10.4775, never smaller
    ],
)
def test_lengths(inches, unit, said):
    assert format_measure(Fraction(inches), unit) == said
    assert format_measure(Measure(float(Fraction(inches)), Fraction(inches)), unit) == said


AS_USUAL = CuttingOptions()


def sentences(block, options=AS_USUAL):
    return {piece.name: describe_piece(piece) for piece in cut(graph(block), options).pieces}


def test_the_star():
    assert sentences(blocks.star()) == {
        "corner": "Cut 4 squares 4 1/8 in.",
        "side": "Cut 1 square 6 1/4 in; cut it twice across, corner to corner, for 4 triangles.",
        "diamond": "From strips 3 in wide cut 8 at 45 degrees, 3 in apart.",
    }


def test_halves_and_what_is_left_over():
    patches = {
        "a.1": [(0, 0), (3, 0), (3, 3)],
        "fog:b.1": [(0, 0), (3, 3), (0, 3)],
        "a.2": [(3, 0), (6, 0), (6, 3)],
        "fog:b.2": [(3, 0), (6, 3), (3, 3)],
        "a.3": [(6, 0), (9, 0), (9, 3)],
        "fog:b.3": [(6, 0), (9, 3), (6, 3)],
    }
    found = sentences(block_of(patches, (9, 3)))
    assert found["a"] == (
        "Cut 2 squares 3 7/8 in; cut each once across, corner to corner, for 3 triangles (1 left over)."
    )
    four = sentences(block_of(patches, (9, 3)), CuttingOptions(copies=4))
    assert four["a"] == "Cut 6 squares 3 7/8 in; cut each once across, corner to corner, for 12 triangles."


def test_rectangles_hexagons_and_templates():
    assert sentences(blocks.whirl())["bar"] == "Cut 4 rectangles 1 1/2 x 2 1/2 in."
    assert sentences(blocks.hexagons(0))["hex"] == (
        "From strips 2 1/4 in wide cut 1 hexagon, 2 5/8 in from point to point."
    )
    assert sentences(blocks.drunkards_path())["pie"] == (
        "Cut 4 with the template, the outer edge on the straight grain."
    )


def test_mitred_trapezoids():
    frame = {
        "frame.1": [(0, 0), (6, 0), (4, 2), (2, 2)],
        "frame.2": [(6, 0), (6, 6), (4, 4), (4, 2)],
        "frame.3": [(6, 6), (0, 6), (2, 4), (4, 4)],
        "frame.4": [(0, 6), (0, 0), (2, 2), (2, 4)],
        "fog:middle.1": [(2, 2), (4, 2), (4, 4), (2, 4)],
    }
    assert sentences(block_of(frame, (6, 6)))["frame"] == (
        "From strips 2 1/2 in wide cut 4 trapezoids, the long side 7 1/4 in, both ends at 45 degrees, "
        "every second one turned round."
    )


def test_parallelograms_of_both_hands():
    patches = {
        "left.1": [(0, 0), (2, 0), (3, 1), (1, 1)],
        "fog:fill.1": [(0, 0), (1, 1), (0, 1)],
        "left.2": [(4, 0), (3, 1), (5, 1), (6, 0)],
        "fog:fill.2": [(6, 0), (6, 1), (5, 1)],
        "fog:goose.1": [(2, 0), (4, 0), (3, 1)],
    }
    assert sentences(block_of(patches, (6, 1)))["left"] == (
        "From strips 1 1/2 in wide cut 2 at 45 degrees, 2 in apart, 1 of them reversed."
    )


def test_strips():
    cutting = cut(graph(blocks.star()), CuttingOptions(copies=3))
    diamond = next(piece for piece in cutting.pieces if piece.name == "diamond")
    assert describe_strip(diamond) == "Cut 3 strips 3 in wide; a strip holds 8."
    fog = next(need for need in cutting.needs if need.fabric == "fog")
    told = [describe_layout(strips, cutting.pieces) for strips in fog.layout]
    assert told == [
        "Cut 1 strip 6 1/4 in wide: 3 for side and 5 for corner.",
        "Cut 1 strip 4 1/8 in wide: 7 for corner.",
    ]
