"""Patches as cut, each parted into what shows from the front and the allowance round it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, pairwise
from typing import TYPE_CHECKING, Any

from blocklang.cutting.finished import Finished, finished_patches
from blocklang.cutting.offsetting import offset
from blocklang.cutting.tips import tip_limits
from blocklang.geometry import Outline
from blocklang.geometry.tolerance import TICKS_PER_INCH
from blocklang.graph.values import PatchGraph
from blocklang.thickness.values import Ring

if TYPE_CHECKING:
    from shapely import Polygon

#: Chords this near (1/2500 in) to a curve leave no sliver that would count as cloth.
CURVE_ERROR = TICKS_PER_INCH / 2500


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of allowance while it is being folded; of two that lie together the one of lower `order` is in front.

    `bounds` are the least x, least y, greatest x and greatest y.
    """

    patch: int
    cloth: "Polygon"
    turned: bool
    order: int
    bounds: tuple[float, float, float, float]


def cut_outlines(graph: PatchGraph, patches: Sequence[Finished] = ()) -> tuple[Outline, ...]:
    """Return every patch with a seam allowance all round, mitred, its tips trimmed to meet the neighbours.

    `patches` may give the finished patches when they are known already.
    """
    patches = patches or finished_patches(graph)
    distances = [(float(graph.block.seam_allowance),) * len(patch.outline.edges) for patch in patches]
    return tuple(
        offset(patch.outline, distances[patch.patch], tip_limits(graph, patches, patch.patch, distances)).outline
        for patch in patches
    )


def allowances_of(outlines: Sequence[Outline], bodies: "Sequence[Polygon]") -> "list[tuple[Polygon, ...]]":
    """Return what lies round each patch beyond its seams."""
    from shapely import difference

    return parts_of_all(difference(drawn(outlines), bodies))


def bounds_of(shapes: "Sequence[Polygon]") -> list[tuple[float, float, float, float]]:
    """Return the bounds of each shape."""
    from shapely import bounds

    return list(map(tuple, bounds(shapes).tolist())) if len(shapes) else []


def drawn(outlines: Sequence[Outline]) -> "list[Polygon]":
    """Return outlines with their curves as fine chords."""
    from shapely import is_valid

    rings = [[place for edge in outline.edges for place in edge.chords(CURVE_ERROR)[:-1]] for outline in outlines]
    shapes = polygons_of([(tuple(ring),) for ring in rings])
    sound = is_valid(shapes).tolist()
    return [shape if good else shape.buffer(0) for shape, good in zip(shapes, sound, strict=True)]


def parts_of(shape: Any) -> "tuple[Polygon, ...]":
    """Return the polygons of any shape, without those that are empty."""
    from shapely import get_parts

    if shape.geom_type == "Polygon":
        return () if shape.is_empty else (shape,)
    return tuple(part for part in get_parts(shape) if part.geom_type == "Polygon" and not part.is_empty)


def parts_of_all(shapes: "Sequence[Any]") -> "list[tuple[Polygon, ...]]":
    """Return the polygons of each of several shapes."""
    from shapely import GeometryType, get_type_id, is_empty

    kinds, bare = get_type_id(shapes).tolist(), is_empty(shapes).tolist()
    plain = int(GeometryType.POLYGON)
    return [
        () if empty else (shape,) if kind == plain else parts_of(shape)
        for shape, kind, empty in zip(shapes, kinds, bare, strict=True)
    ]


def rings_of(shapes: "Sequence[Polygon]") -> Iterator[tuple[Ring, ...]]:
    """Yield the rings of each shape: the shell counterclockwise and holes clockwise, no first place repeated."""
    from shapely import get_coordinates, get_num_coordinates, get_num_interior_rings, get_rings

    rings = get_rings(shapes)
    places = iter(map(tuple, get_coordinates(rings).tolist()))
    drawn = (tuple(islice(places, count))[:-1] for count in get_num_coordinates(rings).tolist())
    for holes in get_num_interior_rings(shapes).tolist():
        yield tuple(_turning(ring, place == 0) for place, ring in enumerate(islice(drawn, holes + 1)))


def polygons_of(shapes: Sequence[Sequence[Ring]]) -> Any:
    """Return an array with a polygon for each shell and its holes."""
    from shapely import linearrings, polygons

    rings = [ring for shape in shapes for ring in shape]
    places = [place for ring in rings for place in (*ring, ring[0])]
    ring_of = [index for index, ring in enumerate(rings) for _ in range(len(ring) + 1)]
    shape_of = [index for index, shape in enumerate(shapes) for _ in shape]
    return polygons(linearrings(places, indices=ring_of), indices=shape_of)


def _turning(ring: Ring, left: bool) -> Ring:
    ox, oy = ring[0]
    turns = sum((ax - ox) * (by - oy) - (ay - oy) * (bx - ox) for (ax, ay), (bx, by) in pairwise(ring))
    return ring if (turns > 0) == left else ring[::-1]
