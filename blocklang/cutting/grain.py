"""Which edges of each patch must lie on the straight grain: those that end on the outside."""

from collections.abc import Sequence

from blocklang.cutting.finished import Finished, across
from blocklang.cutting.sides import long_side_of_right_isosceles
from blocklang.geometry.congruence import Shape
from blocklang.graph import OUTSIDE, PatchGraph


def edges_on_grain(
    graph: PatchGraph, patches: Sequence[Finished], shapes: Sequence[Shape]
) -> tuple[tuple[int, ...], ...]:
    """Return the edges of each patch that lie on the outside of the block, or of a small unit that is handled alone.

    The small units are four equal triangles round a point, and a large triangle between two small ones: the long side
    of each of the four, and of the large one, is an outer edge of the unit.
    """
    long_sides = _long_sides(patches, shapes)
    return tuple(patch.outside_edges or _within_unit(graph, patches, shapes, long_sides, patch) for patch in patches)


def _long_sides(patches: Sequence[Finished], shapes: Sequence[Shape]) -> tuple[int | None, ...]:
    known: dict[int, int | None] = {}
    found = []
    for patch, shape in zip(patches, shapes, strict=True):
        edges = len(patch.outline.edges)
        if shape.key not in known:
            side = long_side_of_right_isosceles(patch.outline)
            known[shape.key] = None if side is None else (side - shape.start) % edges
        side = known[shape.key]
        found.append(None if side is None else (side + shape.start) % edges)
    return tuple(found)


def _within_unit(
    graph: PatchGraph,
    patches: Sequence[Finished],
    shapes: Sequence[Shape],
    long_sides: Sequence[int | None],
    patch: Finished,
) -> tuple[int, ...]:
    side = long_sides[patch.patch]
    if side is None:
        return ()
    if _in_quarter_set(graph, patches, shapes, long_sides, patch) or _between_wings(graph, patches, long_sides, patch):
        return (side,)
    return ()


def _in_quarter_set(
    graph: PatchGraph,
    patches: Sequence[Finished],
    shapes: Sequence[Shape],
    long_sides: Sequence[int | None],
    patch: Finished,
) -> bool:
    """Tell whether four equal triangles have their right angles at one point."""
    at = _right_corner(patch, long_sides)
    ends = graph.junctions[at].ends
    around = {index for end in ends for index in graph.segments[end.segment].patches}
    return (
        len(ends) == 4
        and len(around) == 4
        and OUTSIDE not in around
        and all(
            shapes[other].key == shapes[patch.patch].key and _right_corner(patches[other], long_sides) == at
            for other in around
        )
    )


def _right_corner(patch: Finished, long_sides: Sequence[int | None]) -> int:
    side = long_sides[patch.patch]
    assert side is not None
    return patch.corners[(side + 2) % 3]


def _between_wings(
    graph: PatchGraph, patches: Sequence[Finished], long_sides: Sequence[int | None], patch: Finished
) -> bool:
    """Tell whether both short sides are met along their whole length by the long sides of smaller triangles."""
    side = long_sides[patch.patch]
    assert side is not None
    return all(_is_wing(graph, patches, long_sides, patch, (side + step) % 3) for step in (1, 2))


def _is_wing(
    graph: PatchGraph, patches: Sequence[Finished], long_sides: Sequence[int | None], patch: Finished, leg: int
) -> bool:
    if len(patch.segments[leg]) != 1:
        return False
    other = across(graph, patch.segments[leg][0], patch.patch)
    side = None if other == OUTSIDE else long_sides[other]
    return side is not None and patches[other].segments[side] == patch.segments[leg]
