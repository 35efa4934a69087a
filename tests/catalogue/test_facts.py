"""Facts about library blocks against what a quilter counts by hand; difficulty against what a teacher would say."""

import math

import pytest

from blocklang.block import LengthUnit
from blocklang.catalogue.difficulty import Difficulty, Hardness, difficulty_of
from blocklang.catalogue.picture import small_picture
from blocklang.catalogue.shapes import narrowest, shape_of, sharpest
from blocklang.catalogue.working_out import facts_of
from blocklang.geometry import TICKS_PER_INCH, Arc, Edge, Outline, from_inches
from tests.support.blocks import block, drunkards_path, grid, patch, pinwheel, square, star, whirl
from tests.support.route import assembly_of

EASY = Hardness(
    patches=9, set_in=0, pivots=0, partials=0, curves=0, steps=4, narrowest=2 * TICKS_PER_INCH, meeting=4, sharpest=45
)  # fmt: skip


def polygon(sides: int, radius: float = 4, turn: float = 0) -> Outline:
    angles = [turn + 2 * math.pi * k / sides for k in range(sides)]
    return Outline.through(from_inches(radius * math.cos(a), radius * math.sin(a)) for a in angles)


def through(*corners: tuple[float, float]) -> Outline:
    return Outline.through(from_inches(*corner) for corner in corners)


def circle() -> Outline:
    east, west, centre = from_inches(6, 3), from_inches(0, 3), from_inches(3, 3)
    return Outline((Edge(east, west, Arc(centre, False)), Edge(west, east, Arc(centre, False))))


@pytest.mark.parametrize(
    ("outline", "shape"),
    [
        (through((0, 0), (9, 0), (9, 9), (0, 9)), "square"),
        (through((0, 0), (4, 0), (9, 0), (9, 9), (0, 9)), "square"),  # a corner that does not bend
        (polygon(4), "square"),  # on point
        (through((0, 0), (9, 0), (9, 6), (0, 6)), "rectangle"),
        (through((0, 0), (3, 0), (4.5, 3 * math.sqrt(3) / 2), (1.5, 3 * math.sqrt(3) / 2)), "diamond"),
        (through((0, 0), (5, 0), (6, 3), (1, 3)), "other"),  # a leaning rectangle
        (polygon(3), "triangle"),
        (polygon(6), "hexagon"),
        (polygon(8), "octagon"),
        (polygon(5), "other"),
        (circle(), "circle"),
        (through((0, 0), (6, 0), (6, 2), (2, 2), (2, 6), (0, 6)), "other"),  # an L has six corners too
    ],
)
def test_shape_of_an_outline(outline, shape) -> None:
    assert shape_of(outline) == shape


@pytest.mark.parametrize(
    ("outline", "inches"),
    [
        (through((0, 0), (9, 0), (9, 2), (0, 2)), 2),
        (through((0, 0), (4, 0), (0, 4)), 4 / math.sqrt(2)),  # half-square triangle: its height over the long side
        (polygon(6), 2 * 4 * math.cos(math.pi / 6)),
        (circle(), 6),
    ],
)
def test_narrowest_way_through_a_patch(outline, inches) -> None:
    assert narrowest(outline) / TICKS_PER_INCH == pytest.approx(inches, abs=0.004)


@pytest.mark.parametrize(
    ("made", "counts"),
    [  # patches, seams, set-in seams, turns of the needle, partial seams, curved seams
        (grid(3, 3), (9, 12, 0, 0, 0, 0)),
        (whirl(), (5, 8, 0, 0, 1, 0)),
        (pinwheel(), (8, 8, 0, 0, 0, 0)),
        (star(), (16, 24, 8, 8, 0, 0)),
        (drunkards_path(), (8, 12, 0, 0, 0, 4)),
    ],
)
def test_counts_as_made_by_hand(made, counts) -> None:
    facts = facts_of(assembly_of(made))
    assert (facts.patches, facts.seams, facts.set_in, facts.pivots, facts.partials, facts.curves) == counts


