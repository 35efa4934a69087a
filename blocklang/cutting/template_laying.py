"""How a template is laid on each of its patches, and which of its tips are trimmed for all of them."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from blocklang.block import Stripes
from blocklang.cutting.finished import Finished
from blocklang.cutting.motions import STAY, Motion, motions
from blocklang.cutting.offsetting import Limit
from blocklang.cutting.template_values import TemplatePlace
from blocklang.geometry import TICKS_PER_INCH
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph import PatchGraph

SAME_HEADING = 2 * STRAIGHT_ANGLE
Limits = tuple[tuple[Limit, ...], ...]


@dataclass(frozen=True, slots=True)
class Table:
    """What is worked out once for a block, all by patch: edges on the grain, distances of raw edges, trims of tips."""

    graph: PatchGraph
    patches: tuple[Finished, ...]
    grain: tuple[tuple[int, ...], ...]
    distances: tuple[tuple[float, ...], ...]
    limits: tuple[Limits, ...]


def lay(table: Table, first: int, heading: float, patch: int) -> TemplatePlace:
    """Return how the template of a first patch is laid on an equal patch: where most of its trims are those of both.

    It is turned over only where it must be. The grain of the template, `heading`, runs along the outer edges of the
    patch, its stripes along the patch's own.
    """
    if patch == first:
        return TemplatePlace(patch, STAY)
    here, there = table.patches[first].outline, table.patches[patch].outline
    found = list(_suitable(table, first, heading, patch)) or list(motions(here, (), there, ()))
    assert found, "the lines of a cutting list are of equal shapes"
    found = [motion for motion in found if not motion.mirrored] or found
    unlike = [_unlike(table.limits[first], _brought_back(table, motion, first, patch)) for motion in found]
    return TemplatePlace(patch, found[unlike.index(min(unlike))])


def is_reversed(table: Table, first: int, place: TemplatePlace) -> bool:
    """Tell whether a patch is the mirror image of the template, and not also the same shape turned."""
    here, there = table.patches[first].outline, table.patches[place.patch].outline
    return place.motion.mirrored and all(motion.mirrored for motion in motions(here, (), there, ()))


def common_limits(table: Table, first: int, places: Sequence[TemplatePlace]) -> Limits:
    """Return the trims that every patch of a shape has, by corner of the first one."""
    brought = [_brought_back(table, place.motion, first, place.patch) for place in places]
    return tuple(
        tuple(limit for limit in limits if all(any(limit.on(other) for other in each[corner]) for each in brought))
        for corner, limits in enumerate(table.limits[first])
    )


def _suitable(table: Table, first: int, heading: float, patch: int) -> Iterator[Motion]:
    here, there = table.patches[first], table.patches[patch]
    labels = ([round(by) for by in table.distances[index]] for index in (first, patch))
    drawn = table.graph.block.patches
    for motion in motions(here.outline, next(labels), there.outline, next(labels)):
        threads = motion.heading(heading)
        edges = (there.outline.edges[index] for index in table.grain[patch])
        on_grain = all(abs(math.remainder(e.departs() - threads, math.pi / 2)) <= SAME_HEADING for e in edges)
        if on_grain and _same_stripes(motion, drawn[first].stripes, drawn[patch].stripes):
            yield motion


def _same_stripes(motion: Motion, first: Stripes | None, other: Stripes | None) -> bool:
    if first is None or other is None:
        return first is other
    (ax, ay), (bx, by) = other.start, other.end
    length = math.dist(other.start, other.end) or 1.0
    laid = (motion.lay(first.start), motion.lay(first.end))
    return all(abs((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / length < TICKS_PER_INCH / 1000 for x, y in laid)


def _brought_back(table: Table, motion: Motion, first: int, patch: int) -> Limits:
    """Return the trims of a patch as they lie on its template, by corner of the template."""
    corners = [motion.back(edge.start) for edge in table.patches[patch].outline.edges]
    found = []
    for edge in table.patches[first].outline.edges:
        nearest = min(range(len(corners)), key=lambda i: math.dist(corners[i], edge.start))
        found.append(tuple(_limit_back(motion, limit) for limit in table.limits[patch][nearest]))
    return tuple(found)


def _limit_back(motion: Motion, limit: Limit) -> Limit:
    if not motion.mirrored:
        return Limit(motion.back(limit.at), limit.heading - motion.turn)
    # Turned over, what is kept would lie on the right, so the line runs the other way.
    return Limit(motion.back(limit.at), motion.turn - limit.heading)


def _unlike(own: Limits, other: Limits) -> int:
    pairs = [pair for mine, theirs in zip(own, other, strict=True) for pair in ((mine, theirs), (theirs, mine))]
    return sum(not any(a.on(b) for b in second) for first, second in pairs for a in first)
