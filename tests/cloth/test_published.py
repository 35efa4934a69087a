"""Counts, strips and yards that patchwork hands down, got by laying out."""

import math
from fractions import Fraction

import pytest

from blocklang.cloth import Order, Way, in_order, lay_out, straight_way
from blocklang.cloth.buying import in_yards, length_to_buy
from blocklang.cloth.kinds import Lie
from blocklang.cutting import Lay, Measure
from blocklang.cutting.strips import spacing

UNIT = Fraction(1, 64)


def strips_of(lie: Lie, count: int, usable: int) -> int:
    """Return how many strips a number of shapes takes from cloth so many inches wide."""
    width, takes = math.floor(usable / UNIT), [0]
    while (length := lie.takes(len(takes), UNIT)) <= width:
        takes.append(length)
    way = Way(0, int(lie.width / UNIT), tuple(takes))
    layout = lay_out(Order(width, in_order([way]), (count,)))
    assert layout.proven
    return sum(times for _, times in layout.strips)


def slanted(lay: Lay, width: str, second: float, angle: float) -> Lie:
    """Return how slanted shapes lie."""
    cut = Measure(float(Fraction(width)), Fraction(width)), Measure(second, Fraction(second).limit_denominator(10**6))
    space = spacing(lay, cut, angle)
    return Lie(space.width.shown, space.step, space.lean)


def square(side: str) -> Lie:
    """Return how squares lie."""
    return Lie(Fraction(side), Fraction(side))


#: How many pieces a strip of each kind gives from 40 and from 42 in of usable width.
PER_STRIP = (
    ("squares 2 1/2", square("5/2"), 16, 16),
    ("squares 3 1/2", square("7/2"), 11, 12),
    ("squares 4 1/2", square("9/2"), 8, 9),
    ("45 degrees, 2 1/2", slanted(Lay.SLANTED, "5/2", 2.5, 45), 10, 11),
    ("45 degrees, 3", slanted(Lay.SLANTED, "3", 3.0, 45), 8, 9),
    ("60 degrees, 2 1/2", slanted(Lay.SLANTED, "5/2", 2.5, 60), 13, 14),
    ("triangles, strip 3 3/4", slanted(Lay.POINTED, "15/4", 3.75 * 2 / math.sqrt(3), 60), 17, 18),
)


@pytest.mark.parametrize(("name", "lie", "from_40", "from_42"), PER_STRIP, ids=[row[0] for row in PER_STRIP])
def test_pieces_from_a_strip(name: str, lie: Lie, from_40: int, from_42: int) -> None:
    for usable, holds in ((40, from_40), (42, from_42)):
        assert strips_of(lie, holds, usable) == 1
        assert strips_of(lie, holds + 1, usable) == 2
        assert strips_of(lie, 7 * holds, usable) == 7


def test_setting_triangles_of_twenty_blocks_on_point() -> None:
    """4 x 5 blocks of 12 in: 14 side triangles from 4 squares of 18 1/4 in, 4 corners from 2 squares of 9 3/8 in."""
    ways = [straight_way(0, 146, 146, 336), straight_way(1, 75, 75, 336)]
    layout = lay_out(Order(336, in_order(ways), (4, 2)))
    assert layout.proven
    assert [(filling.height, times) for filling, times in layout.strips] == [(146, 2), (75, 1)]
    assert in_yards(Fraction(layout.length, 8)) == Fraction(11, 8)


def test_binding_of_a_quilt_of_53_by_38() -> None:
    """The edge (from the handout "Binding Basics") is 182 in long, 182 / 42 = 4.33, so 5 strips are cut."""
    strips = math.ceil(Fraction(2 * (53 + 38), 42))
    layout = lay_out(Order(336, in_order([straight_way(0, 20, 336, 336)]), (strips,)))
    assert sum(times for _, times in layout.strips) == 5
    assert Fraction(layout.length, 8) == Fraction(25, 2)
    assert in_yards(Fraction(layout.length, 8)) == Fraction(3, 8)


@pytest.mark.parametrize(
    ("inches", "yards"), [("0", "0"), ("1", "1/8"), ("9/2", "1/8"), ("37/8", "1/4"), ("36", "1"), ("289/8", "9/8")]
)
def test_yards_go_up_to_the_next_eighth(inches: str, yards: str) -> None:
    assert in_yards(Fraction(inches)) == Fraction(yards)


def test_cloth_that_shrinks_is_bought_longer() -> None:
    """The length that is needed is the finished one / (1 - p): 97 in of cloth that loses 3 % were 100 in."""
    assert length_to_buy(Fraction(97), Fraction(3, 100), Fraction(0)) == 100
    assert length_to_buy(Fraction(95), Fraction(3, 100), Fraction(2)) == 100
    assert length_to_buy(Fraction(0), Fraction(3, 100), Fraction(2)) == 0
