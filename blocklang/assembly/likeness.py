"""Which units are the same: equal shapes in equal fabrics, turned but never mirrored."""

import math
from dataclasses import dataclass

from blocklang.block import Patch
from blocklang.geometry.marks import Marks
from blocklang.geometry.outlines import Outline
from blocklang.graph.values import PatchGraph

_LENGTHS = 128.0  # ticks
_ANGLES = 1e-3  # radians

Key = tuple[object, ...]


@dataclass(frozen=True, slots=True)
class PatchLikeness:
    """A patch for comparing: its kind, where its middle is, how it is turned, and after what turn it repeats."""

    kind: int
    x: float
    y: float
    turn: float
    repeats: float


class Likeness:
    """Compares units of one graph; keys are equal exactly for units that are the same."""

    def __init__(self, graph: PatchGraph) -> None:
        """Measure every patch of a graph once."""
        self._lengths = Marks(_LENGTHS)
        self._angles = Marks(_ANGLES)
        self._kinds: dict[Key, int] = {}
        self._keys: dict[tuple[int, ...], tuple[Key, tuple[int, ...]]] = {}
        self.patches = tuple(self._measure(patch) for patch in graph.block.patches)

    def key(self, unit: tuple[int, ...]) -> tuple[Key, tuple[int, ...]]:
        """Return what is equal for equal units, and the unit's patches in an order that matches theirs."""
        if len(unit) == 1:
            return (self.patches[unit[0]].kind,), unit
        if unit not in self._keys:
            self._keys[unit] = self._worked_out(unit)
        return self._keys[unit]

    def _worked_out(self, unit: tuple[int, ...]) -> tuple[Key, tuple[int, ...]]:
        cx = sum(self.patches[p].x for p in unit) / len(unit)
        cy = sum(self.patches[p].y for p in unit) / len(unit)
        views = (self._seen_from(unit, cx, cy, angle) for angle in self._frames(unit, cx, cy))
        best = min(views)
        return tuple(item[0] for item in best), tuple(item[1] for item in best)

    def _frames(self, unit: tuple[int, ...], cx: float, cy: float) -> list[float]:
        """Return the few headings that an equal unit would also be seen from: those to its rarest, farthest patches."""
        alike: dict[tuple[int, int], list[int]] = {}
        for p in unit:
            away = self._lengths.number(math.hypot(self.patches[p].x - cx, self.patches[p].y - cy))
            alike.setdefault((away, self.patches[p].kind), []).append(p)
        rings = {k: v for k, v in alike.items() if self._lengths.values[k[0]] > 4 * _LENGTHS} or alike
        ring = min(rings.items(), key=lambda item: (len(item[1]), -self._lengths.values[item[0][0]], item[0][1]))[1]
        return [math.atan2(self.patches[p].y - cy, self.patches[p].x - cx) for p in ring]

    def _seen_from(
        self, unit: tuple[int, ...], cx: float, cy: float, angle: float
    ) -> list[tuple[tuple[int, int, int, int], int]]:
        cos, sin = math.cos(angle), math.sin(angle)
        seen = []
        for p in unit:
            like = self.patches[p]
            dx, dy = like.x - cx, like.y - cy
            x, y = self._lengths.number(dx * cos + dy * sin), self._lengths.number(dy * cos - dx * sin)
            seen.append(((like.kind, x, y, self._turned(like.turn - angle, like.repeats)), p))
        return sorted(seen)

    def _turned(self, angle: float, repeats: float) -> int:
        rest = angle % repeats
        return self._angles.number(0.0 if repeats - rest < _ANGLES else rest)

    def _measure(self, patch: Patch) -> PatchLikeness:
        corners = self._corners(patch.outline)
        stripes = patch.stripes
        along = (
            None if stripes is None else math.atan2(stripes.end.y - stripes.start.y, stripes.end.x - stripes.start.x)
        )
        views = [self._view(corners, i, along) for i in range(len(corners))]
        best = min(view for view, _ in views)
        starts = [turn for view, turn in views if view == best]
        fabrics = (patch.fabric,) if stripes is None else stripes.fabrics
        kind = self._kinds.setdefault((best, fabrics, stripes is None), len(self._kinds))
        x, y = patch.outline.centroid()
        return PatchLikeness(kind, x, y, min(t % math.tau for t in starts), math.tau / len(starts))

    def _corners(self, outline: Outline) -> list[tuple[int, int, int, float]]:
        turns = outline.angles()
        return [
            (
                self._lengths.number(edge.length()),
                self._angles.number(edge.sweep()),
                self._angles.number(angle),
                edge.departs(),
            )
            for edge, angle in zip(outline.edges, turns, strict=True)
        ]

    def _view(
        self, corners: list[tuple[int, int, int, float]], first: int, along: float | None
    ) -> tuple[tuple[object, ...], float]:
        ring = corners[first:] + corners[:first]
        heading = ring[0][3]
        striped = -1 if along is None else self._turned(along - heading, math.tau)
        return (tuple(c[:3] for c in ring), striped), heading
