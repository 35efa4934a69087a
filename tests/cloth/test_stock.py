"""Stock beside yardage: every piece is cut once, nothing is used that is not there, and never more is bought."""

from dataclasses import replace
from fractions import Fraction

import pytest
from shapely.geometry import Polygon, box
from shapely.ops import unary_union

from blocklang.block import Block, Print
from blocklang.cloth import ClothOptions, ClothPlan, CutStock, Precut, Stock, Turning, plan_cloth
from blocklang.cutting import Cutting, CuttingOptions, cut
from blocklang.graph import build_graph
from tests.cloth.quilts import QUILTS, quilt
from tests.support import blocks

PRECUTS = (
    (Precut.FAT_QUARTER, Fraction(21), Fraction(35, 2), 2),
    (Precut.STRIP, Fraction(40), Fraction(5, 2), 5),
    (Precut.SQUARE, Fraction(10), Fraction(10), 3),
    (Precut.SQUARE, Fraction(5), Fraction(5), 9),
)


def stock_of(block: Block, precuts: tuple[tuple[Precut, Fraction, Fraction, int], ...] = PRECUTS) -> tuple[Stock, ...]:
    """Return so many pieces of each size for every fabric of a block."""
    return tuple(Stock(fabric.id, *precut) for fabric in block.fabrics for precut in precuts)


def runs_of(cut_stock: CutStock) -> list[Polygon]:
    """Return the runs of equal shapes as they lie in one piece of stock, in inches."""
    runs, up = [], 0.0
    for strip in cut_stock.strips:
        for _ in range(strip.count):
            along = 0.0
            for each in strip.cuts:
                runs.append(box(along, up, along + float(each.length), up + float(each.width)))
                along += float(each.length)
            up += float(strip.width)
    return runs


def check_sound(cloth: ClothPlan, cutting: Cutting, plain: ClothPlan) -> None:
    """Hold a plan with stock against its cutting list, and against the plan without stock."""
    counts = [0] * len(cutting.pieces)
    for fabric in cloth.fabrics:
        for strip in fabric.strips:
            for each in strip.cuts:
                counts[each.piece] += each.count * strip.count
        for used in fabric.cut_stock:
            assert used.stock.fabric == fabric.fabric
            cloth_there = box(0, 0, float(used.stock.width), float(used.stock.height))
            runs = runs_of(used)
            together = unary_union(runs)
            assert together.area == pytest.approx(sum(run.area for run in runs))
            assert together.difference(cloth_there.buffer(1e-9)).area == 0
            for strip in used.strips:
                for each in strip.cuts:
                    assert cutting.pieces[each.piece].fabric == fabric.fabric
                    counts[each.piece] += each.count * strip.count * used.count
        numbers = [(used.stock, number) for used in fabric.cut_stock for number in range(used.first, used.last + 1)]
        assert len(set(numbers)) == len(numbers)
        assert all(1 <= number <= stock.count for stock, number in numbers)
        without = plain.fabric(fabric.fabric)
        assert fabric.to_buy_without == without.to_buy
        assert fabric.yards < without.yards if fabric.cut_stock else fabric.strips == without.strips
        assert fabric.least_beside_stock <= fabric.to_buy
        assert fabric.area <= fabric.length + Fraction(1, 10**6)
    for index, piece in enumerate(cutting.pieces):
        assert counts[index] == (0 if piece.strip_set is not None else piece.shapes), piece.name


@pytest.mark.parametrize("turning", list(Turning))
@pytest.mark.parametrize(("name", "copies"), [*QUILTS[:5], QUILTS[6], QUILTS[8]])
def test_every_piece_of_a_quilt_is_cut_once(name: str, copies: int, turning: Turning) -> None:
    block, cutting = quilt(name, copies)
    options = ClothOptions(turning=turning, stock=stock_of(block))
    check_sound(plan_cloth(block, cutting, options), cutting, plan_cloth(block, cutting, replace(options, stock=())))


def squares_of(count: int) -> tuple[Block, Cutting]:
    """Return a row of squares, 4 in finished, all of one fabric but the first."""
    row = blocks.rectangles([(4 * place, 0, 4 * place + 4, 4) for place in range(count)], 4 * count, 4)
    block = replace(
        row, patches=tuple(replace(patch, fabric="deep" if patch.id == "p1" else "fog") for patch in row.patches)
    )
    graph = build_graph(block).graph
    assert graph is not None
    return block, cut(graph)


