"""Where a crease ends: how far cloth is folded there, and whose cloth is kept clear."""

import math

from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.thickness.cloth import Piece
from blocklang.thickness.creases import Crease, CreaseEnd
from blocklang.thickness.work import Members, Work


def is_caught(work: Work, crease: Crease, patch: int, piece: Piece) -> bool:
    """Tell whether cloth of another seam lies in the way of the needle: not where that is kept clear."""
    met = [j for j in crease.junctions if j >= 0 and patch in work.around[j]]
    if not met:
        return True
    x, y = (piece.bounds[0] + piece.bounds[2]) / 2, (piece.bounds[1] + piece.bounds[3]) / 2
    places = work.graph.junctions
    nearest = min(met, key=lambda j: math.hypot(places[j].at.x - x, places[j].at.y - y))
    return not crease.is_free_at(nearest)


def cuts_of(work: Work, crease: Crease, members: Members, own: bool) -> tuple[float | None, float | None]:
    """Return the headings along which folded cloth is cut off at both ends, of the patches' own seams or of others."""
    return _cut(work, crease, members, 0, own), _cut(work, crease, members, -1, own)


def _cut(work: Work, crease: Crease, members: Members, place: int, own: bool) -> float | None:
    """Return the heading along which folded cloth is cut off at an end of a crease, None when the crease is drawn on.

    `members` lie on the left of the crease; their raw edge may go straight on there, or turn outward, where the block
    itself has a notch: then there is nothing beyond to fold but the patch's own allowance.
    """
    along = crease.edge.departs() if place == 0 else crease.edge.arrives()
    square, junction, end = along - math.pi / 2, crease.junctions[place], crease.ends[place]
    if junction < 0 or end is CreaseEnd.CUT:
        return square
    wedge = work.wedge(crease.left[place], junction)
    if wedge.angle > math.pi - STRAIGHT_ANGLE:
        return wedge.middle_outside
    together = sum(work.wedge(patch, junction).angle for patch in work.around[junction] & members)
    if end is CreaseEnd.RAW and together < math.pi - STRAIGHT_ANGLE:
        return None
    straight_on = end is CreaseEnd.RAW and together < math.pi + STRAIGHT_ANGLE
    return None if own and not straight_on else square


def sides_of(work: Work, crease: Crease) -> tuple[Members, Members]:
    """Return the patches on either side of a seam that is finished within one unit."""
    left, right = set(crease.left), set(crease.right)
    for place, junction in enumerate(crease.junctions):
        if junction < 0:
            continue
        along = crease.edge.departs() if place == 0 else crease.edge.arrives()
        for patch in work.around[junction] - left - right:
            turn = math.sin(work.wedge(patch, junction).middle - along)
            (left if turn > 0 else right).add(patch)
    return frozenset(left), frozenset(right)
