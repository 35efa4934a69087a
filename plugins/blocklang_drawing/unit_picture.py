"""One unit as it lies on the table, raw edges included, with the measure it must have."""

from dataclasses import replace

from blocklang.block import LengthUnit
from blocklang.geometry import TICKS_PER_INCH
from blocklang.plan import PlanUnit, SewingPlan
from blocklang_drawing import words
from blocklang_drawing.dimensions import draw_dimensions, right_of_dimensions, room_for_dimensions
from blocklang_drawing.frame import Frame
from blocklang_drawing.placing import bounds_of, lying_straight, paint_units, place_unit
from blocklang_drawing.shapes import Drawing
from blocklang_drawing.theme import Theme

MARGIN = 4.0
#: A unit is never drawn larger than this many points to the inch: a small patch stays small.
LARGEST_SCALE = 40.0 / TICKS_PER_INCH


def draw_unit(
    plan: SewingPlan,
    unit: PlanUnit,
    theme: Theme,
    *,
    width: float = 180.0,
    height: float = 180.0,
    shown_in: LengthUnit = LengthUnit.INCH,
) -> Drawing:
    """Return the unit's picture, as large as fits in the box (points)."""
    placed = place_unit(plan.graph, unit.name, unit.patches)
    beside, below = room_for_dimensions(unit.measures, theme, shown_in)
    wide, high = 2 * MARGIN + beside, 2 * MARGIN + below
    turn = lying_straight(unit.outline)
    frame = Frame.fit(bounds_of((placed,), turn), width - wide, height - high, left=MARGIN + beside, top=MARGIN)
    frame = replace(frame, scale=min(frame.scale, LARGEST_SCALE), turn=turn)
    shapes = (
        *paint_units(frame, plan.graph, (placed,), theme),
        *draw_dimensions(frame, unit.measures, theme, shown_in),
    )
    across = max(frame.width + wide, right_of_dimensions(frame, unit.measures, theme, shown_in) + MARGIN)
    return Drawing(across, frame.height + high, shapes, theme.language.say(words.as_sewn(unit.name)), theme.font)
