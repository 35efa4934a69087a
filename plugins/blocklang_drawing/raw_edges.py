"""Patches as they lie on the table: with the seam allowance outside the unit, sewn edge to edge inside it."""

import math
from collections.abc import Collection
from itertools import pairwise

from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph import PatchGraph
from blocklang_drawing.shapes import Place

#: Chords this near (1/100 in) to a curve look round at the scale of a step picture.
CURVE_ERROR = TICKS_PER_INCH / 100
#: A tip longer than this many allowances is drawn trimmed.
LONGEST_TIP = 3.0

Side = tuple[Place, Place, float]
Ring = tuple[Place, ...]


def raw_ring(graph: PatchGraph, patch: int, unit: Collection[int], allowance: float | None = None) -> Ring:
    """Return a patch of a unit with its seam allowance wherever it does not touch the unit (ticks)."""
    wide = graph.block.seam_allowance if allowance is None else allowance
    sides = _sides(graph, patch, unit, wide)
    ring: list[Place] = []
    for before, after in zip(sides[-1:] + sides[:-1], sides, strict=True):
        ring.extend(_corner(before, after, wide))
    return tuple(ring)


def _sides(graph: PatchGraph, patch: int, unit: Collection[int], wide: float) -> list[Side]:
    sides: list[Side] = []
    for index, on_left in graph.sides[patch]:
        segment = graph.segments[index]
        edge = segment.edge if on_left else segment.edge.reversed()
        neighbour = segment.right if on_left else segment.left
        points = edge.chords(CURVE_ERROR)
        out = 0.0 if neighbour in unit else wide
        sides.extend((a, b, out) for a, b in pairwise(points) if a != b)
    return sides


def _corner(before: Side, after: Side, wide: float) -> tuple[Place, ...]:
    (at, end, out) = after
    (ux, uy), (vx, vy) = _heading(before[0], before[1]), _heading(at, end)
    first = (at[0] + uy * before[2], at[1] - ux * before[2])
    second = (at[0] + vy * out, at[1] - vx * out)
    turn = ux * vy - uy * vx
    if abs(turn) < 0.05:
        return (second,) if before[2] == out else (first, second)
    along = ((second[0] - first[0]) * vy - (second[1] - first[1]) * vx) / turn
    meet = (first[0] + ux * along, first[1] + uy * along)
    if math.dist(meet, at) <= LONGEST_TIP * wide:
        return (meet,)
    reach = LONGEST_TIP * wide * 0.8
    return (first[0] + ux * reach, first[1] + uy * reach), (second[0] - vx * reach, second[1] - vy * reach)


def _heading(a: Place, b: Place) -> tuple[float, float]:
    length = math.dist(a, b) or 1.0
    return (b[0] - a[0]) / length, (b[1] - a[1]) / length
