"""Every layout of up to eight rectangles, planned: straight where a straight order exists, else the fewest partial seams.

A layout is drawn with one of its mirror images left out where there are many: putting the last rectangle on top or at
the side of the same smaller layout gives two layouts that mirror each other.
"""

from collections.abc import Iterator
from functools import cache

import pytest

from blocklang.assembly import Assembly
from blocklang.block import Block
from tests.oracle import rings, sewing
from tests.oracle.drawing import draw
from tests.oracle.layouts import KINDS, STRAIGHT, Layout, cuts_straight, layouts, size
from tests.support import blocks
from tests.support.marking import marks_of
from tests.support.route import assembly_of

CHUNKS = 8


@cache
def _all(count: int) -> tuple[Layout, ...]:
    return tuple(layouts(count))


@cache
def _crooked(count: int) -> tuple[Layout, ...]:
    return tuple(layout for layout in _all(count) if not cuts_straight(layout))


def _drawn(layout: Layout) -> Block:
    return blocks.rectangles([(float(a), float(b), float(c), float(d)) for a, b, c, d in layout], *size(layout))


def _planned(layout: Layout) -> Assembly:
    return assembly_of(_drawn(layout))


def _is_straight(assembly: Assembly) -> bool:
    return (assembly.pivots.count, assembly.partials.count) == (0, 0)


def _one_of_each_pair(chunk: int, count: int) -> Iterator[Layout]:
    """Yield a chunk of the layouts, now one and now the other of two that mirror each other."""
    lying = [
        layout for layout in _all(count) if layout[-1][3] == size(layout)[1] and layout[-1][1] == size(layout)[1] - 1
    ]
    for number, layout in enumerate(lying[chunk::CHUNKS]):
        yield layout if number % 2 else tuple((b, a, d, c) for a, b, c, d in layout)


@pytest.mark.parametrize("count", range(1, 9))
def test_the_layouts_are_all_there_and_as_many_cut_straight_as_should(count: int) -> None:
    """All kinds: the Baxter numbers; cut straight: the large Schroeder numbers.

    Source: Ackerman, Barequet, Pinter, "On the number of rectangulations of a planar point set", SODA 2004.
    """
    assert (len(_all(count)), len(set(_all(count)))) == (KINDS[count - 1],) * 2
    assert len(_all(count)) - len(_crooked(count)) == STRAIGHT[count - 1]


@pytest.mark.parametrize("count", range(1, 7))
def test_as_many_layouts_are_planned_straight_as_can_be(count: int) -> None:
    """Source: Ackerman, Barequet, Pinter, as above."""
    assert sum(_is_straight(_planned(layout)) for layout in _all(count)) == STRAIGHT[count - 1]


@pytest.mark.parametrize("chunk", range(CHUNKS))
def test_layouts_of_seven_are_planned_straight_where_they_can_be(chunk: int) -> None:
    for layout in _one_of_each_pair(chunk, 7):
        assert _is_straight(_planned(layout)) == cuts_straight(layout), layout


@pytest.mark.parametrize("chunk", [pytest.param(n, marks=marks_of(n, 0, CHUNKS // 4)) for n in range(CHUNKS)])
def test_layouts_of_eight_are_planned_straight_where_they_can_be(chunk: int) -> None:
    for layout in _one_of_each_pair(chunk, 8):
        assert _is_straight(_planned(layout)) == cuts_straight(layout), layout


@pytest.mark.parametrize("count", [5, 6, pytest.param(7, marks=pytest.mark.slow)])
def test_four_ways_to_count_partial_seams_agree_on_up_to_seven_rectangles(count: int) -> None:
    """Precedence of runs, of parts of runs, and sewing seam by seam, strictly and loosely."""
    for layout in _crooked(count):
        drawing = draw(_drawn(layout))
        least = rings.fewest_partials(layout)
        assert rings.fewest_runs_in_parts(layout) == least, layout
        assert sewing.fewest(drawing) == sewing.fewest(drawing, strict=True) == (0, least), layout


@pytest.mark.parametrize("count", [5, 6, 7])
def test_no_layout_of_up_to_seven_is_planned_with_a_partial_seam_too_many(count: int) -> None:
    for layout in _crooked(count):
        assembly = _planned(layout)
        assert (assembly.pivots.count, assembly.partials.count) == (0, rings.fewest_partials(layout)), layout
        assert assembly.pivots.proven and assembly.partials.proven, layout


#: The x at 2 belongs to two whirls, one at each end: no ring is left without it, yet it must be sewn in three parts.
SHARED_RUN: Layout = (
    (0, 0, 3, 1),
    (0, 1, 2, 2),
    (0, 2, 1, 5),
    (1, 2, 2, 4),
    (2, 1, 3, 3),
    (3, 0, 4, 3),
    (2, 3, 4, 4),
    (1, 4, 4, 5),
)


def test_a_run_that_two_whirls_share_is_not_mended_by_one_partial_seam() -> None:
    """Parted at either of its two feet, the other whirl still runs round: worked out by hand and by every search."""
    assert rings.fewest_runs_in_parts(SHARED_RUN) == 1
    assert rings.fewest_partials(SHARED_RUN) == 2
    assert sewing.fewest(draw(_drawn(SHARED_RUN))) == (0, 2)
    assembly = _planned(SHARED_RUN)
    assert (assembly.pivots.count, assembly.partials.count) == (0, 2)
    assert assembly.partials.minimum <= 2


@pytest.mark.parametrize("chunk", [pytest.param(n, marks=marks_of(n, 0, CHUNKS // 4)) for n in range(CHUNKS)])
def test_no_layout_of_eight_is_planned_with_a_partial_seam_too_many(chunk: int) -> None:
    for layout in _crooked(8)[chunk::CHUNKS]:
        assembly = _planned(layout)
        least = sewing.fewest(draw(_drawn(layout)))
        assert (assembly.pivots.count, assembly.partials.count) == least, layout
        assert assembly.partials.minimum <= assembly.partials.count
