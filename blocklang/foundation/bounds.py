"""The fewest sections that any division can have, from the junctions alone: for blocks with too many sets to list.

A section of k patches has k - 1 joins: as many as it has seam segments inside, less its inner junctions. So the number
of sections is the number of patches, less the segments that lie inside sections, plus the junctions that do. At each
junction only some segments can lie inside sections together; what is most they can be, over the whole block, bounds it.
"""

import math
from collections.abc import Iterator

from blocklang.foundation.lines import Lay
from blocklang.foundation.solving import Program, minimise, rounded_up
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph.values import Junction


def fewest_sections(lay: Lay) -> int:
    """Return a number of sections that no division goes below, at least 1."""
    program = Program()
    inside = {segment.index: program.column(-1.0) for segment in lay.graph.seams if segment.edge.arc is None}
    for junction in lay.graph.junctions:
        _limit(program, lay, junction, inside)
    return max(1, len(lay.near) + rounded_up(minimise(program).bound))


def _limit(program: Program, lay: Lay, junction: Junction, inside: dict[int, int]) -> None:
    """Forbid what cannot lie inside one section at a junction; a junction that can be closed may close."""
    seams = [end.segment for end in junction.ends if end.segment in inside]
    patches = _sectors(lay, junction)
    closed = None
    if junction.is_inner and len(seams) == len(junction.ends) and any(_is_half(angle) for _, angle in patches):
        closed = program.column(1.0)
        for seam in seams:
            program.row(0.0, math.inf, {inside[seam]: 1.0, closed: -1.0})
    for fan in _fans_too_wide(junction, patches):
        if all(seam in inside for seam in fan):
            terms = {inside[seam]: 1.0 for seam in fan}
            if closed is not None:
                terms[closed] = -1.0
            program.row(-math.inf, len(fan) - 1.0, terms)


def _sectors(lay: Lay, junction: Junction) -> list[tuple[int, float]]:
    """Return the patch and its angle between each end and the one after it; no patch where the outside is."""
    ends = junction.ends
    found = []
    for end, following in zip(ends, ends[1:] + ends[:1], strict=True):
        segment = lay.graph.segments[end.segment]
        patch = segment.left if end.at_start else segment.right
        found.append((patch, (following.heading - end.heading) % math.tau))
    return found


def _fans_too_wide(junction: Junction, sectors: list[tuple[int, float]]) -> Iterator[tuple[int, ...]]:
    """Yield the seams inside the smallest fans of neighbouring patches that cannot be one section as they stand."""
    count = len(sectors)
    for first in range(count):
        for size in range(2, count + 1):
            fan = [sectors[(first + step) % count] for step in range(size)]
            if any(patch < 0 for patch, _ in fan):
                break
            if not _can_be_sewn([angle for _, angle in fan]):
                yield tuple(junction.ends[(first + step) % count].segment for step in range(1, size))
                break


def _can_be_sewn(angles: list[float]) -> bool:
    """Tell whether one of the two outer patches of a fan can be cut off by a line: less than half a turn each side."""
    total = sum(angles)
    return any(max(outer, total - outer) < math.pi - STRAIGHT_ANGLE for outer in (angles[0], angles[-1]))


def _is_half(angle: float) -> bool:
    return abs(angle - math.pi) <= STRAIGHT_ANGLE
