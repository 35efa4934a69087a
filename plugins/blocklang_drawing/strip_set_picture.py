"""A strip set as it is pressed, what is trimmed off its long sides, and the cuts across it."""

import math

from blocklang.block import LengthUnit
from blocklang.cutting import StripSet, format_measure
from blocklang_drawing.cloth_box import (
    ClothBox,
    draw_cuts,
    has_room_between,
    paint_band,
    say_angle,
    say_distance,
    say_height,
)
from blocklang_drawing.cut_lines import CutLine
from blocklang_drawing.shapes import Drawing, Shape
from blocklang_drawing.theme import Theme

ROOM = (140.0, 64.0)
_CUTS = 1


def draw_strip_set(made: StripSet, allowance: float, theme: Theme, shown_in: LengthUnit) -> Drawing:
    """Return a stretch of the set, its first fabric at the top; `allowance` is the seam allowance in inches."""
    high, trimmed = float(made.sewn.shown), float(made.trimmed.shown)
    low = (high - trimmed) / 2
    lines = _cuts(made, low, high - low)
    beside, apart = (theme.language.say(format_measure(each, shown_in)) for each in (made.trimmed, made.sub_cut))
    box = ClothBox.fit(lines[-1].end[0], high, ROOM, apart, beside, goes_on=True)
    if has_room_between(box, lines[-2:], apart, made.angle):
        box = ClothBox.fit(lines[-1].end[0], high, ROOM, "", beside, goes_on=True)
    trims = tuple(CutLine((-box.before, y), (box.wide + box.after, y)) for y in (low, high - low)) if low > 0 else ()
    shapes = (
        *_strips(box, made, allowance, theme),
        *draw_cuts(box, (*trims, *lines), theme),
        *say_height(box, low, high - low, beside, theme),
        *say_distance(box, lines[-2:], apart, made.angle, theme),
        *say_angle(box, lines[0].start, made.angle, theme),
    )
    return Drawing(*box.room, shapes, ", ".join(made.fabrics), theme.font)


def _cuts(made: StripSet, low: float, high: float) -> tuple[CutLine, ...]:
    lean = (high - low) / math.tan(math.radians(made.angle)) if made.angle != 90 else 0.0
    step = float(made.sub_cut.shown) / math.sin(math.radians(made.angle))
    return tuple(CutLine((place * step, low), (place * step + lean, high)) for place in range(_CUTS + 1))


def _strips(box: ClothBox, made: StripSet, allowance: float, theme: Theme) -> tuple[Shape, ...]:
    """Return the strips as they show once sewn: the outer two have one seam allowance more than the others."""
    shapes: list[Shape] = []
    inner = float(made.strip.shown) - 2 * allowance
    heights = [inner + allowance * (place in (0, len(made.fabrics) - 1)) for place in range(len(made.fabrics))]
    top = box.high
    for fabric, height in zip(made.fabrics, heights, strict=True):
        shapes.extend(paint_band(box, fabric, max(top - height, 0.0), top, theme))
        top -= height
    return tuple(shapes)
