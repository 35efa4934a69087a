"""The block laid apart: the units that its last steps join, moved straight away from its middle."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from blocklang_drawing import Drawing, Frame, Place, Shape, Text, Theme, lines_of
from blocklang_drawing.painting import Painted, paint_patches

from blocklang.plan import PlanStep, PlanUnit, SewingPlan
from blocklang_diagram import words

SIDE, MARGIN, CAPTION = 504.0, 4.0, 10.0
#: So many parts at most, unless the last step alone joins more.
MOST_PARTS = 9
#: Between parts, as a share of the block's longer side; parts that come no further apart than this are not clear.
GAP = 0.03
#: How far parts move, as a share of their distance from the middle, and in which strides that is tried.
FURTHEST, STRIDE = 2.0, 0.05


@dataclass(frozen=True, slots=True)
class Apart:
    """The parts that the last steps join, the first of those steps, and how far each part is moved (ticks)."""

    parts: tuple[PlanUnit, ...]
    first: int
    moves: tuple[Place, ...]


def draw_laid_apart(plan: SewingPlan, theme: Theme, steps: int | None) -> Drawing:
    """Return the block before its last steps; without a number of them, before as many as give a clear picture."""
    apart = lay_block_apart(plan, steps)
    frame = Frame.fit(_bounds(apart), SIDE - 2 * MARGIN, SIDE - 2 * MARGIN, left=MARGIN, top=MARGIN)
    shapes: list[Shape] = [*paint_patches(frame, _painted(plan, apart, frame), theme)]
    down = frame.height + 2 * MARGIN
    wide = max(frame.width, 200.0)
    if plan.steps:
        said = words.taken_apart(len(apart.parts), apart.first, plan.steps[-1].number)
        for line in lines_of(theme.language.say(said), CAPTION, wide):
            down += CAPTION * 1.4
            shapes.append(Text((MARGIN, down), line, CAPTION, theme.ink))
    title = theme.language.say(words.apart_shown(plan.block.name))
    return Drawing(wide + 2 * MARGIN, down + 4, tuple(shapes), title, theme.font)


def lay_block_apart(plan: SewingPlan, steps: int | None) -> Apart:
    """Return the parts of the last steps and how far they move."""
    if not plan.steps:
        return Apart(plan.units, 1, ((0.0, 0.0),))
    if steps is not None:
        return _apart(plan, min(steps, len(plan.steps))) or _as_sewn(plan, min(steps, len(plan.steps)))
    best = _apart(plan, 1)
    for count in range(2, len(plan.steps) + 1):
        if len(_parts(plan, plan.steps[-count:])) > MOST_PARTS:
            break
        best = _apart(plan, count) or best
    return best or _as_sewn(plan, 1)


def _apart(plan: SewingPlan, count: int) -> Apart | None:
    """Return the parts moved no further than they need to clear each other; None when that does not clear them."""
    from shapely.geometry import Polygon

    parts = _parts(plan, plan.steps[-count:])
    middles = _from_the_middle(plan, parts)
    shapes = [Polygon(part.outline.chords()) for part in parts]
    for stride in range(1, round(FURTHEST / STRIDE) + 1):
        moves = tuple((x * stride * STRIDE, y * stride * STRIDE) for x, y in middles)
        if _clear(shapes, moves, GAP * max(plan.block.size)):
            return Apart(parts, plan.steps[-count].number, moves)
    return None


def _clear(shapes: Sequence[object], moves: Sequence[Place], gap: float) -> bool:
    from shapely.affinity import translate
    from shapely.strtree import STRtree

    moved = [translate(shape, *move) for shape, move in zip(shapes, moves, strict=True)]
    near = STRtree(moved).query(moved, predicate="dwithin", distance=gap)
    return bool(near.shape[1] == len(moved))


def _as_sewn(plan: SewingPlan, count: int) -> Apart:
    """Return the parts moved as the pictures of the steps move them: for parts that share a middle."""
    from blocklang_drawing.laying_apart import lay_apart

    steps = plan.steps[-count:]
    joins = tuple(join for step in steps for join in step.joins)
    laid = lay_apart(plan, replace(steps[-1], joins=joins, times=1))
    return Apart(tuple(plan.unit(unit.name) for unit in laid.units), steps[0].number, tuple(u.move for u in laid.units))


def _parts(plan: SewingPlan, steps: Sequence[PlanStep]) -> tuple[PlanUnit, ...]:
    joins = [join for step in steps for join in step.joins]
    made = {join.makes for join in joins}
    names = dict.fromkeys(name for join in joins for name in join.units if name not in made)
    units = {unit.name: unit for unit in plan.units}
    return tuple(units[name] for name in names)


def _from_the_middle(plan: SewingPlan, parts: Sequence[PlanUnit]) -> list[Place]:
    x, y = plan.block.outline.centroid()
    return [(px - x, py - y) for px, py in (part.outline.centroid() for part in parts)]


def _bounds(apart: Apart) -> tuple[float, float, float, float]:
    each = [(part.outline.bounds(), move) for part, move in zip(apart.parts, apart.moves, strict=True)]
    return (
        min(box[0] + move[0] for box, move in each),
        min(box[1] + move[1] for box, move in each),
        max(box[2] + move[0] for box, move in each),
        max(box[3] + move[1] for box, move in each),
    )


def _painted(plan: SewingPlan, apart: Apart, frame: Frame) -> Iterator[Painted]:
    for part, move in zip(apart.parts, apart.moves, strict=True):
        left, top = frame.left + move[0] * frame.scale, frame.top - move[1] * frame.scale
        moved = replace(frame, left=left, top=top)
        for index in part.patches:
            patch = plan.block.patches[index]
            yield Painted(patch, patch.outline.chords(), moved.outline(patch.outline), move)
