"""From folded cloth to its thickness: regions that are equally thick, and the pile at every junction."""

import math
from typing import TYPE_CHECKING

from blocklang.assembly.values import Assembly
from blocklang.cutting.finished import finished_patches
from blocklang.geometry.tolerance import TICKS_PER_INCH
from blocklang.graph.values import PatchGraph
from blocklang.thickness.cloth import allowances_of, cut_outlines, drawn, parts_of, polygons_of, rings_of
from blocklang.thickness.folding import fold_all
from blocklang.thickness.lying import Lies
from blocklang.thickness.values import Folded, Layer, Pile, Region, Thickness

if TYPE_CHECKING:
    from shapely import Polygon

#: Layers are laid over each other on a grid this fine (ticks), so that edges that coincide are one edge.
GRID = 16.0
#: Slivers narrower than this (1/250 in) come from curves drawn as chords.
SLIVER = TICKS_PER_INCH / 250
#: A stretch narrower than this (1/64 in, more than cloth is thick) piles up nothing that a finger would feel.
FELT = TICKS_PER_INCH / 64


def fold(assembly: Assembly, lies: Lies) -> Folded:
    """Return every piece of cloth as it lies in the finished block."""
    patches = finished_patches(assembly.graph)
    bodies = drawn([patch.outline for patch in patches])
    pieces = fold_all(assembly, lies, allowances_of(cut_outlines(assembly.graph, patches), bodies))
    shown = (Layer(p, rings, False, True) for p, rings in enumerate(rings_of(bodies)))
    folded = (
        Layer(piece.patch, rings, piece.turned, False, piece.order < len(bodies))
        for piece, rings in zip(pieces, rings_of([piece.cloth for piece in pieces]), strict=True)
    )
    return Folded((*shown, *folded))


def measure(graph: PatchGraph, folded: Folded) -> Thickness:
    """Return how thick the folded cloth of a block is."""
    faces, counts = _laid_over(folded)
    areas = [face.area / TICKS_PER_INCH**2 for face in faces]
    piles = _piles(graph, faces, counts)
    return Thickness(
        _regions(faces, counts),
        piles,
        max(piles, key=lambda pile: (pile.layers, -pile.junction)),
        math.fsum(count * area for count, area in zip(counts, areas, strict=True)),
        math.fsum(areas),
    )


def _laid_over(folded: Folded) -> "tuple[list[Polygon], list[int]]":
    """Return the faces that the edges of all layers make, and how many layers lie on each."""
    import numpy
    from shapely import STRtree, boundary, get_parts, point_on_surface, polygonize, union_all

    cloth = polygons_of([layer.rings for layer in folded.layers])
    edges = union_all(boundary(cloth), grid_size=GRID)
    faces = [face for face in get_parts(polygonize(get_parts(edges))) if _is_wider(face, SLIVER)]
    found = STRtree(cloth).query(point_on_surface(faces), predicate="within")
    counts = numpy.bincount(found[0], minlength=len(faces))
    covered = [(face, int(count)) for face, count in zip(faces, counts, strict=True) if count]
    return [face for face, _ in covered], [count for _, count in covered]


def _is_wider(face: "Polygon", width: float) -> bool:
    return bool(2 * face.area > width * face.length)


def _regions(faces: "list[Polygon]", counts: list[int]) -> tuple[Region, ...]:
    from shapely import coverage_union_all

    found: list[Region] = []
    for level in sorted(set(counts)):
        whole = coverage_union_all([face for face, count in zip(faces, counts, strict=True) if count == level])
        found.extend(Region(level, rings) for rings in sorted(rings_of(parts_of(whole))))
    return tuple(found)


def _piles(graph: PatchGraph, faces: "list[Polygon]", counts: list[int]) -> tuple[Pile, ...]:
    from shapely import Point, STRtree, points

    felt = [index for index, face in enumerate(faces) if _is_wider(face, FELT)]
    at = points([junction.at for junction in graph.junctions])
    reach = graph.block.seam_allowance * 0.98
    best: dict[int, tuple[int, int]] = {}
    for junction, place in zip(
        *STRtree([faces[index] for index in felt]).query(at, predicate="dwithin", distance=reach).tolist(), strict=True
    ):
        best[junction] = max(best.get(junction, (0, 0)), (counts[felt[place]], -felt[place]))
    piles = []
    for junction in graph.junctions:
        layers, face = best[junction.index]
        thick: Point = faces[-face].point_on_surface()
        piles.append(Pile(junction.index, layers, (float(thick.x), float(thick.y))))
    return tuple(piles)
