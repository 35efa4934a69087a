"""Cutting plans of quilts: everything is cut once, within the cloth, and no more is bought than must be."""

from dataclasses import replace
from fractions import Fraction

import pytest

from blocklang.block import Print
from blocklang.cloth import ClothOptions, ClothPlan, Turning, plan_cloth
from blocklang.cutting import Cutting, CuttingOptions, Rounding, cut
from blocklang.graph import build_graph
from tests.cloth.quilts import QUILTS, quilt
from tests.support import blocks

NEVER, ALWAYS = ClothOptions(turning=Turning.NEVER), ClothOptions(turning=Turning.ALWAYS)


def check_sound(cloth: ClothPlan, cutting: Cutting) -> None:
    """Hold a plan against its cutting list."""
    usable = cutting.options.usable_width
    counts = [0] * len(cutting.pieces)
    for fabric in cloth.fabrics:
        number = 1
        for strip in fabric.strips:
            assert strip.first == number
            number += strip.count
            assert all(each.width <= strip.width for each in strip.cuts)
            if strip.strip_set is None:
                assert sum(each.length for each in strip.cuts) + strip.offcut <= usable
                assert max(each.width for each in strip.cuts) == strip.width
            for each in strip.cuts:
                assert cutting.pieces[each.piece].fabric == fabric.fabric
                counts[each.piece] += each.count * strip.count
        assert fabric.length == sum(strip.width * strip.count for strip in fabric.strips)
        assert fabric.area - 1e-6 <= fabric.bound <= fabric.length
        assert fabric.relaxed <= fabric.bound
        assert list(fabric.strips) == sorted(fabric.strips, key=lambda strip: -strip.width)
    for index, piece in enumerate(cutting.pieces):
        expected = 0 if piece.strip_set is not None or index in cloth.too_large else piece.shapes
        assert counts[index] == expected, piece.name


def blocks_of(boxes: list[tuple[float, float, float, float]], width: float, height: float, **options: object):
    """Return a block of rectangles with its cutting list."""
    block = blocks.rectangles(boxes, width, height)
    graph = build_graph(block).graph
    assert graph is not None
    return block, cut(graph, CuttingOptions(**options))


@pytest.mark.parametrize(("name", "copies"), QUILTS)
def test_a_quilt_is_cut_once_and_from_as_little_as_can_be_bought(name: str, copies: int) -> None:
    block, cutting = quilt(name, copies)
    cloth = plan_cloth(block, cutting)
    check_sound(cloth, cutting)
    for fabric in cloth.fabrics:
        need = next(need for need in cutting.needs if need.fabric == fabric.fabric)
        assert fabric.least_to_buy
        assert fabric.yards <= need.yards


@pytest.mark.parametrize("options", [NEVER, ALWAYS], ids=["never", "always"])
@pytest.mark.parametrize(("name", "copies"), QUILTS)
def test_a_quilt_takes_no_more_than_a_hundredth_over_the_bound(name: str, copies: int, options: ClothOptions) -> None:
    block, cutting = quilt(name, copies)
    cloth = plan_cloth(block, cutting, options)
    check_sound(cloth, cutting)
    assert sum(fabric.length for fabric in cloth.fabrics) <= sum(fabric.bound for fabric in cloth.fabrics) * 1.01


def test_the_plan_is_never_longer_than_the_first_fit_of_the_cutting_list() -> None:
    for name, copies in QUILTS:
        block, cutting = quilt(name, copies)
        for fabric in plan_cloth(block, cutting, NEVER).fabrics:
            need = next(need for need in cutting.needs if need.fabric == fabric.fabric)
            assert float(fabric.length) <= need.length + 1e-9, name


@pytest.mark.parametrize("rounding", list(Rounding))
@pytest.mark.parametrize("name", ["large-star", "tumbling-blocks", "spools", "hexagon-flower-7", "drunkards-path"])
def test_slanted_shapes_and_templates_on_every_ruler(name: str, rounding: Rounding) -> None:
    block, cutting = quilt(name, 5, rounding=rounding)
    check_sound(plan_cloth(block, cutting), cutting)


def test_strips_for_strip_sets_run_the_full_width() -> None:
    block, cutting = quilt("eight-pointed-star", 20)
    (made,) = cutting.strip_sets
    for fabric in made.fabrics:
        (strip,) = plan_cloth(block, cutting).fabric(fabric).strips
        assert (strip.strip_set, strip.count, strip.cuts, strip.offcut) == (0, made.sets, (), 0)
        assert strip.width == made.strip.shown


