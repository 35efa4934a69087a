"""The fewest sections, from what the junctions allow: quick, and mostly exact; what it does not prove is not claimed.

A section of k patches has k - 1 joins: as many as it has seam segments inside, less its inner junctions. So the number
of sections is the number of patches, less the segments that lie inside sections, plus the junctions that do. At each
junction only some segments can lie inside sections together; what is most they can be, over the whole block, bounds it.
"""

import math
from collections.abc import Iterator

from blocklang.foundation.dividing import Fewest
from blocklang.foundation.lines import Lay, patches_of
from blocklang.foundation.peeling import additions, core_of, is_section
from blocklang.foundation.solving import Program, minimise, rounded_up
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph.values import Junction

#: So often is a division that the junctions allow, but that cannot be sewn, ruled out and another sought.
_MOST_ROUNDS = 20


def divide_by_junctions(lay: Lay, rounds: int = _MOST_ROUNDS) -> Fewest:
    """Return a division with as few sections as the junctions allow, if some round finds one that can be sewn.

    What cannot be sewn is ruled out and the next best is sought; after the last round it is taken apart as it comes.
    """
    program = Program()
    inside = {segment.index: program.column(-1.0) for segment in lay.graph.seams if segment.edge.arc is None}
    for junction in lay.graph.junctions:
        _limit(program, lay, junction, inside)
    best: tuple[int, ...] = tuple(1 << patch for patch in range(len(lay.near)))
    bound = 1 if inside else len(best)
    if len(best) <= bound:
        return Fewest(best, bound)
    for _ in range(rounds):
        solution = minimise(program)
        bound = max(bound, len(lay.near) + rounded_up(solution.bound))
        chosen = set(solution.chosen)
        parts = _parts(lay, {segment for segment, column in inside.items() if column in chosen})
        failing = [part for part in parts if not is_section(lay, part)]
        repaired = tuple(piece for part in parts for piece in (_pieces(lay, part) if part in failing else [part]))
        best = min(best, repaired, key=len)
        if len(best) <= bound:
            break
        for part in failing:
            _rule_out(program, lay, part, inside)
    return Fewest(best, bound)


def _parts(lay: Lay, sewn: set[int]) -> list[int]:
    """Return the patches that hang together along seams, as bit masks."""
    left, parts = set(range(len(lay.near))), []
    for patch in range(len(lay.near)):
        if patch in left:
            part, waiting = 0, [patch]
            left.discard(patch)
            while waiting:
                here = waiting.pop()
                part |= 1 << here
                fresh = [other for index, other in lay.seams[here] if index in sewn and other in left]
                left.difference_update(fresh)
                waiting.extend(fresh)
            parts.append(part)
    return parts


def _pieces(lay: Lay, part: int) -> list[int]:
    """Take a part that cannot be sewn apart into sections, each as large as it grows."""
    pieces = []
    while part:
        grown = [_grown(lay, 1 << patch, part) for patch in patches_of(part)]
        largest = max(grown, key=lambda members: (members.bit_count(), -members))
        pieces.append(largest)
        part &= ~largest
    return pieces


def _grown(lay: Lay, members: int, within: int) -> int:
    while (found := next((patch for patch, _ in additions(lay, members) if within >> patch & 1), None)) is not None:
        members |= 1 << found
    return members


def _rule_out(program: Program, lay: Lay, part: int, inside: dict[int, int]) -> None:
    """Forbid a section of just these patches, and the core of it that nothing can be taken off."""
    for members in {part, core_of(lay, part)}:
        terms: dict[int, float] = {}
        within = 0
        for segment, column in inside.items():
            left, right = (members >> patch & 1 for patch in lay.graph.segments[segment].patches)
            if left and right:
                terms[column], within = 1.0, within + 1
            elif left or right:
                terms[column] = -1.0
        program.row(-math.inf, within - 1.0, terms)


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
