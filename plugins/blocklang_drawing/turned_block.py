"""A whole block turned by quarter turns, or seen in a mirror, exactly on the lattice."""

from collections.abc import Callable
from dataclasses import replace

from blocklang.block import Block, Patch, Stripes
from blocklang.geometry import Arc, Edge, Outline, Point

Move = Callable[[Point], Point]


def turn_patches(block: Block, quarters: int, mirrored: bool = False) -> tuple[Patch, ...]:
    """Return the patches mirrored left to right if asked, then turned counterclockwise by quarter turns.

    The lower left bounds of the turned block are at (0, 0) again.
    """
    wide, high = block.size
    moves: dict[int, Move] = {
        0: lambda p: p,
        1: lambda p: Point(high - p.y, p.x),
        2: lambda p: Point(wide - p.x, high - p.y),
        3: lambda p: Point(p.y, wide - p.x),
    }
    turn = moves[quarters % 4]
    move: Move = (lambda p: turn(Point(wide - p.x, p.y))) if mirrored else turn
    return tuple(_moved(patch, move, mirrored) for patch in block.patches)


def _moved(patch: Patch, move: Move, mirrored: bool) -> Patch:
    edges = tuple(_moved_edge(edge, move, mirrored) for edge in patch.outline.edges)
    stripes = patch.stripes and Stripes(patch.stripes.fabrics, move(patch.stripes.start), move(patch.stripes.end))
    return replace(patch, outline=Outline(edges).counterclockwise(), stripes=stripes)


def _moved_edge(edge: Edge, move: Move, mirrored: bool) -> Edge:
    arc = edge.arc and Arc(move(edge.arc.centre), edge.arc.clockwise != mirrored)
    return Edge(move(edge.start), move(edge.end), arc)
