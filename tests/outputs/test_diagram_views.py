"""The views of a diagram: what is numbered, what is moved apart, what is to scale."""

from itertools import combinations

import pytest
from blocklang_diagram import blocklang_outputs
from blocklang_diagram.laid_apart import lay_block_apart
from blocklang_diagram.numbered import draw_numbered
from blocklang_diagram.sizes import draw_sizes
from blocklang_diagram.views import SIDE, draw_view
from blocklang_drawing import Path, text_width, theme_for
from blocklang_drawing.room_for_words import room_for_words
from shapely.affinity import translate
from shapely.geometry import Polygon, box

from blocklang.block import LengthUnit
from blocklang.hooks import CannotMakeError, OutputOptions
from tests.library.plans import plan_of
from tests.outputs.boxes import places_of, words_on
from tests.sheets.plans import NAMES, named_plan
from tests.sheets.plans import plan_of as planned
from tests.support import blocks

(OUTPUT,) = blocklang_outputs()
SHARED = ("bears-paw", "drunkards-path", "eight-pointed-star", "log-cabin", "ohio-star", "storm-at-sea")


def numbered(plan):
    return draw_numbered(plan, theme_for(plan.block.fabrics), SIDE)


def homes(plan, drawing):
    """Return the area of each patch on a drawing of seams, in the order of the block."""
    seams = next(shape for shape in drawing.shapes if isinstance(shape, Path))
    return [Polygon(places_of(trail)) for trail in seams.trails[: len(plan.block.patches)]]


@pytest.mark.parametrize("name", SHARED)
def test_every_patch_carries_its_own_name_or_its_number_in_the_cutting_list(name):
    plan = plan_of(name)
    drawing = numbered(plan)
    numbers = {p: str(n) for n, piece in enumerate(plan.cutting.pieces, 1) for p in piece.patches}
    words = words_on(drawing)
    for index, (patch, home) in enumerate(zip(plan.block.patches, homes(plan, drawing), strict=True)):
        (inside,) = (each for each in words if home.intersects(each.area))
        assert home.contains(inside.area), patch.id
        assert inside.text.text in (patch.id, numbers[index])


def test_names_where_they_fit_and_a_key_where_they_do_not():
    assert {"hearth", "log.1", "log.16"} <= {each.text.text for each in words_on(numbered(plan_of("log-cabin")))}
    said = [each.text.text for each in words_on(numbered(plan_of("bears-paw")))]
    assert "toes half-square triangle: 16 of sand" in said and "palm: 4 of moss" in said
    assert said.count("2") == 16 + 1, "each of the sixteen, and the key"


def test_a_strip_set_names_its_fabrics():
    plan = named_plan("striped-star")
    small = draw_numbered(plan, theme_for(plan.block.fabrics), 90.0)
    said = " ".join(each.text.text for each in words_on(small))
    assert "diamond: 8 of a strip set of deep, coral and fog" in said


def test_patches_too_small_for_a_number_are_counted():
    plan = planned(blocks.grid(90, 1, 1.0))
    assert "90 patches are too small for a number here." in [each.text.text for each in words_on(numbered(plan))]


def test_room_for_words_is_inside_and_as_near_as_may_be():
    notched = ((0.0, 0.0), (40.0, 0.0), (40.0, 30.0), (28.0, 30.0), (28.0, 6.0), (12.0, 6.0), (12.0, 30.0), (0.0, 30.0))
    at = room_for_words(notched, 8.0, 10.0, (20.0, 10.0))
    assert at is not None
    assert Polygon(notched).buffer(0.01).contains(box(at[0] - 4, at[1] - 5, at[0] + 4, at[1] + 5))
    assert abs(at[0] - 20) == pytest.approx(12, abs=0.01), "in one of the arms, as near the notch as it fits"
    assert room_for_words(notched, 14.0, 10.0, (20.0, 10.0)) is None
    assert room_for_words(((0.0, 0.0), (9.0, 0.0), (9.0, 9.0)), 3.0, 12.0, (5.0, 4.0)) is None


