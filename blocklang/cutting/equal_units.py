"""The small units of a sewing order that are equal, with how their patches are cut."""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace

from blocklang.assembly.values import Assembly
from blocklang.cutting.claims import CuttingMethod
from blocklang.cutting.offers import EqualUnits, UnitPatch
from blocklang.cutting.sides import sides_of
from blocklang.cutting.values import Cutting, Piece
from blocklang.geometry import Outline, Point
from blocklang.geometry.points import cross
from blocklang.geometry.tolerance import SAME_POINT

#: Units of more patches are not made several at once by anybody.
_MOST_PATCHES = 16


def with_offers(cutting: Cutting, assembly: Assembly, methods: Sequence[CuttingMethod]) -> Cutting:
    """Return a cutting list with what the methods offer for the units that the sewing order makes."""
    asked = sorted((method for method in methods), key=lambda method: (-method.priority, method.name))
    offers = (method.offers(units) for units in equal_units(assembly, cutting) for method in asked)
    return replace(cutting, offers=tuple(offer for offer in offers if offer is not None))


def equal_units(assembly: Assembly, cutting: Cutting) -> tuple[EqualUnits, ...]:
    """Return the small units that the order makes, equal ones together, those made first in front."""
    pieces = {patch: piece for piece in cutting.pieces for patch in piece.patches if piece.strip_set is None}
    gathered: dict[int, list[tuple[int, ...]]] = {}
    for patches, kind in zip(assembly.unit_patches, assembly.unit_class, strict=True):
        if 1 < len(patches) <= _MOST_PATCHES and all(patch in pieces for patch in patches):
            places = gathered.setdefault(kind, [])
            if patches not in places:
                places.append(patches)
    return tuple(_equal(assembly, cutting, units, pieces) for units in gathered.values())


def _equal(
    assembly: Assembly, cutting: Cutting, units: Sequence[tuple[int, ...]], pieces: dict[int, Piece]
) -> EqualUnits:
    block = assembly.graph.block

    def shown(patch: int) -> UnitPatch:
        return UnitPatch(patch, block.patches[patch].fabric, block.patches[patch].outline, pieces[patch])

    return EqualUnits(
        tuple(tuple(map(shown, patches)) for patches in units),
        len(units) * cutting.options.copies,
        _size([block.patches[patch].outline for patch in units[0]]),
        cutting.seam_allowance,
        cutting.options,
        block.unit,
    )


def _size(outlines: Sequence[Outline]) -> tuple[float, float] | None:
    """Return the size of the rectangle that outlines fill together, in inches, the shorter side first."""
    if any(edge.arc for outline in outlines for edge in outline.edges):
        return None
    hull = Outline.through(_hull(edge.start for outline in outlines for edge in outline.edges))
    sides = sides_of(hull, 4)
    gap = hull.area() - sum(outline.area() for outline in outlines)
    if sides is None or not sides.is_equiangular or abs(gap) > SAME_POINT * hull.perimeter():
        return None
    first, second = (sides.lengths[0] + sides.lengths[2]) / 2, (sides.lengths[1] + sides.lengths[3]) / 2
    return min(first, second), max(first, second)


def _hull(corners: Iterable[Point]) -> list[Point]:
    """Return the corners of the convex hull, counterclockwise; those in line by rounding are left out."""
    ordered = sorted(set(corners), key=lambda p: (p.x, p.y))
    return [*_chain(ordered), *_chain(ordered[::-1])]


def _chain(ordered: Sequence[Point]) -> Iterator[Point]:
    chain: list[Point] = []
    for point in ordered:
        while len(chain) > 1 and _turns_right_or_not(chain[-2], chain[-1], point):
            chain.pop()
        chain.append(point)
    return iter(chain[:-1])


def _turns_right_or_not(a: Point, b: Point, c: Point) -> bool:
    """Tell whether b lies no further than a whisker outside of the line from a to c."""
    away = abs(c.x - a.x) + abs(c.y - a.y)
    return cross(a, b, c) <= SAME_POINT * away