def test_a_piece_longer_than_the_fabric_is_wide_is_cut_along_it() -> None:
    block, cutting = blocks_of([(0, 0, 60, 3), (0, 3, 60, 6)], 60, 6)
    cloth = plan_cloth(block, cutting)
    assert cloth.too_large == ()
    for fabric in cloth.fabrics:
        (strip,) = fabric.strips
        (along,) = strip.cuts
        assert (strip.width, along.length, along.count) == (Fraction(121, 2), Fraction(7, 2), 1)


def test_what_no_strip_can_hold_is_named() -> None:
    block, cutting = blocks_of([(0, 0, 60, 50), (60, 0, 70, 50)], 70, 50)
    cloth = plan_cloth(block, cutting)
    assert [cutting.pieces[index].fabric for index in cloth.too_large] == ["fog"]
    assert [fabric.fabric for fabric in cloth.fabrics] == ["deep"]
    turned = plan_cloth(block, cutting, NEVER)
    assert len(turned.too_large) + len(turned.fabrics) == 2


@pytest.mark.parametrize("usable", [Fraction(n, 64) for n in range(150, 400, 41)])
def test_slanted_shapes_on_cloth_that_hardly_holds_one(usable: Fraction) -> None:
    block, cutting = quilt("large-star", 1, usable_width=usable)
    check_sound(plan_cloth(block, cutting), cutting)


def test_rectangles_of_a_fabric_printed_one_way_stand_as_in_the_block() -> None:
    standing, lying = [(0, 0, 2, 6), (8, 0, 10, 6)], [(2, 0, 8, 2), (2, 2, 8, 4), (2, 4, 8, 6)]
    block, cutting = blocks_of([standing[0], lying[0], standing[1], lying[1], lying[2]], 10, 6, copies=10)
    one_way = tuple(replace(fabric, printed=Print.ONE_WAY) for fabric in block.fabrics)
    graph = build_graph(replace(block, fabrics=one_way)).graph
    assert graph is not None
    cutting = cut(graph, cutting.options)
    cloth = plan_cloth(graph.block, cutting, ALWAYS)
    check_sound(cloth, cutting)
    assert heights_of(cloth, "fog") == {Fraction(13, 2): 20, Fraction(5, 2): 10}
    assert heights_of(cloth, "deep") == {Fraction(5, 2): 20}


def heights_of(cloth: ClothPlan, fabric: str) -> dict[Fraction, int]:
    """Return how many shapes stand how high on the cloth."""
    heights: dict[Fraction, int] = {}
    for strip in cloth.fabric(fabric).strips:
        for each in strip.cuts:
            heights[each.width] = heights.get(each.width, 0) + each.count * strip.count
    return heights


def test_what_is_bought_allows_for_shrinking_and_a_reserve() -> None:
    block, cutting = quilt("nine-patch", 20)
    plain = plan_cloth(block, cutting)
    more = plan_cloth(block, cutting, ClothOptions(shrinkage=Fraction(1, 10), reserve=Fraction(9)))
    for before, after in zip(plain.fabrics, more.fabrics, strict=True):
        assert before.to_buy == before.length
        assert after.to_buy == (after.length + 9) / Fraction(9, 10)
        assert before.yards <= before.to_buy / 36 + Fraction(1, 8) and before.yards * 36 >= before.to_buy
        assert after.yards * 36 >= after.to_buy > after.yards * 36 - Fraction(9, 2)


def test_a_plan_repeats() -> None:
    block, cutting = quilt("log-cabin", 30)
    assert plan_cloth(block, cutting) == plan_cloth(block, cutting)


def test_a_placed_arrangement_is_planned_like_any_block() -> None:
    block, cutting = quilt("harbour-sampler", 4)
    check_sound(plan_cloth(block, cutting), cutting)


def test_waste_is_what_lies_between_length_and_area() -> None:
    block, cutting = quilt("sawtooth-star", 42)
    for fabric in plan_cloth(block, cutting).fabrics:
        assert fabric.waste == pytest.approx(1 - fabric.area / float(fabric.length))
        assert 0 <= fabric.waste < 0.1