def test_twelve_squares_by_hand() -> None:
    """Twelve squares are cut 4 1/2 in. Of 40 in of yardage 8 go in a strip: two strips, 9 in, 1/4 yard.

    A fat quarter of 21 by 17 1/2 in holds 4 in a strip (18 in, 3 left over) and 3 strips (13 1/2 in, 4 left over):
    one of them is enough. Four squares of 5 in hold one each; the 8 others take one strip, 4 1/2 in, 1/8 yard. Three
    leave 9, that is two strips again: then nothing is cut from them.
    """
    block, cutting = squares_of(13)
    fat_quarters = Stock("fog", Precut.FAT_QUARTER, Fraction(21), Fraction(35, 2), 2)
    plan = plan_cloth(block, cutting, ClothOptions(stock=(fat_quarters,))).fabric("fog")
    (used,) = plan.cut_stock
    assert (used.first, used.count, used.left, used.fullest) == (1, 1, Fraction(4), True)
    assert [(s.first, s.count, s.width, s.offcut) for s in used.strips] == [(1, 3, Fraction(9, 2), Fraction(3))]
    assert plan.yards == plan.length == plan.waste == 0
    assert not plan.strips
    assert plan.to_buy_without == 9

    four = Stock("fog", Precut.SQUARE, Fraction(5), Fraction(5), 4)
    plan = plan_cloth(block, cutting, ClothOptions(stock=(four,))).fabric("fog")
    assert (plan.used(four), plan.length, plan.yards) == (4, Fraction(9, 2), Fraction(1, 8))
    assert plan.strips[0].cuts[0].count == 8

    three = replace(four, count=3)
    plan = plan_cloth(block, cutting, ClothOptions(stock=(three,))).fabric("fog")
    assert plan.stock == (three,)
    assert plan.length == 9
    assert not plan.cut_stock


def test_stock_of_another_fabric_or_too_small_changes_nothing() -> None:
    block, cutting = squares_of(13)
    small = Stock("fog", Precut.STRIP, Fraction(40), Fraction(5, 2), 20)
    other = Stock("deep", Precut.SQUARE, Fraction(4), Fraction(4), 20)
    plain = plan_cloth(block, cutting)
    with_stock = plan_cloth(block, cutting, ClothOptions(stock=(small, other)))
    for before, after in zip(plain.fabrics, with_stock.fabrics, strict=True):
        assert (after.strips, after.cut_stock, after.yards) == (before.strips, (), before.yards)
        assert after.least_beside_stock <= after.to_buy == before.to_buy


def test_what_is_printed_one_way_is_not_turned_in_stock_either() -> None:
    block = blocks.rectangles([(0, 0, 2, 6), (2, 0, 8, 2), (2, 2, 8, 4), (2, 4, 8, 6)], 8, 6)
    one_way = tuple(replace(fabric, printed=Print.ONE_WAY) for fabric in block.fabrics)
    graph = build_graph(replace(block, fabrics=one_way)).graph
    assert graph is not None
    cutting = cut(graph, CuttingOptions(copies=6))
    options = ClothOptions(turning=Turning.ALWAYS, stock=stock_of(block))
    cloth = plan_cloth(graph.block, cutting, options)
    check_sound(cloth, cutting, plan_cloth(graph.block, cutting, replace(options, stock=())))
    stood = [
        (cutting.pieces[each.piece], each)
        for fabric in cloth.fabrics
        for used in fabric.cut_stock
        for strip in used.strips
        for each in strip.cuts
    ]
    assert stood
    for piece, each in stood:
        assert piece.pose
        assert (each.width, each.length / each.count) == (piece.cut[0].shown, piece.cut[1].shown)


def test_a_plan_with_stock_repeats() -> None:
    block, cutting = quilt("sawtooth-star", 42)
    options = ClothOptions(stock=stock_of(block))
    assert plan_cloth(block, cutting, options) == plan_cloth(block, cutting, options)


@pytest.mark.parametrize("number", range(0, 40, 3))
def test_the_bound_holds_and_more_stock_never_buys_more(number: int) -> None:
    """With n squares of 5 in and 60 to cut, ceil((60 - n) / 8) strips are needed: the bound says no more than that."""
    block, cutting = squares_of(61)
    stock = (Stock("fog", Precut.SQUARE, Fraction(5), Fraction(5), number),) if number else ()
    plan = plan_cloth(block, cutting, ClothOptions(stock=stock)).fabric("fog")
    needed = -(-(60 - number) // 8) * Fraction(9, 2)
    assert plan.least_beside_stock <= needed
    assert plan.yards == needed / 36
