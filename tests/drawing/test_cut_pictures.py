"""How pieces are cut, drawn: the cuts lie where the list says, by shapely's measure; measures and angle are told."""

import math

import pytest
from blocklang_drawing import cut_lines, draw_cut, draw_strip_set, theme_for, to_svg
from blocklang_drawing.shapes import Path, Text
from shapely.geometry import LineString, Polygon

from blocklang.block import LengthUnit
from blocklang.cutting import Lay, Piece, format_measure
from blocklang.plan import SewingPlan
from tests.library.plans import plan_of

SLANTED = ("hexagon-star", "tumbling-blocks", "little-red-house", "diamond-rectangle")
DIVIDED = ("eight-pointed-star", "bears-paw", "four-pointed-star", "octagon", "hexagon-flower-7", "diamond-rectangle")


def pieces(name: str) -> tuple[SewingPlan, list[Piece]]:
    plan = plan_of(name)
    return plan, [piece for piece in plan.cutting.pieces if piece.cut and piece.strip_set is None]


@pytest.mark.parametrize("name", SLANTED)
def test_slanted_cuts_are_as_far_apart_and_as_steep_as_is_said(name: str) -> None:
    _, found = pieces(name)
    slanted = [piece for piece in found if piece.lay is Lay.SLANTED]
    assert slanted
    for piece in slanted:
        high = float(piece.cut[0].shown)
        first, second = (LineString((line.start, line.end)) for line in list(cut_lines(piece, 1, high, 0.0)))
        assert first.hausdorff_distance(second) > 0
        longer = LineString([(x + way * 50 * (first.coords[1][0] - first.coords[0][0]), y + way * 50 * high)
                             for way, (x, y) in zip((-1, 1), first.coords, strict=True)])  # fmt: skip
        assert longer.distance(second) == pytest.approx(float(piece.cut[1].shown), abs=1e-9)
        rise = math.degrees(math.atan2(high, first.coords[1][0] - first.coords[0][0]))
        assert rise == pytest.approx(piece.angle, abs=1e-9)


@pytest.mark.parametrize("name", SLANTED)
def test_what_lies_between_two_slanted_cuts_is_the_patch_with_its_rounding(name: str) -> None:
    _, found = pieces(name)
    for piece in (piece for piece in found if piece.lay in (Lay.SLANTED, Lay.POINTED)):
        first, second = list(cut_lines(piece, 1, float(piece.cut[0].shown), 0.0))
        drawn = Polygon([first.start, second.start, second.end, first.end]).convex_hull.area
        exact = Polygon(piece.outline.chords()).area / 720720**2
        assert exact <= drawn + 1e-6  # never too small
        assert drawn < exact * 1.35  # the tips are trimmed off the exact outline, and the sizes rounded up


@pytest.mark.parametrize("name", DIVIDED + SLANTED)
def test_every_measure_of_the_cut_is_told_beside_its_picture(name: str) -> None:
    plan, found = pieces(name)
    theme = theme_for(plan.block.fabrics)
    drawn = [(piece, draw_cut(piece, theme, LengthUnit.INCH)) for piece in found]
    assert any(drawing is not None for _, drawing in drawn)
    for piece, drawing in drawn:
        if drawing is None:
            assert piece.lay is Lay.TEMPLATE or (piece.yields == 1 and not piece.marks and piece.angle is None)
            continue
        told = {shape.text for shape in drawing.shapes if isinstance(shape, Text)}
        assert {format_measure(measure, LengthUnit.INCH) for measure in piece.cut} <= told
        assert all(shape.size >= 8 for shape in drawing.shapes if isinstance(shape, Text))


@pytest.mark.parametrize(("yields", "cuts"), [(2, 1), (4, 2)])
def test_a_square_is_cut_once_or_twice_across(yields: int, cuts: int) -> None:
    _, found = pieces("eight-pointed-star" if yields == 4 else "bears-paw")
    piece = next(piece for piece in found if piece.yields == yields)
    side = float(piece.cut[0].shown)
    later = [line for line in cut_lines(piece, 1, side, side) if line.later]
    assert len(later) == cuts
    assert all(math.dist(line.start, line.end) == pytest.approx(side * math.sqrt(2)) for line in later)


def test_a_strip_set_shows_its_strips_its_trimming_and_its_cuts() -> None:
    plan = plan_of("eight-pointed-star")
    (made,) = plan.cutting.strip_sets
    drawing = draw_strip_set(made, plan.cutting.seam_allowance, theme_for(plan.block.fabrics), LengthUnit.INCH)
    told = {shape.text for shape in drawing.shapes if isinstance(shape, Text)}
    assert told == {"3 in", "45°"}
    bands = [shape for shape in drawing.shapes if isinstance(shape, Path) and shape.paint.fill is not None]
    heights = [
        max(p.end[1] for p in b.trails[0].stretches) - min(p.end[1] for p in b.trails[0].stretches) for b in bands
    ]
    # Strips of 1 3/8 in: 1 1/8 in of the outer two show, 7/8 in of the inner one (seams of 1/4 in).
    assert heights[0] / heights[1] == pytest.approx(1.125 / 0.875)
    assert heights[0] == pytest.approx(heights[2])
    dashes = [shape for shape in drawing.shapes if isinstance(shape, Path) and shape.paint.dash]
    assert sum(len(path.trails) for path in dashes) == 4  # two trims, two cuts


def test_the_pictures_are_the_same_every_time() -> None:
    plan, found = pieces("bears-paw")
    theme = theme_for(plan.block.fabrics, black_and_white=True)
    for piece in found:
        first, second = draw_cut(piece, theme, LengthUnit.INCH), draw_cut(piece, theme, LengthUnit.INCH)
        assert (first is None) == (second is None)
        assert first is None or second is None or to_svg(first) == to_svg(second)
