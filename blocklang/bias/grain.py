"""How the straight grain of each patch lies in the block, from the way in which the patch is cut."""

import math
from collections.abc import Hashable, Sequence

from blocklang.block import Block
from blocklang.cutting.finished import Finished
from blocklang.cutting.grain import edges_on_grain
from blocklang.cutting.methods import METHODS, Claim
from blocklang.cutting.sides import long_side_of_right_isosceles, right_angle, sides_of
from blocklang.cutting.values import Cutting, Lay, Piece
from blocklang.geometry.congruence import Interner, Shape
from blocklang.geometry.points import heading
from blocklang.geometry.tolerance import TICKS_PER_INCH
from blocklang.graph.values import PatchGraph

#: An edge, and how far the grain is turned from it, in radians.
OnGrain = tuple[int, float]

_METHODS = {method.name: method for method in METHODS}


def grain_headings(graph: PatchGraph, patches: Sequence[Finished], cutting: Cutting) -> tuple[float | None, ...]:
    """Return the heading of the straight grain of each patch, in radians; None where the cutting leaves it open."""
    interner = Interner()
    shapes = [interner.shape(patch.outline, ()) for patch in patches]
    on_grain = edges_on_grain(graph, patches, shapes)
    found: list[float | None] = [None] * len(patches)
    for piece in cutting.pieces:
        known: dict[Hashable, OnGrain | None] = {}
        for patch in piece.patches:
            found[patch] = _heading(graph.block, patches[patch], shapes[patch], on_grain[patch], piece, known)
    return tuple(found)


def _heading(
    block: Block,
    patch: Finished,
    shape: Shape,
    on_grain: tuple[int, ...],
    piece: Piece,
    known: dict[Hashable, OnGrain | None],
) -> float | None:
    """Return a patch's grain; those of one shape have it along the same edge of it."""
    stripes = block.patches[patch.patch].stripes
    if stripes is not None:
        return heading(stripes.start, stripes.end)
    if piece.pose:
        return None if piece.pose == "motif" else math.pi / 2
    edges = patch.outline.edges
    seen = shape.key, frozenset((edge - shape.start) % len(edges) for edge in on_grain)
    if seen not in known:
        found = _edge_on_grain(block, patch, on_grain, piece)
        known[seen] = None if found is None else ((found[0] - shape.start) % len(edges), found[1])
    place = known[seen]
    return None if place is None else edges[(place[0] + shape.start) % len(edges)].departs() + place[1]


def _edge_on_grain(block: Block, patch: Finished, on_grain: tuple[int, ...], piece: Piece) -> OnGrain | None:
    method = _METHODS.get(piece.method)
    if method is None:
        return None
    claim = method.claims(patch.outline, block.seam_allowance / TICKS_PER_INCH, on_grain)
    if claim is None:
        return None
    edge = claim.along if claim.along is not None else _implied(patch, claim)
    return None if edge is None else (edge, claim.lean)


def _implied(patch: Finished, claim: Claim) -> int | None:
    """Return the edge that lies on the grain where the shape itself says which: of triangles and squares."""
    if claim.yields == 4:
        return long_side_of_right_isosceles(patch.outline)
    if claim.yields == 2:
        sides = sides_of(patch.outline, 3)
        return right_angle(sides) if sides else None
    return None if claim.lay is Lay.TEMPLATE else 0


def off_grain(edge_heading: float, grain: float) -> float:
    """Return by how much a heading leaves the threads, lengthwise or crosswise: 0 to 45 degrees, in radians."""
    return abs(math.remainder(edge_heading - grain, math.pi / 2))
