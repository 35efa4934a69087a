"""The back of the block: every seam with its allowance lying where it is pressed, and arrows that point there."""

import math
from dataclasses import replace

from blocklang.block import SpinSense
from blocklang.geometry import Edge
from blocklang.plan import SewingPlan
from blocklang.pressing import Pressed
from blocklang_drawing.block_picture import MARGIN
from blocklang_drawing.frame import Frame
from blocklang_drawing.pressing_arrows import PressedRun, pressed_runs, pressing_arrow
from blocklang_drawing.raw_edges import CURVE_ERROR
from blocklang_drawing.shapes import Dot, Drawing, Paint, Path, Place, Shape, Trail, polygon
from blocklang_drawing.theme import Theme

CLOTH, FOLDED = "#f2f5f5", "#c3d0d3"
LONGEST, SHORTEST = 15.0, 5.0


def draw_pressing_map(plan: SewingPlan, theme: Theme, *, width: float = 400.0, height: float = 400.0) -> Drawing:
    """Return the block seen from the back (mirrored), as large as fits in the box (points)."""
    block = plan.block
    room = (width - 2 * MARGIN, height - 2 * MARGIN)
    frame = Frame.fit(block.outline.bounds(), *room, left=MARGIN, top=MARGIN, mirrored=True)
    cloth = Path(tuple(frame.outline(patch.outline) for patch in block.patches), Paint(CLOTH, theme.ink, theme.line))
    border = Path((frame.outline(block.outline),), Paint(stroke=theme.ink, width=theme.line * 2))
    shapes = (cloth, _folded(plan, frame, theme), border, *_arrows(plan, frame, theme), *_spins(plan, frame, theme))
    title = f"{block.name}: the back, with every seam allowance where it is pressed"
    return Drawing(frame.width + 2 * MARGIN, frame.height + 2 * MARGIN, shapes, title, theme.font)


def _folded(plan: SewingPlan, frame: Frame, theme: Theme) -> Path:
    bands: list[Trail] = []
    for item in plan.pressing.directions:
        segment = plan.graph.segments[item.segment]
        sides = (True, False) if item.toward is None else (item.toward == segment.left,)
        bands.extend(_band(frame, segment.edge, to_left, plan.block.seam_allowance * 0.9) for to_left in sides)
    return Path(tuple(bands), Paint(FOLDED, theme.quiet, 0.3))


def _band(frame: Frame, edge: Edge, to_left: bool, wide: float) -> Trail:
    line = edge.chords(CURVE_ERROR)
    sign = 1 if to_left else -1
    # Ends cut at 45 degrees keep the bands of neighbouring seams apart; a short seam keeps a third of its length.
    trim = min(wide, edge.length() / 3)
    inner: list[Place] = []
    for index, place in enumerate(line):
        before, after = line[max(index - 1, 0)], line[min(index + 1, len(line) - 1)]
        length = math.dist(before, after) or 1.0
        ux, uy = (after[0] - before[0]) / length, (after[1] - before[1]) / length
        along = trim if index == 0 else -trim if index == len(line) - 1 else 0.0
        inner.append((place[0] - uy * sign * wide + ux * along, place[1] + ux * sign * wide + uy * along))
    return polygon(frame.ring((*line, *reversed(inner))))


def _arrows(plan: SewingPlan, frame: Frame, theme: Theme) -> tuple[Shape, ...]:
    shapes: list[Shape] = []
    for run in map_runs(plan):
        length = sum(edge.length() for edge in run.edges) * frame.scale
        arrow = pressing_arrow(frame, run, min(LONGEST, max(SHORTEST, length * 0.4)), theme)
        shapes.append(replace(arrow, halo=None))
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
    patch = (plan.block.outline.area() / len(plan.block.patches)) ** 0.5
    radius = min(4.0, plan.block.seam_allowance * frame.scale * 0.8, patch * frame.scale * 0.15)
    spun = (spin for spin in plan.pressing.spins if spin.sense is not SpinSense.NONE)
    places = (plan.graph.junctions[spin.junction].at for spin in spun)
    return tuple(Dot(frame.at(place), radius, Paint(theme.paper, theme.ink, 1.0)) for place in places)
