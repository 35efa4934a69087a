"""Patches as they lie on the table: with the seam allowance outside the unit, sewn edge to edge inside it."""

import math
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from itertools import pairwise

from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph import PatchGraph
from blocklang_drawing.shapes import Place

#: Chords this near (1/400 in) to a curve look round at the scale of a step picture.
CURVE_ERROR = TICKS_PER_INCH / 400
#: A tip longer than this many allowances is drawn trimmed.
LONGEST_TIP = 3.0

Ring = tuple[Place, ...]


@dataclass(frozen=True, slots=True)
class Side:
    """A straight stretch round a patch: how far out its raw edge lies, and what lies across it."""

    start: Place
    end: Place
    out: float
    across: int


def raw_ring(graph: PatchGraph, patch: int, unit: Collection[int], allowance: float | None = None) -> Ring:
    """Return a patch of a unit with its seam allowance wherever it does not touch the unit (ticks)."""
    wide = graph.block.seam_allowance if allowance is None else allowance
    ring: list[Place] = []
    for before, after in _turns(graph, patch, unit, wide):
        inner = after if before.out else before
        if bool(before.out) != bool(after.out) and _is_tip(graph, inner.across, after.start, unit, wide):
            ring.extend(_squarely(before, after))
        else:
            ring.extend(_corner(before, after, wide))
    return tuple(ring)


def _is_tip(graph: PatchGraph, patch: int, at: Place, unit: Collection[int], wide: float) -> bool:
    # A patch whose point only just reaches the outside of the unit: running the seams beside it on to the raw edge
    # would cross them, so its neighbours meet squarely above the point instead.
    turns = _turns(graph, patch, unit, wide)
    return any(after.start == at and not before.out and not after.out for before, after in turns)


def _squarely(before: Side, after: Side) -> Ring:
    at, outer = after.start, before if before.out else after
    x, y = _heading(outer.start, outer.end)
    raw = (at[0] + y * outer.out, at[1] - x * outer.out)
    return (raw, at) if before.out else (at, raw)


def _turns(graph: PatchGraph, patch: int, unit: Collection[int], wide: float) -> Iterator[tuple[Side, Side]]:
    sides = _sides(graph, patch, unit, wide)
    return zip(sides[-1:] + sides[:-1], sides, strict=True)


def _sides(graph: PatchGraph, patch: int, unit: Collection[int], wide: float) -> list[Side]:
    sides: list[Side] = []
    for index, on_left in graph.sides[patch]:
        segment = graph.segments[index]
        edge = segment.edge if on_left else segment.edge.reversed()
        neighbour = segment.right if on_left else segment.left
        points = edge.chords(CURVE_ERROR)
        out = 0.0 if neighbour in unit else float(wide)
        sides.extend(Side(a, b, out, neighbour) for a, b in pairwise(points) if a != b)
    return sides


def _corner(before: Side, after: Side, wide: float) -> Ring:
    at, out = after.start, after.out
    (ux, uy), (vx, vy) = _heading(before.start, before.end), _heading(at, after.end)
    first = (at[0] + uy * before.out, at[1] - ux * before.out)
    second = (at[0] + vy * out, at[1] - vx * out)
    turn = ux * vy - uy * vx
    if abs(turn) < 0.05:
        return (second,) if before.out == out else (first, second)
    along = ((second[0] - first[0]) * vy - (second[1] - first[1]) * vx) / turn
    meet = (first[0] + ux * along, first[1] + uy * along)
    if math.dist(meet, at) <= LONGEST_TIP * wide:
        return (meet,)
    reach = LONGEST_TIP * wide * 0.8
    return (first[0] + ux * reach, first[1] + uy * reach), (second[0] - vx * reach, second[1] - vy * reach)


def _heading(a: Place, b: Place) -> tuple[float, float]:
    length = math.dist(a, b) or 1.0
    return (b[0] - a[0]) / length, (b[1] - a[1]) / length
