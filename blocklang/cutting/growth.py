"""What rounding adds up to: how much a line across the block grows when every patch is cut at its mark."""

import math
from bisect import bisect_left, bisect_right
from collections.abc import Sequence

from blocklang.cutting.rounding import SLACK
from blocklang.cutting.values import Lay, Piece
from blocklang.geometry import TICKS_PER_INCH, Outline, Point
from blocklang.graph import PatchGraph

#: Lines are laid this far beside the corners of patches, so that none runs along a seam.
_BESIDE = TICKS_PER_INCH // 100
#: No more lines than this are tried each way; large blocks are sampled evenly.
_LINES = 240
#: Patches that grow by less than this share of their size are left out.
_NOTHING = 1e-6

#: All sides of these shapes touch one circle, as those of all triangles do.
_ROUND_A_CIRCLE = ("hexagon", "kite", "equilateral-triangle", "wedge")

Ring = tuple[Point, ...]


def most_growth(graph: PatchGraph, pieces: Sequence[Piece]) -> float:
    """Return the growth along the line across or up the block where it adds up to most, in inches; below 0 it shrinks.

    A patch that is cut larger grows in proportion, so that a line grows by its length in the patch times that share.
    """
    level: list[tuple[Ring, float]] = []
    upright: list[tuple[Ring, float]] = []
    for piece in pieces:
        short, long = _shares(graph, piece)
        if max(abs(short), abs(long)) > _NOTHING:
            for patch in piece.patches:
                outline = graph.block.patches[patch].outline
                lies = math.cos(_long_way(outline)) ** 2
                ring = outline.chords()
                level.append((ring, long * lies + short * (1 - lies)))
                upright.append((tuple(Point(p.y, p.x) for p in ring), long * (1 - lies) + short * lies))
    return max(_most(level), _most(upright), key=abs)


def _shares(graph: PatchGraph, piece: Piece) -> tuple[float, float]:
    """Return by what share of its finished size a patch grows, the short way and the long way."""
    allowance = graph.block.seam_allowance / TICKS_PER_INCH
    outline = graph.block.patches[piece.patches[0]].outline
    inner = 2 * outline.area() / outline.perimeter() / TICKS_PER_INCH
    shares = []
    for length in sorted(piece.cut, key=lambda side: side.exact) if piece.pose else piece.cut:
        # Where all sides touch one circle, the raw shape is similar to the finished one.
        similar = (piece.yields > 1 or piece.method in _ROUND_A_CIRCLE or len(piece.cut) == 1) and not _is_cornered(
            piece
        )
        finished = length.exact / (1 + allowance / inner) if similar else length.exact - 2 * allowance
        shares.append((float(length.shown) - length.exact) / max(finished, allowance, SLACK))
    if len(shares) == 2 and piece.lay in (Lay.UPRIGHT, Lay.BOTH_ENDS, Lay.ONE_END):
        return shares[0], shares[1]
    most = max(shares, key=abs, default=0.0)
    return most, most


def _is_cornered(piece: Piece) -> bool:
    return len(piece.cut) == 1 and bool(piece.marks)


def _long_way(outline: Outline) -> float:
    """Return the heading of the longest side, of a triangle the longer of the two others: its longer leg, if right."""
    edges = sorted(outline.edges, key=lambda edge: -edge.length())
    return edges[1 if len(edges) == 3 else 0].departs()


def _most(shares: Sequence[tuple[Ring, float]]) -> float:
    """Return the greatest growth along a level line."""
    levels = _levels([ring for ring, _ in shares])
    grown = [0.0] * len(levels)
    for ring, share in shares:
        heights = [p.y for p in ring]
        for index in range(bisect_right(levels, min(heights)), bisect_left(levels, max(heights))):
            grown[index] += _within(ring, levels[index]) * share
    return max(grown, key=abs, default=0.0) / TICKS_PER_INCH


def _levels(rings: Sequence[Ring]) -> list[int]:
    corners = sorted({p.y for ring in rings for p in ring})
    apart = [y for i, y in enumerate(corners) if i == 0 or y - corners[i - 1] > _BESIDE]
    levels = sorted({y + side for y in apart for side in (-_BESIDE, _BESIDE)})
    return levels[:: -(-len(levels) // _LINES)] if levels else []


def _within(ring: Ring, level: int) -> float:
    """Return the length of a level line within a patch, in ticks."""
    crossings = sorted(
        a.x + (b.x - a.x) * (level - a.y) / (b.y - a.y)
        for a, b in zip(ring, ring[1:] + ring[:1], strict=True)
        if (a.y > level) != (b.y > level)
    )
    return sum(crossings[1::2]) - sum(crossings[::2])
