"""What seams a little off do to a unit: counted by hand, and by drawing the unit again with a wider allowance."""

from fractions import Fraction

import pytest

from blocklang.assembly import assemble
from blocklang.block import LengthUnit
from blocklang.cutting import (
    Sensitivity,
    describe_sensitivity,
    describe_test_strip,
    sensitive_steps,
    sensitivities,
)
from tests.cutting.shapes import GOOSE, block_of, graph, turned
from tests.support import blocks

OFF = Fraction(1, 32)


def whole(block) -> Sensitivity:
    """Return what a slip does to the whole block, the last unit made."""
    assembly = assemble(graph(block)).assembly
    found = sensitivities(assembly)[-1]
    assert found is not None
    return found


def sorted_change(block, off=OFF):
    return sorted(whole(block).change(off))


def test_nine_in_a_row_lose_half_an_inch():
    """2d(n - 1): nine patches, 1/32 in off, come out 1/2 in small."""
    assert sorted_change(blocks.grid(9, 1, 2.0)) == pytest.approx([0, 0.5])


@pytest.mark.parametrize(("columns", "rows"), [(2, 2), (3, 3), (5, 4)])
def test_grids(columns, rows):
    wanted = sorted([2 * (columns - 1) / 32, 2 * (rows - 1) / 32])
    assert sorted_change(blocks.grid(columns, rows, 2.0)) == pytest.approx(wanted)


def test_two_triangles_lose_root_two_times_the_slip():
    """Raw leg R sewn with s opens to a square of R - s root 2; so s + d takes root 2 times d off."""
    block = block_of({"fog:a": [(0, 0), (3, 0), (0, 3)], "b": [(3, 0), (3, 3), (0, 3)]}, (3, 3))
    raw_leg = 3 + 0.25 * (2 + 2**0.5)
    sewn = [raw_leg - s * 2**0.5 for s in (0.25, 0.25 + 1 / 32)]
    assert sorted_change(block) == pytest.approx([sewn[0] - sewn[1]] * 2)


def test_a_goose_loses_twice_that_across_its_width():
    assert sorted_change(block_of(GOOSE, (4, 2))) == pytest.approx([2**0.5 / 32, 2 * 2**0.5 / 32])


def test_a_turned_unit_is_measured_along_its_own_sides():
    ring = [(0, 0), (2, 0), (2, 2), (0, 2)]
    halves = {"fog:a": [(0, 0), (1, 0), (1, 2), (0, 2)], "b": [(1, 0), (2, 0), (2, 2), (1, 2)]}
    side = 2**0.5
    patches = {name: turned(corners, 45, side) for name, corners in halves.items()}
    square = turned(ring, 45, side)
    corners = [(0, 0), (2 * side, 0), (2 * side, 2 * side), (0, 2 * side)]
    for index, corner in enumerate(corners):
        near = sorted(square, key=lambda p, corner=corner: (p[0] - corner[0]) ** 2 + (p[1] - corner[1]) ** 2)[:2]
        patches[f"coral:corner.{index}"] = [corner, *near]
    assembly = assemble(graph(block_of(patches, (2 * side, 2 * side)))).assembly
    found = [one for one in sensitivities(assembly) if one is not None]
    pair = next(one for one in found if len(assembly.unit_patches[one.unit]) == 2)
    assert sorted(pair.crossed) == pytest.approx([0, 1])


def test_a_curved_seam_counts_where_it_is_crossed():
    """Across the unit of a quarter circle the line along its foot meets the arc square on, and takes all of 2d."""
    assembly = assemble(graph(blocks.drunkards_path(2))).assembly
    unit = next(one for one in sensitivities(assembly) if one and len(assembly.unit_patches[one.unit]) == 2)
    assert unit.crossed == pytest.approx((1, 1), abs=0.01)


def test_units_that_are_no_rectangles_have_none():
    assembly = assemble(graph(blocks.star())).assembly
    found = sensitivities(assembly)
    assert len(found) == len(assembly.steps)
    assert len(assembly.unit_patches[assembly.steps[0].makes[0]]) == 2
    assert found[0] is None
    assert found[-1] is not None


def test_the_sensitive_steps_are_those_that_cross_most():
    assembly = assemble(graph(blocks.grid(9, 3, 2.0))).assembly
    found = sensitivities(assembly)
    changes = [max(one.change()) for one in found]
    assert sensitive_steps(assembly) == tuple(i for i, change in enumerate(changes) if change >= 0.125)
    assert changes[-1] == max(changes) == 0.5
    assert sensitive_steps(assembly, Fraction(1, 1000)) == ()


@pytest.mark.parametrize(
    ("crossed", "unit", "said"),
    [
        (2, LengthUnit.INCH, "Seams 1/32 in too wide leave this unit 1/8 in small."),
        (8, LengthUnit.INCH, "Seams 1/32 in too wide leave this unit 1/2 in small."),
        (0.1, LengthUnit.INCH, "Seams 1/32 in too wide leave this unit 1/32 in small."),
        (2, LengthUnit.MILLIMETRE, "Seams 1 mm too wide leave this unit 4 mm small."),
        (2, LengthUnit.CENTIMETRE, "Seams 0.1 cm too wide leave this unit 0.4 cm small."),
    ],
)
def test_sentences(crossed, unit, said):
    assert describe_sensitivity(Sensitivity(9, (0, crossed)), unit) == said


@pytest.mark.parametrize(
    ("allowance", "unit", "said"),
    [
        (Fraction(3, 8), LengthUnit.INCH, ("2 1/4 in", "5 1/4 in", "1 1/2 in")),
        (Fraction(1, 4), LengthUnit.MILLIMETRE, ("40 mm", "94.6 mm", "27.3 mm")),
        (Fraction(70, 254), LengthUnit.CENTIMETRE, ("4.5 cm", "10.7 cm", "3.1 cm")),
    ],
)
def test_test_strips_for_other_seams_are_on_a_mark_and_add_up(allowance, unit, said):
    """3w - 4a across and w - 2a in the middle, for strips of six allowances or a little more."""
    wide, across, middle = said
    sentences = describe_test_strip(allowance, unit)
    assert f"three strips {wide} wide" in sentences
    assert f"measure {across} across, and the middle one {middle}." in sentences


def test_the_test_strip_of_the_trade():
    """Three strips of 1 1/2 in sewn with 1/4 in seams measure 3 1/2 in, the middle one 1 in."""
    said = describe_test_strip(Fraction(1, 4))
    assert "three strips 1 1/2 in wide" in said
    assert "measure 3 1/2 in across, and the middle one 1 in." in said
