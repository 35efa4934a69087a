"""Pairing the two sides of every seam; what finds no partner is a gap, an overlap or a patch outside."""

from dataclasses import dataclass
from itertools import islice
from typing import Final

from blocklang.block import Block
from blocklang.geometry import Edge, Point
from blocklang.geometry.points import distance
from blocklang.geometry.tolerance import SAME_POINT
from blocklang.graph.corners import Corners
from blocklang.graph.splitting import CornerIndex, corners_on, index_corners
from blocklang.graph.values import OUTSIDE


@dataclass(frozen=True, slots=True)
class Side:
    """One directed piece of a patch's edge between two corners, with the patch (or the outside) on its left."""

    start: int
    end: int
    edge: Edge
    patch: int


@dataclass(frozen=True, slots=True)
class Seam:
    """Two sides that match: the same edge, travelled both ways."""

    forward: Side
    backward: Side


@dataclass(frozen=True, slots=True)
class Matched:
    """All seams (the outline's pieces among them), and the sides that have no partner."""

    corners: tuple[Point, ...]
    near_misses: tuple[tuple[int, int], ...]
    seams: tuple[Seam, ...]
    loose: tuple[Side, ...]


#: Near misses that are looked for; no more than these are told.
MOST_NEAR_MISSES: Final = 8

Splits = dict[tuple[int, int], tuple[int, ...]]


def match_sides(block: Block) -> Matched:
    """Split all edges at all corners and pair them.

    When every side finds its partner the patches' boundaries add up to the outline, so each point of the outline is
    covered exactly once: winding numbers add, and each patch winds once round its inside.
    """
    corners = Corners()
    rings = [(index, patch.outline.edges) for index, patch in enumerate(block.patches)]
    rings.append((OUTSIDE, block.outline.reversed().edges))
    ends = [(ring, edge, corners.number(edge.start), corners.number(edge.end)) for ring, es in rings for edge in es]
    near_misses = tuple(islice(corners.near_misses(), MOST_NEAR_MISSES))
    if len(near_misses) == MOST_NEAR_MISSES:  # enough to tell; among corners this close, matching takes very long
        return Matched(tuple(corners.points), near_misses, (), ())
    index = index_corners(corners.points, (edge for _, edge, _, _ in ends))
    straight: Splits = {}
    sides = [side for end in ends for side in _split(*end, index, straight)]
    seams, loose = _pair(sides)
    return Matched(tuple(corners.points), near_misses, seams, loose)


def _split(patch: int, edge: Edge, start: int, end: int, index: CornerIndex, straight: Splits) -> list[Side]:
    """Split an edge; the corners on a straight one are looked up once for both of its sides."""
    known = straight.get((end, start)) if edge.arc is None else None
    inner = known[::-1] if known is not None else _inner(edge, start, end, index)
    if edge.arc is None:
        straight[start, end] = inner
    numbers = (start, *inner, end)
    points = index.points
    pieces = Edge(points[start], points[end], edge.arc).split(tuple(points[n] for n in inner))
    return [Side(a, b, piece, patch) for a, b, piece in zip(numbers, numbers[1:], pieces, strict=False) if a != b]


def _inner(edge: Edge, start: int, end: int, index: CornerIndex) -> tuple[int, ...]:
    return tuple(number for number in corners_on(edge, index) if number not in (start, end))


def _pair(sides: list[Side]) -> tuple[tuple[Seam, ...], tuple[Side, ...]]:
    waiting: dict[tuple[int, int], list[Side]] = {}
    seams: list[Seam] = []
    for side in sides:
        partners = waiting.get((side.end, side.start), [])
        partner = next((p for p in partners if _same_line(p.edge, side.edge)), None)
        if partner is None:
            waiting.setdefault((side.start, side.end), []).append(side)
        else:
            partners.remove(partner)
            seams.append(Seam(partner, side))
    return tuple(seams), tuple(side for group in waiting.values() for side in group)


def _same_line(a: Edge, b: Edge) -> bool:
    if a.arc is None and b.arc is None:
        return True
    return distance(a.middle(), b.middle()) <= 4 * SAME_POINT
