"""Every order of whole joins: the fewest bends with which two connected units, sewn along all they share, make each unit.

A join closes the points inside its path, and only those: each must be surrounded by the two units. It bends at a point
when its two seams there do not lie opposite each other; curves count by their tangents.
"""

from collections.abc import Iterator
from functools import cached_property

from tests.oracle.drawing import Drawing

NEVER = 10_000


class Orders:
    """All orders of the patches of one drawing; sets of patches and of seams are bit masks."""

    def __init__(self, drawing: Drawing) -> None:
        self.drawing = drawing
        self._fewest: dict[int, int] = {}
        self._round = [0] * drawing.patches  # the seams round each patch
        for seam, (a, b) in enumerate(drawing.sides):
            self._round[a] ^= 1 << seam
            self._round[b] ^= 1 << seam
        self._touching = [sum(1 << patch for patch in patches) for patches in drawing.angles]

    @cached_property
    def _knots(self) -> list[int]:
        return [self._touching[point] for point in sorted(self.drawing.knots)]

    def fewest(self) -> int:
        """Return the fewest bends that any order of whole joins has; `NEVER` when no such order exists."""
        return self.fewest_of((1 << self.drawing.patches) - 1)

    def fewest_of(self, patches: int) -> int:
        """Return the fewest bends with which a connected set of patches can be made."""
        if patches & (patches - 1) == 0:
            return 0
        if patches not in self._fewest:
            self._fewest[patches] = self._search(patches)
        return self._fewest[patches]

    def _search(self, patches: int) -> int:
        least = sum(knot & ~patches == 0 for knot in self._knots)  # no order can have fewer, so the search may end
        best = NEVER
        for bends, part in sorted(self._ways(patches)):
            if bends >= best:
                break
            best = min(best, bends + self.fewest_of(part) + self.fewest_of(patches ^ part))
            if best == least:
                break
        return best

    def _ways(self, patches: int) -> Iterator[tuple[int, int]]:
        """Yield the joins that can finish a set: their bends, and the part that holds the first patch."""
        lowest = patches & -patches
        rest = patches ^ lowest
        some = rest
        while some:
            some = (some - 1) & rest
            part = some | lowest
            if self._connected(part) and self._connected(patches ^ part):
                bends = self._bends(self._seams(part) & self._seams(patches ^ part), patches)
                if bends is not None:
                    yield bends, part

    def _seams(self, patches: int) -> int:
        """Return the seams between a set of patches and the others."""
        seams = 0
        for patch in bits(patches):
            seams ^= self._round[patch]
        return seams

    def _connected(self, patches: int) -> bool:
        reached, new = 0, patches & -patches
        while new:
            reached |= new
            new = 0
            for seam in bits(self._inside(reached, patches)):
                a, b = self.drawing.sides[seam]
                new |= (1 << a | 1 << b) & patches & ~reached
        return reached == patches

    def _inside(self, reached: int, patches: int) -> int:
        return self._seams(reached) & self._around(patches & ~reached)

    def _around(self, patches: int) -> int:
        seams = 0
        for patch in bits(patches):
            seams |= self._round[patch]
        return seams

    def _bends(self, border: int, together: int) -> int | None:
        """Return how often a border bends, or None when it is not one path that closes the points inside it."""
        at: dict[int, list[int]] = {}
        for seam in bits(border):
            for point in self.drawing.ends[seam]:
                at.setdefault(point, []).append(seam)
        if any(len(seams) > 2 for seams in at.values()) or not self._one_piece(border, at):
            return None
        inner = [(point, *seams) for point, seams in at.items() if len(seams) == 2]
        closed = all(p not in self.drawing.outside and self._touching[p] & ~together == 0 for p, _, _ in inner)
        return sum(b not in self.drawing.ahead(a, p) for p, a, b in inner) if closed else None

    def _one_piece(self, border: int, at: dict[int, list[int]]) -> bool:
        seen, waiting = 0, [next(bits(border))]
        while waiting:
            seam = waiting.pop()
            if not seen >> seam & 1:
                seen |= 1 << seam
                waiting.extend(other for point in self.drawing.ends[seam] for other in at[point])
        return seen == border


def bits(mask: int) -> Iterator[int]:
    """Yield the places of the ones, lowest first."""
    while mask:
        low = mask & -mask
        yield low.bit_length() - 1
        mask ^= low
