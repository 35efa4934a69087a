"""Which sections are sewn from the same paper: equal patches in equal fabrics, turned but never mirrored."""

import math

from blocklang.block import Patch
from blocklang.geometry.congruence import Interner, shape_key
from blocklang.geometry.marks import Marks
from blocklang.geometry.tolerance import SAME_POINT, STRAIGHT_ANGLE
from blocklang.graph.values import PatchGraph

Key = tuple[object, ...]
View = list[tuple[tuple[int, int, int, int], int]]


class Sameness:
    """Compares sections of one graph; keys are equal for those that one paper serves."""

    def __init__(self, graph: PatchGraph) -> None:
        """Measure every patch once."""
        self._interner = Interner()
        self._lengths, self._angles = Marks(4.0 * SAME_POINT), Marks(STRAIGHT_ANGLE)
        self._kinds: dict[Key, int] = {}
        self._known: dict[tuple[int, ...], tuple[Key, tuple[int, ...]]] = {}
        self._middles = tuple(patch.outline.centroid() for patch in graph.block.patches)
        self._lies = tuple(self._measure(patch) for patch in graph.block.patches)

    def key(self, patches: tuple[int, ...]) -> tuple[Key, tuple[int, ...]]:
        """Return what is equal for equal sections, and the patches in an order that matches theirs."""
        if patches not in self._known:
            self._known[patches] = self._compared(patches)
        return self._known[patches]

    def _compared(self, patches: tuple[int, ...]) -> tuple[Key, tuple[int, ...]]:
        views = (self._seen(patches, *frame) for frame in self._frames(patches))
        best = min(views, key=lambda view: [seen for seen, _ in view])
        return tuple(seen for seen, _ in best), tuple(patch for _, patch in best)

    def _frames(self, patches: tuple[int, ...]) -> list[tuple[int, float]]:
        """Return the patches of the rarest kind, each with every heading in which it looks the same."""
        alike: dict[int, list[int]] = {}
        for patch in patches:
            alike.setdefault(self._lies[patch][0], []).append(patch)
        rarest = min(alike.items(), key=lambda item: (len(item[1]), item[0]))[1]
        frames: list[tuple[int, float]] = []
        for patch in rarest:
            _, turn, order = self._lies[patch]
            frames.extend((patch, turn + step * math.tau / order) for step in range(order))
        return frames

    def _seen(self, patches: tuple[int, ...], origin: int, turn: float) -> View:
        cos, sin = math.cos(turn), math.sin(turn)
        ox, oy = self._middles[origin]
        seen = []
        for patch in patches:
            kind, own, order = self._lies[patch]
            dx, dy = self._middles[patch][0] - ox, self._middles[patch][1] - oy
            along, up = self._lengths.number(dx * cos + dy * sin), self._lengths.number(dy * cos - dx * sin)
            seen.append(((kind, along, up, self._heading(own - turn, order)), patch))
        return sorted(seen)

    def _heading(self, angle: float, order: int) -> int:
        rest = angle % (math.tau / order)
        return self._angles.number(0.0 if math.tau / order - rest < STRAIGHT_ANGLE else rest)

    def _measure(self, patch: Patch) -> tuple[int, float, int]:
        """Return a patch's kind, its heading, and how many turns bring it onto itself."""
        shape = shape_key(patch.outline, self._interner)
        if patch.stripes is None:
            return self._kind(shape.key, patch.fabric), shape.turn, shape.order
        start, end = patch.stripes.start, patch.stripes.end
        along = math.atan2(end.y - start.y, end.x - start.x)
        lean = self._heading(along - shape.turn, shape.order)
        return self._kind(shape.key, *patch.stripes.fabrics, lean), along, 1

    def _kind(self, *what: object) -> int:
        return self._kinds.setdefault(what, len(self._kinds))
