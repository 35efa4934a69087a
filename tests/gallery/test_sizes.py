"""What a page tells about sizes, held against sums done by hand."""

import pytest
from blocklang_gallery.asking import read_choices
from blocklang_gallery.sizes import tell_sizes

from blocklang.block import LengthUnit
from tests.gallery.at_hand import of_library, options_of

INCH = LengthUnit.INCH


def told(block, *settings, unit=INCH):
    return tell_sizes(block, block.plan(), read_choices(options_of(*settings, unit=unit)).sizes, unit)


def test_a_nine_patch_in_four_sizes():
    nine = told(of_library("nine-patch"), "sizes=6in,9in,12in,4 1/2in")
    assert [one.label for one in nine.sizes] == ["4 1/2 in", "6 in", "9 in, as drawn", "12 in"]
    assert [one.written for one in nine.sizes] == ["4 1/2in", "6in", "", "12in"]
    assert nine.own == 2
    # A third of the finished size, and a quarter inch on either side.
    for one, square, whole in zip(
        nine.sizes,
        ("2 in", "2 1/2 in", "3 1/2 in", "4 1/2 in"),
        ("5 in", "6 1/2 in", "9 1/2 in", "12 1/2 in"),
        strict=True,
    ):
        cuts = sorted(line for fabric in one.fabrics for line in fabric.lines if "Cut" in line)
        assert [line.partition("Cut ")[2] for line in cuts] == [f"4 squares {square}.", f"5 squares {square}."]
        assert one.sentences[0].startswith(f"It measures {whole} square before")
        assert one.steps[-1][2] == f"{whole} square"


def test_a_size_is_planned_once_and_its_own_size_not_again():
    block = of_library("nine-patch")
    told(block)
    assert block.asked == ["own size", "6in", "12in"]


def test_what_is_too_narrow_to_sew_is_left_out():
    block = of_library("ohio-star")  # a quarter of a third of it is a sixth high: a seam allowance, in 1 1/2 in
    found = told(block, "sizes=1in,1 1/4in,1 1/2in,6in")
    assert [one.label for one in found.sizes] == ["1 1/2 in", "6 in", "9 in, as drawn"]
    assert found.left_out == "Not in 1 in and 1 1/4 in: a patch would be narrower than its seam allowance."
    assert told(block, "sizes=6in").left_out == ""


def test_a_rectangle_is_told_by_both_sides():
    found = told(of_library("flying-geese"), "sizes=,")
    (one,) = found.sizes
    assert one.label.count(" by ") == 1
    assert one.label.endswith(", as drawn")
    assert "square" not in one.heading


def test_a_block_in_centimetres():
    found = told(of_library("nine-patch"), unit=LengthUnit.CENTIMETRE)
    assert [one.written for one in found.sizes] == ["15cm", "20cm", "", "30cm"]
    assert [fabric.buy for fabric in found.sizes[0].fabrics] == ["Buy 10 cm.", "Buy 10 cm."]


@pytest.mark.parametrize("name", ["eight-pointed-star", "drunkards-path"])
def test_every_fabric_and_every_measured_step_is_told_in_every_size(name):
    block = of_library(name)
    found = told(block)
    plan = block.plan()
    for one in found.sizes:
        assert [fabric.number for fabric in one.fabrics] == list(range(len(plan.block.fabrics)))
        assert [number for number, _, _ in one.steps] == [step.number for step in plan.steps if step.measures]
        assert all(fabric.lines for fabric in one.fabrics)


def test_what_has_no_width_and_height_is_not_given_any():
    told_of = {
        name: tell_sizes(block := of_library(name), block.plan(), (), INCH).sizes[0].sentences
        for name in ("hexagon-flower-7", "whirl")
    }
    assert not told_of["hexagon-flower-7"][0].startswith("It measures")
    assert told_of["whirl"][0] == "It measures 9 1/2 in square before it is sewn to anything else."
