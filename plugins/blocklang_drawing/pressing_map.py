"""The back of the block: every allowance lying as it is pressed, and arrows that point to where it lies."""

from dataclasses import replace

from blocklang.assembly import JoinKind, Travelled
from blocklang.block import SpinSense
from blocklang.plan import SewingPlan
from blocklang.pressing import Pressed
from blocklang.thickness import Folded, Lies, fold
from blocklang_drawing import words
from blocklang_drawing.block_picture import MARGIN
from blocklang_drawing.folded_cloth import paint_folded
from blocklang_drawing.frame import Bounds, Frame
from blocklang_drawing.pressing_arrows import PressedRun, pressed_runs, pressing_arrow
from blocklang_drawing.shapes import Dot, Drawing, Paint, Path, Shape
from blocklang_drawing.theme import Theme

LONGEST, SHORTEST = 15.0, 5.0
#: The ring round a spun junction, in allowances: just outside of the little patch that its allowances form.
SPUN_RING = 1.55
STOP_DOT = 2.6
#: Marks over allowances narrower than this (points) are drawn fine, without paper round them.
NARROW = 7.0
#: In a block of more patches than this, allowances come out finer than a hair.
MOST_FOLDED = 2500


def draw_pressing_map(
    plan: SewingPlan, theme: Theme, *, width: float = 400.0, height: float = 400.0, folded: Folded | None = None
) -> Drawing:
    """Return the block seen from the back (mirrored), as large as fits in the box (points).

    `folded` may give its cloth when that is known already.
    """
    if folded is None:
        folded = fold_back_of(plan)
    room = (width - 2 * MARGIN, height - 2 * MARGIN)
    frame = Frame.fit(_bounds(plan, folded), *room, left=MARGIN, top=MARGIN, mirrored=True)
    shapes = (
        *paint_folded(plan, folded, frame, theme),
        _seam_line_outside(plan, frame, theme),
        *_spins(plan, frame, theme),
        *_stops(plan, frame, theme),
        *_arrows(plan, frame, theme),
    )
    title = theme.language.say(words.back(plan.block.name))
    return Drawing(frame.width + 2 * MARGIN, frame.height + 2 * MARGIN, shapes, title, theme.font)


def lies_of(plan: SewingPlan) -> Lies:
    """Return which way every allowance of a plan lies."""
    spun = (spin.junction for spin in plan.pressing.spins if spin.sense is not SpinSense.NONE)
    return Lies.of(plan.pressing.directions, spun)


def fold_back_of(plan: SewingPlan) -> Folded:
    """Return the cloth of a plan's block as it lies; none of it when it would be too fine to be seen on any page."""
    return fold(plan.assembly, lies_of(plan)) if len(plan.block.patches) <= MOST_FOLDED else Folded(())


def _bounds(plan: SewingPlan, folded: Folded) -> Bounds:
    """Return the bounds of a block, raw edges and all (ticks)."""
    left, low, right, high = plan.block.outline.bounds()
    more = plan.block.seam_allowance
    places = [place for layer in folded.layers for place in layer.rings[0]]
    xs, ys = [x for x, _ in places], [y for _, y in places]
    return min(left - more, *xs), min(low - more, *ys), max(right + more, *xs), max(high + more, *ys)


def _seam_line_outside(plan: SewingPlan, frame: Frame, theme: Theme) -> Path:
    dashed = Paint(stroke=theme.ink, width=theme.line, dash=(4.0, 3.0))
    return Path((frame.outline(plan.block.outline),), dashed)


def _arrows(plan: SewingPlan, frame: Frame, theme: Theme) -> tuple[Shape, ...]:
    shapes: list[Shape] = []
    for run in map_runs(plan):
        length = sum(edge.length() for edge in run.edges) * frame.scale
        arrow = pressing_arrow(frame, run, min(LONGEST, max(SHORTEST, length * 0.4)), theme)
        shapes.append(replace(arrow, halo=None if _is_narrow(plan, frame) else theme.paper))
    return tuple(shapes)


def map_runs(plan: SewingPlan) -> tuple[PressedRun, ...]:
    """Return the runs of the whole block, seam by seam in the order of sewing."""
    pressed = {item.segment: item for item in plan.pressing.directions}
    runs: list[PressedRun] = []
    for join in plan.assembly.joins:
        along: tuple[Pressed, ...] = tuple(pressed[step.segment] for step in join.path if step.segment in pressed)
        runs.extend(pressed_runs(plan.graph, along))
    return tuple(runs)


def _spins(plan: SewingPlan, frame: Frame, theme: Theme) -> tuple[Shape, ...]:
    radius = plan.block.seam_allowance * frame.scale * SPUN_RING
    lines = ((theme.ink, 0.6),) if _is_narrow(plan, frame) else ((theme.paper, 3.0), (theme.ink, 1.2))
    places = (plan.graph.junctions[junction].at for junction in sorted(lies_of(plan).spun))
    return tuple(
        Dot(frame.at(place), radius, Paint(stroke=colour, width=width)) for place in places for colour, width in lines
    )


def _is_narrow(plan: SewingPlan, frame: Frame) -> bool:
    return plan.block.seam_allowance * frame.scale < NARROW


def _stops(plan: SewingPlan, frame: Frame, theme: Theme) -> tuple[Shape, ...]:
    """Return a dot at every junction where a seam stops short of the raw edge."""
    radius = min(STOP_DOT, plan.block.seam_allowance * frame.scale * 0.35)
    places = (frame.at(plan.graph.junctions[junction].at) for junction in stops_of(plan))
    return tuple(Dot(place, radius, Paint(theme.ink, theme.paper, 0.8)) for place in places)


def stops_of(plan: SewingPlan) -> tuple[int, ...]:
    """Return the junctions where seams stop at the match point for good, by index: not where a partial seam goes on."""
    found: set[int] = set()
    gone_on: set[int] = set()
    for join in plan.assembly.joins:
        start, end = _end(plan, join.path[0], True), _end(plan, join.path[-1], False)
        gone_on.update([start] if join.kind is JoinKind.PARTIAL_FINISH else [])
        found.update([start] if join.start_stops else [])
        found.update([end] if join.end_stops else [])
        found.update(join.pivots)
    return tuple(sorted(found - gone_on))


def _end(plan: SewingPlan, step: Travelled, first: bool) -> int:
    segment = plan.graph.segments[step.segment]
    return segment.start if step.forward == first else segment.end
