"""Taking what lies beyond creases from the cloth of a block, for many creases at once: joins that touch no common cloth.

Geometry is asked in arrays, since a question about a thousand pieces takes hardly longer than one about ten.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from blocklang.thickness.cloth import Piece, bounds_of, parts_of_all
from blocklang.thickness.crease_ends import cuts_of, is_caught
from blocklang.thickness.creases import Crease
from blocklang.thickness.folds import Zone, shapes_of, zone_beyond
from blocklang.thickness.work import Members, Work

if TYPE_CHECKING:
    from shapely import Polygon

#: Crumbs of less area than this share of a squared allowance are lattice noise, not cloth.
CRUMB = 1e-5


@dataclass(frozen=True, slots=True)
class Side:
    """A crease, and the patches of the unit on its left."""

    crease: Crease
    members: Members


@dataclass(frozen=True, slots=True)
class _Try:
    """A piece of which some may lie beyond the crease of a side."""

    side: int
    piece: Piece
    zone: Zone


def take(work: Work, sides: Sequence[Side]) -> list[list[Piece]]:
    """Take from the patches on the left of each crease whatever lies beyond it; no patch may be on two sides."""
    taken: list[list[Piece]] = [[] for _ in sides]
    tries = [one for number, side in enumerate(sides) for one in _tries(work, number, side)]
    if not tries:
        return taken
    left: dict[int, dict[int, list[Piece]]] = {}
    for one, (gone, stays) in zip(tries, _parted(work, tries), strict=True):
        taken[one.side].extend(gone)
        if gone:
            left.setdefault(one.piece.patch, {})[id(one.piece)] = stays
    for patch, changed in left.items():
        work.pieces[patch] = [kept for piece in work.pieces[patch] for kept in changed.get(id(piece), [piece])]
    return taken


def _tries(work: Work, number: int, side: Side) -> Iterator[_Try]:
    crease, members = side.crease, side.members
    own = frozenset(crease.left)
    at_ends = (work.around[junction] for junction in crease.junctions if junction >= 0)
    near = frozenset().union(*at_ends, *map(work.touching, own)) & members
    own_cuts, cuts = cuts_of(work, crease, members, True), cuts_of(work, crease, members, False)
    whole = apart = zone_beyond(crease.edge, own_cuts, work.allowance)
    if cuts != own_cuts and not near <= own:
        apart = zone_beyond(crease.edge, cuts, work.allowance)
    for patch in sorted(near):
        zone = whole if patch in own else apart
        for piece in work.pieces[patch]:
            if zone.may_hold(piece.bounds) and (patch in own or is_caught(work, crease, patch, piece)):
                yield _Try(number, piece, zone)


def _parted(work: Work, tries: Sequence[_Try]) -> Iterator[tuple[list[Piece], list[Piece]]]:
    """Yield for each try what is taken and what stays where it is."""
    from shapely import area, difference, intersection

    least = CRUMB * work.allowance**2
    cloths, zones = [one.piece.cloth for one in tries], _zone_shapes(tries)
    beyond = _cloth(tries, intersection(cloths, zones), least)
    whole, gone = area(cloths).tolist(), [math.fsum(size for _, size in parts) for parts in beyond]
    split = [place for place, parts in enumerate(beyond) if parts and whole[place] - gone[place] > least]
    rest = difference([cloths[place] for place in split], [zones[place] for place in split])
    stays = dict(zip(split, _cloth([tries[place] for place in split], rest, least), strict=True))
    for place, parts in enumerate(beyond):
        yield [piece for piece, _ in parts], [piece for piece, _ in stays.get(place, ())]


def _zone_shapes(tries: Sequence[_Try]) -> "list[Polygon]":
    zones = {id(one.zone): one.zone for one in tries}
    shapes = dict(zip(zones, shapes_of(list(zones.values())), strict=True))
    return [shapes[id(one.zone)] for one in tries]


def _cloth(tries: Sequence[_Try], shapes: Any, least: float) -> list[list[tuple[Piece, float]]]:
    """Return for each try the parts of a shape that are more than crumbs, with their areas."""
    from shapely import area

    parts = [(place, part) for place, shape in enumerate(parts_of_all(shapes)) for part in shape]
    drawn = [part for _, part in parts]
    found: list[list[tuple[Piece, float]]] = [[] for _ in tries]
    for (place, part), size, bounds in zip(parts, area(drawn).tolist(), bounds_of(drawn), strict=True):
        if size > least:
            piece = tries[place].piece
            found[place].append((Piece(piece.patch, part, piece.turned, piece.order, bounds), size))
    return found
