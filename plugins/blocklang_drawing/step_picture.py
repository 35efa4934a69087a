"""The picture of a step: its units laid apart with the seam marked, and what comes out, pressed and measured."""

from dataclasses import dataclass, replace

from blocklang.block import LengthUnit
from blocklang.geometry import TICKS_PER_INCH
from blocklang.plan import PlanStep, SewingPlan
from blocklang_drawing import words
from blocklang_drawing.dimensions import draw_dimensions, right_of_dimensions, room_for_dimensions
from blocklang_drawing.frame import Bounds, Frame
from blocklang_drawing.laying_apart import LaidApart, lay_apart
from blocklang_drawing.placing import Placed, bounds_of, lying_straight, paint_units, place_unit
from blocklang_drawing.pressing_arrows import pressed_runs, pressing_arrow
from blocklang_drawing.seam_marks import draw_seam_marks
from blocklang_drawing.shapes import Arrow, Drawing, Shape
from blocklang_drawing.theme import Theme

MARGIN, BETWEEN = 12.0, 44.0
#: No more than this many points to the inch: small patches stay small beside large ones.
LARGEST_SCALE = 44.0 / TICKS_PER_INCH
ARROW, SHORTEST_ARROW = 18.0, 8.0


@dataclass(frozen=True, slots=True)
class _Panels:
    scale: float
    before: Frame
    after: Frame
    stacked: bool
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class LaidStep:
    """What the picture of a step shows, whatever its size: the units before and after, and how far they are turned."""

    before: LaidApart
    after: Placed
    turn: float


def lay_step(plan: SewingPlan, step: PlanStep) -> LaidStep:
    """Lay out the first making of a step."""
    made = plan.unit(step.makes[0])
    after = place_unit(plan.graph, made.name, made.patches)
    return LaidStep(lay_apart(plan, step), after, lying_straight(made.outline))


def draw_step(
    plan: SewingPlan,
    step: PlanStep,
    theme: Theme,
    *,
    width: float = 470.0,
    height: float = 210.0,
    shown_in: LengthUnit = LengthUnit.INCH,
    laid_out: LaidStep | None = None,
) -> Drawing:
    """Return the picture of the first making of a step, as large as fits in the box (points).

    `laid_out` may give the step laid out when it is drawn more than once.
    """
    if laid_out is None:
        laid_out = lay_step(plan, step)
    laid, after, turn = laid_out.before, laid_out.after, laid_out.turn
    room = room_for_dimensions(step.measures, theme, shown_in)
    panels = _turned(_arrange(bounds_of(laid.units, turn), bounds_of((after,), turn), width, height, room), turn)
    shapes = (
        *paint_units(panels.before, plan.graph, laid.units, theme),
        *draw_seam_marks(panels.before, plan.graph, laid, theme),
        _leads_to(panels, theme),
        *paint_units(panels.after, plan.graph, (after,), theme),
        *_arrows(plan, laid, panels.after, theme),
        *draw_dimensions(panels.after, step.measures, theme, shown_in),
    )
    width = max(panels.width, right_of_dimensions(panels.after, step.measures, theme, shown_in) + MARGIN)
    title = theme.language.say(words.step(step.number, step.title))
    return Drawing(width, panels.height, shapes, title, theme.font)


def _turned(panels: _Panels, turn: float) -> _Panels:
    return replace(panels, before=replace(panels.before, turn=turn), after=replace(panels.after, turn=turn))


def _arrange(before: Bounds, after: Bounds, width: float, height: float, room: tuple[float, float]) -> _Panels:
    beside = _beside(before, after, width, height, room)
    stacked = _stacked(before, after, width, height, room)
    return stacked if stacked.scale > beside.scale * 1.15 else beside


def _beside(before: Bounds, after: Bounds, width: float, height: float, room: tuple[float, float]) -> _Panels:
    across = _across(before) + _across(after)
    up = max(_up(before), _up(after))
    extra = 2 * MARGIN + BETWEEN + room[0]
    scale = min((width - extra) / across, (height - 2 * MARGIN - room[1]) / up, LARGEST_SCALE)
    first = Frame(before, scale, MARGIN, MARGIN)
    second = Frame(after, scale, MARGIN + first.width + BETWEEN + room[0], MARGIN)
    tall = max(first.height, second.height)
    first = replace(first, top=MARGIN + (tall - first.height) / 2)
    second = replace(second, top=MARGIN + (tall - second.height) / 2)
    low = max(tall, second.top - MARGIN + second.height + room[1])
    return _Panels(scale, first, second, False, extra + first.width + second.width, 2 * MARGIN + low)


def _stacked(before: Bounds, after: Bounds, width: float, height: float, room: tuple[float, float]) -> _Panels:
    across = max(_across(before), _across(after))
    up = _up(before) + _up(after)
    extra = 2 * MARGIN + BETWEEN * 0.8 + room[1]
    scale = min((width - 2 * MARGIN - room[0]) / across, (height - extra) / up, LARGEST_SCALE)
    first = Frame(before, scale, MARGIN + room[0], MARGIN)
    second = Frame(after, scale, MARGIN + room[0], MARGIN + first.height + BETWEEN * 0.8)
    wide = max(first.width, second.width)
    first = replace(first, left=MARGIN + room[0] + (wide - first.width) / 2)
    second = replace(second, left=MARGIN + room[0] + (wide - second.width) / 2)
    return _Panels(scale, first, second, True, 2 * MARGIN + room[0] + wide, extra + first.height + second.height)


def _leads_to(panels: _Panels, theme: Theme) -> Arrow:
    before, after = panels.before, panels.after
    if panels.stacked:
        x, top = before.left + before.width / 2, before.top + before.height + 7
        return Arrow((x, top), (x, after.top - 7), theme.quiet, 1.2, 7.0)
    y, left = before.top + before.height / 2, before.left + before.width + 10
    return Arrow((left, y), (left + BETWEEN - 20, y), theme.quiet, 1.2, 7.0)


def _arrows(plan: SewingPlan, laid: LaidApart, frame: Frame, theme: Theme) -> tuple[Shape, ...]:
    runs = [run for join in laid.joins for run in pressed_runs(plan.graph, join.press)]
    patches = [plan.block.patches[patch] for unit in laid.units for patch in unit.patches]
    smallest = min(patch.outline.area() for patch in patches) ** 0.5 * frame.scale
    length = max(SHORTEST_ARROW, min(ARROW, smallest * 0.55))
    return tuple(pressing_arrow(frame, run, length, theme) for run in runs)


def _across(bounds: Bounds) -> float:
    return bounds[2] - bounds[0]


def _up(bounds: Bounds) -> float:
    return bounds[3] - bounds[1]
