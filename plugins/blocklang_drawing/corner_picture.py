"""The corner of a set-in seam, enlarged: the notch and the piece that goes into it, where the needle turns."""

import math
from dataclasses import replace

from blocklang.plan import PlanStep, SewingPlan
from blocklang_drawing import words
from blocklang_drawing.frame import Bounds, Frame, turned
from blocklang_drawing.laying_apart import LaidApart
from blocklang_drawing.placing import Placed, paint_units
from blocklang_drawing.raw_edges import Ring
from blocklang_drawing.seam_marks import draw_seam_marks
from blocklang_drawing.shapes import Drawing, Paint, Path, Place, Window, polygon
from blocklang_drawing.step_picture import LaidStep, lay_step
from blocklang_drawing.theme import Theme

#: The side of the picture (points), and how much of it lies beyond the two places where the needle turns.
SIDE, BEYOND = 132.0, 0.62
_EDGE = 1.0


def draw_corner(plan: SewingPlan, step: PlanStep, theme: Theme, laid_out: LaidStep | None = None) -> Drawing | None:
    """Return the first pivot of a step from close by, turned as the step's picture is; None where no seam turns."""
    laid_out = lay_step(plan, step) if laid_out is None else laid_out
    laid, turn = laid_out.before, laid_out.turn
    join = next((join for join in laid.joins if join.pivots and len(join.units) > 1), None)
    if join is None:
        return None
    contacts = tuple(contact for contact in laid.contacts if contact.join == join.index)
    sides = (laid.units[unit] for unit in (contacts[0].left, contacts[0].right))
    first, last = (turned(side.moved(join.pivots[0]), turn) for side in sides)
    bounds = _round(first, last, plan.block.seam_allowance)
    near = replace(
        laid, units=tuple(_near(unit, bounds, turn) for unit in laid.units), contacts=contacts, joins=(join,)
    )
    frame = Frame(bounds, (SIDE - 2 * _EDGE) / (bounds[2] - bounds[0]), _EDGE, _EDGE, turn=turn)
    return _drawing(plan, frame, near, theme)


def _drawing(plan: SewingPlan, frame: Frame, near: LaidApart, theme: Theme) -> Drawing:
    inside = (
        *paint_units(frame, plan.graph, near.units, theme),
        *draw_seam_marks(frame, plan.graph, near, theme),
    )
    low, high = _EDGE, _EDGE + frame.width
    shapes = (
        Window((low, low), frame.width, frame.height, (low, low), inside),
        Path((polygon(((low, low), (high, low), (high, high), (low, high))),), Paint(stroke=theme.quiet, width=0.8)),
    )
    return Drawing(SIDE, SIDE, shapes, theme.language.say(words.CORNER), theme.font)


def _round(first: Place, last: Place, allowance: int) -> Bounds:
    """Return a square round both places, with as much round them as shows the raw edges of both corners."""
    middle = ((first[0] + last[0]) / 2, (first[1] + last[1]) / 2)
    half = math.dist(first, last) * BEYOND + 2.2 * allowance
    return middle[0] - half, middle[1] - half, middle[0] + half, middle[1] + half


def _near(unit: Placed, bounds: Bounds, turn: float) -> Placed:
    """Return the patches of a unit that show in the bounds."""
    shown = [pair for pair in zip(unit.patches, unit.rings, strict=True) if _shows(pair[1], bounds, turn)]
    return replace(unit, patches=tuple(patch for patch, _ in shown), rings=tuple(ring for _, ring in shown))


def _shows(ring: Ring, bounds: Bounds, turn: float) -> bool:
    places = [turned(place, turn) for place in ring]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return min(xs) < bounds[2] and max(xs) > bounds[0] and min(ys) < bounds[3] and max(ys) > bounds[1]
