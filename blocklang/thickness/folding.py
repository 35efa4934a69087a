"""Sewing a block on paper: join after join, what lies beyond the seam is folded to the side it is pressed to."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from blocklang.assembly.values import Assembly
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph.values import PatchGraph
from blocklang.thickness.cloth import Piece, allowances_of, cut_outlines, parts_of
from blocklang.thickness.creases import Crease, CreaseEnd, creases_of, halves_left_open
from blocklang.thickness.folds import Zone, fold_back, zone_beyond
from blocklang.thickness.lying import Lies
from blocklang.thickness.wedges import Wedge, patches_round, wedge_of

if TYPE_CHECKING:
    from shapely import Polygon

#: Crumbs of less area than this share of a squared allowance are lattice noise, not cloth.
CRUMB = 1e-5

Members = frozenset[int]


@dataclass(slots=True)
class Work:
    """Cloth while a block is sewn: the allowance of each patch in pieces, and the order that the next piece takes."""

    graph: PatchGraph
    pieces: list[list[Piece]]
    around: tuple[Members, ...]  # the patches at each junction
    order: int
    wedges: dict[tuple[int, int], Wedge] = field(default_factory=dict)  # known so far, by patch and junction

    @property
    def allowance(self) -> float:
        """The seam allowance in ticks."""
        return float(self.graph.block.seam_allowance)

    def touching(self, patch: int) -> Members:
        """Return the patches that touch a patch, itself included."""
        segments = (self.graph.segments[index] for index, _ in self.graph.sides[patch])
        return frozenset().union(*(self.around[segment.start] | self.around[segment.end] for segment in segments))

    def wedge(self, patch: int, junction: int) -> Wedge:
        """Return the corner of a patch at a junction."""
        if (patch, junction) not in self.wedges:
            self.wedges[patch, junction] = wedge_of(self.graph, patch, junction)
        return self.wedges[patch, junction]


def fold_all(assembly: Assembly, lies: Lies, bodies: "Sequence[Polygon]") -> list[Piece]:
    """Return the allowances of all patches, in pieces, as they lie when the block is sewn and pressed; front first.

    `bodies` are the finished patches. Pieces that no seam has caught keep the number of their patch as order.
    """
    graph = assembly.graph
    rings = allowances_of(cut_outlines(graph), bodies)
    pieces = [[Piece(patch, part, False, patch) for part in parts] for patch, parts in enumerate(rings)]
    work = Work(graph, pieces, patches_round(graph), len(bodies))
    open_at = halves_left_open(assembly)
    for join in assembly.joins:
        units = [frozenset(assembly.unit_patches[unit]) for unit in join.units]
        for crease in creases_of(assembly, join, lies, open_at):
            left, right = (units[0], units[1]) if len(units) == 2 else _sides_of(work, crease)
            _fold(work, crease, left, right)
    return sorted((piece for group in work.pieces for piece in group), key=lambda piece: piece.order)


def _fold(work: Work, crease: Crease, left: Members, right: Members) -> None:
    """Fold what lies beyond a crease: the side it is pressed to is folded back, the other one stays and lies under."""
    turned = crease.mirrored()
    taken = [_take(work, crease, left), _take(work, turned, right)]
    back = [crease.toward_left is not False, crease.toward_left is not True]
    for flaps in (f for f, b in zip(taken, back, strict=True) if b):
        for piece in sorted(flaps, key=lambda piece: -piece.order):
            _lay(work, Piece(piece.patch, fold_back(crease.edge, piece.cloth), not piece.turned, 0))
    for flaps in (f for f, b in zip(taken, back, strict=True) if not b):
        for piece in sorted(flaps, key=lambda piece: piece.order):
            _lay(work, piece)


def _lay(work: Work, piece: Piece) -> None:
    work.pieces[piece.patch].append(Piece(piece.patch, piece.cloth, piece.turned, work.order))
    work.order += 1


def _take(work: Work, crease: Crease, members: Members) -> list[Piece]:
    """Take from the patches on the left of a crease whatever lies beyond it."""
    own = frozenset(crease.left)
    near = frozenset().union(*(work.around[j] for j in crease.junctions if j >= 0), *map(work.touching, own)) & members
    own_cuts, cuts = _cuts(work, crease, members, True), _cuts(work, crease, members, False)
    whole = apart = zone_beyond(crease.edge, own_cuts, work.allowance)
    if cuts != own_cuts and not near <= own:
        apart = zone_beyond(crease.edge, cuts, work.allowance)
    taken: list[Piece] = []
    for patch in sorted(near):
        is_own = patch in own
        zone = whole if is_own else apart
        kept: list[Piece] = []
        for piece in work.pieces[patch]:
            if not zone.may_hold(piece.bounds) or not (is_own or _is_caught(work, crease, patch, piece)):
                kept.append(piece)
            else:
                kept.extend(_parted(work, piece, zone, taken))
        work.pieces[patch] = kept
    return taken


def _parted(work: Work, piece: Piece, zone: Zone, taken: list[Piece]) -> Iterator[Piece]:
    """Yield what of a piece stays where it is; the rest is taken."""
    from shapely import difference, intersection

    least = CRUMB * work.allowance**2
    beyond = [part for part in parts_of(intersection(piece.cloth, zone.shape)) if part.area > least]
    if not beyond:
        yield piece
        return
    taken.extend(Piece(piece.patch, part, piece.turned, piece.order) for part in beyond)
    if piece.cloth.area - sum(part.area for part in beyond) <= least:
        return
    for part in parts_of(difference(piece.cloth, zone.shape)):
        if part.area > least:
            yield Piece(piece.patch, part, piece.turned, piece.order)


def _is_caught(work: Work, crease: Crease, patch: int, piece: Piece) -> bool:
    """Tell whether cloth of another seam lies in the way of the needle: not where that is kept clear."""
    met = [j for j in crease.junctions if j >= 0 and patch in work.around[j]]
    if not met:
        return True
    x, y = (piece.bounds[0] + piece.bounds[2]) / 2, (piece.bounds[1] + piece.bounds[3]) / 2
    places = work.graph.junctions
    nearest = min(met, key=lambda j: math.hypot(places[j].at.x - x, places[j].at.y - y))
    return not crease.is_free_at(nearest)


def _cuts(work: Work, crease: Crease, members: Members, own: bool) -> tuple[float | None, float | None]:
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


def _sides_of(work: Work, crease: Crease) -> tuple[Members, Members]:
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
