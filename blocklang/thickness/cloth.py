"""Patches as cut, each parted into what shows from the front and the allowance round it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import islice, pairwise
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
    _bounds: tuple[float, float, float, float] | None = None

    @property
    def bounds(self) -> tuple[float, float, float, float]:
        """The least x, least y, greatest x and greatest y."""
        if self._bounds is None:
            self._bounds = self.cloth.bounds
        return self._bounds


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