@pytest.mark.parametrize("name", SHARED)
def test_parts_laid_apart_are_clear_of_each_other_and_hold_every_patch(name):
    plan = plan_of(name)
    apart = lay_block_apart(plan, None)
    assert sorted(patch for part in apart.parts for patch in part.patches) == list(range(len(plan.block.patches)))
    assert 1 < len(apart.parts) <= 9
    shapes = [
        translate(Polygon(part.outline.chords()), *move) for part, move in zip(apart.parts, apart.moves, strict=True)
    ]
    assert all(a.distance(b) >= 0.03 * max(plan.block.size) for a, b in combinations(shapes, 2))


def test_the_parts_are_those_that_the_last_steps_join():
    plan = plan_of("eight-pointed-star")
    assert len(lay_block_apart(plan, 1).parts) == 5, "the star and its four sides"
    assert [len(lay_block_apart(plan, count).parts) for count in (2, 3, 4)] == [6, 8, 12]
    assert len(lay_block_apart(plan, 999).parts) == len(plan.block.patches)
    drawing = draw_view(plan, "laid-apart", 3, OutputOptions("svg"))
    assert "The block before steps 3 to 5: 8 parts." in [each.text.text for each in words_on(drawing)]


def test_parts_that_share_a_middle_lie_side_by_side():
    plan = plan_of("mariners-compass")
    first, second = lay_block_apart(plan, 1).parts
    moves = lay_block_apart(plan, 1).moves
    compass, frame = (translate(Polygon(p.outline.chords()), *m) for p, m in zip((first, second), moves, strict=True))
    assert compass.distance(frame) > 0


def test_a_block_of_one_patch_is_already_apart():
    plan = planned(blocks.block([blocks.patch("whole", "fog", blocks.square(4))], blocks.square(4)))
    assert len(lay_block_apart(plan, None).parts) == 1
    assert not words_on(draw_view(plan, "laid-apart", None, OutputOptions("svg")))


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("unit", [LengthUnit.INCH, LengthUnit.CENTIMETRE])
def test_the_sizes_are_to_one_scale(name, unit):
    block = named_plan(name).block
    drawing = draw_sizes(block, theme_for(block.fabrics), unit)
    wide, high = block.size
    borders = [shape.trails[0] for shape in drawing.shapes if isinstance(shape, Path) and shape.paint.width > 1]
    boxes = [Polygon(places_of(trail)).bounds for trail in borders]
    sides = [max(right - left, low - top) for left, top, right, low in boxes]
    said = (4, 6, 9, 12) if unit is LengthUnit.INCH else (10, 15, 20, 30)
    assert [side / sides[0] for side in sides] == pytest.approx([size / said[0] for size in said])
    assert len({round(low, 6) for *_, low in boxes}) == 1, "they stand on one line"
    labels = [each.text.text for each in words_on(drawing)]
    longest = "by {}" if high > wide else "{}"
    assert [text for text in labels if text in {longest.format(f"{size} {unit}") for size in said}]
    assert drawing.width <= 540.01


def test_a_narrow_picture_leaves_its_label_room():
    block = blocks.rectangles([(0, 0, 1, 12), (1, 0, 2, 12)], 2, 12)
    drawing = draw_sizes(block, theme_for(block.fabrics), LengthUnit.INCH)
    words = [each.area for each in words_on(drawing)]
    assert not any(a.intersects(b) for a, b in combinations(words, 2))
    assert drawing.width <= 540.01 and drawing.height <= 720
    assert text_width("by about", 9) > 0


@pytest.mark.parametrize(
    ("settings", "told"),
    [
        ((("view", "laid-apart"), ("steps", "0")), "a whole number from 1 up"),
        ((("view", "laid-apart"), ("steps", "two")), "a whole number from 1 up"),
        ((("view", "laid-apart"), ("steps", "9" * 5000)), "a whole number from 1 up"),
        ((("steps", "2"),), "add --set view=laid-apart"),
    ],
)
def test_wrong_settings_are_said_plainly(settings, told):
    with pytest.raises(CannotMakeError, match=told):
        OUTPUT.make(named_plan("star"), OutputOptions("svg", settings=settings))
