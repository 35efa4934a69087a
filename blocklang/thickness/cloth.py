"""Patches as cut, each parted into what shows from the front and the allowance round it."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import TYPE_CHECKING, Any

from blocklang.cutting.finished import finished_patches
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


@dataclass(slots=True)
class Piece:
    """A piece of allowance while it is being folded; of two that lie together the one of lower `order` is in front."""

    patch: int
    cloth: "Polygon"
    turned: bool
    order: int
    bounds: tuple[float, float, float, float] = field(init=False)

    def __post_init__(self) -> None:
        self.bounds = self.cloth.bounds


def cut_outlines(graph: PatchGraph) -> tuple[Outline, ...]:
    """Return every patch with a seam allowance all round, mitred, its tips trimmed to meet the neighbours."""
    patches = finished_patches(graph)
    distances = [(float(graph.block.seam_allowance),) * len(patch.outline.edges) for patch in patches]
    return tuple(
        offset(patch.outline, distances[patch.patch], tip_limits(graph, patches, patch.patch, distances)).outline
        for patch in patches
    )


def bodies_of(graph: PatchGraph) -> "tuple[Polygon, ...]":
    """Return the finished patches."""
    return tuple(polygon_of(patch.outline) for patch in finished_patches(graph))


def allowances_of(outlines: Sequence[Outline], bodies: "Sequence[Polygon]") -> "tuple[tuple[Polygon, ...], ...]":
    """Return what lies round each patch beyond its seams."""
    from shapely import difference

    cut = [polygon_of(outline) for outline in outlines]
    return tuple(parts_of(round_it) for round_it in difference(cut, list(bodies)))


def polygon_of(outline: Outline) -> "Polygon":
    """Return an outline with its curves as fine chords."""
    from shapely import Polygon

    drawn = Polygon([place for edge in outline.edges for place in edge.chords(CURVE_ERROR)[:-1]])
    return drawn if drawn.is_valid else drawn.buffer(0)


def parts_of(shape: Any) -> "tuple[Polygon, ...]":
    """Return the polygons of any shape, without those that are empty."""
    from shapely import get_parts

    if shape.geom_type == "Polygon":
        return () if shape.is_empty else (shape,)
    return tuple(part for part in get_parts(shape) if part.geom_type == "Polygon" and not part.is_empty)


def rings_of(shape: "Polygon") -> tuple[Ring, ...]:
    """Return the shell counterclockwise and the holes clockwise, no first place repeated."""
    from shapely import get_coordinates, get_rings

    rings = [_places(get_coordinates(ring).tolist()) for ring in get_rings(shape)]
    return tuple(ring if _is_left_turning(ring) == (place == 0) else ring[::-1] for place, ring in enumerate(rings))


def polygons_of(shapes: Sequence[Sequence[Ring]]) -> Any:
    """Return an array with a polygon for each shell and its holes."""
    from shapely import linearrings, polygons

    rings = [ring for shape in shapes for ring in shape]
    places = [place for ring in rings for place in (*ring, ring[0])]
    ring_of = [index for index, ring in enumerate(rings) for _ in range(len(ring) + 1)]
    shape_of = [index for index, shape in enumerate(shapes) for _ in shape]
    return polygons(linearrings(places, indices=ring_of), indices=shape_of)


def _places(coordinates: list[list[float]]) -> Ring:
    return tuple((x, y) for x, y in coordinates[:-1])


def _is_left_turning(ring: Ring) -> bool:
    (ox, oy) = ring[0]
    return sum((ax - ox) * (by - oy) - (ay - oy) * (bx - ox) for (ax, ay), (bx, by) in pairwise(ring)) > 0