@pytest.mark.parametrize(
    ("outline", "degrees"),
    [(through((0, 0), (4, 0), (0, 4)), 45), (polygon(6), 120), (through((0, 0), (4, 0), (0, 1)), 14), (circle(), 180)],
)
def test_sharpest_point_of_a_patch(outline, degrees) -> None:
    assert sharpest(outline) == degrees


def test_nothing_hard_is_easy() -> None:
    assert difficulty_of(EASY, LengthUnit.INCH) == (Difficulty.EASY, ())


@pytest.mark.parametrize(
    ("change", "points", "reason"),
    [
        ({"pivots": 1}, 3, "1 set-in corner"),
        ({"pivots": 4}, 3, "4 set-in corners"),
        ({"pivots": 5}, 4, "5 set-in corners"),
        ({"pivots": 13}, 5, "13 set-in corners"),
        ({"curves": 16}, 3, "16 curved seams"),
        ({"curves": 17}, 4, "17 curved seams"),
        ({"partials": 1}, 2, "1 partial seam"),
        ({"partials": 2}, 3, "2 partial seams"),
        ({"steps": 17}, 1, "17 different steps"),
        ({"steps": 33}, 2, "33 different steps"),
        ({"patches": 101}, 1, "101 patches"),
        ({"patches": 401}, 2, "401 patches"),
        ({"meeting": 8}, 1, "8 seams in one point"),
        ({"meeting": 9}, 2, "9 seams in one point"),
        ({"sharpest": 39}, 1, "points of 39 degrees"),
        ({"sharpest": 24}, 2, "points of 24 degrees"),
        ({"narrowest": TICKS_PER_INCH * 15 // 16}, 1, "patches 15/16 in narrow"),
        ({"narrowest": TICKS_PER_INCH * 7 // 16}, 2, "patches 7/16 in narrow"),
    ],
)
def test_what_each_hard_thing_counts(change, points, reason) -> None:
    """The points show in where the levels begin: two more make moderate, five demanding, eight expert."""
    level, because = difficulty_of(EASY._replace(**change), LengthUnit.INCH)
    assert because == (reason,)
    expected = Difficulty.EASY if points < 2 else Difficulty.MODERATE if points < 5 else Difficulty.DEMANDING
    assert level is expected


@pytest.mark.parametrize(
    ("change", "level"),
    [
        ({"meeting": 8}, Difficulty.EASY),
        ({"partials": 1}, Difficulty.MODERATE),
        ({"pivots": 4, "meeting": 8}, Difficulty.MODERATE),
        ({"pivots": 8, "meeting": 8}, Difficulty.DEMANDING),
        ({"pivots": 13, "partials": 1}, Difficulty.DEMANDING),
        ({"pivots": 13, "partials": 2}, Difficulty.EXPERT),
    ],
)
def test_where_the_levels_begin(change, level) -> None:
    assert difficulty_of(EASY._replace(**change), LengthUnit.INCH)[0] is level


def test_narrow_patches_are_told_in_the_files_unit() -> None:
    _, because = difficulty_of(EASY._replace(narrowest=TICKS_PER_INCH // 2), LengthUnit.CENTIMETRE)
    assert because == ("patches 1.3 cm narrow",)


def test_small_picture_shows_each_fabric_where_it_lies() -> None:
    halves = [
        patch("low", "deep", [(0, 0), (4, 0), (4, 2), (0, 2)]),
        patch("high", "fog", [(0, 2), (4, 2), (4, 4), (0, 4)]),
    ]
    assert small_picture(block(halves, square(4)), 4, 4) == (("fog",) * 4, ("fog",) * 4, ("deep",) * 4, ("deep",) * 4)


def test_small_picture_is_empty_beside_the_block() -> None:
    triangle = [patch("t", "deep", [(0, 0), (4, 0), (0, 4)])]
    picture = small_picture(block(triangle, [(0, 0), (4, 0), (0, 4)]), 4, 4)
    # The centres on the long side go to the patch or not by the rule of the lower left; those above never do.
    assert picture[0][1:] == ("", "", "")
    assert picture[3][:3] == ("deep", "deep", "deep")
