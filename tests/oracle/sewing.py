"""Sewing seam by seam, partial seams included: every order of straight and bent runs of the needle.

The state is the set of seams that are sewn. One run of the needle sews a path of unsewn seams:
- at every point inside the path all other seams are sewn already (a quilter cannot sew across an open seam end); where
  the path is not straight there, the needle turns: one pivot;
- where the path ends at an inner point and is the last seam there, it closes the point from one side: that finishes a
  partial seam, and costs a pivot besides unless it carries a sewn seam straight on.

Counting runs: n patches, s seams and i inner points of a block without holes have n - s + i = 1, and a run of k seams
closes the k - 1 points inside it. So the runs beyond the n - 1 joins that every order needs, the finishes, are as many
as the points that are closed from one side. (A run that meets itself closes k points; a ring was closed before it.)

Held strictly, a run with the same unit on both sides is straight and carries a sewn seam straight on, and nothing is
left open inside a unit but such a rest of a begun straight seam. Loosely, neither is asked: that is what is planned for.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from heapq import heappop, heappush

from tests.oracle.drawing import Drawing
from tests.oracle.orders import bits


@dataclass(frozen=True, slots=True)
class Run:
    """Seams (a bit mask) sewn in one go, with the pivots and the points closed from one side."""

    seams: int
    pivots: int
    finishes: int
    carries: bool


class Needle:
    """What can be sewn next in one drawing; sets of seams are bit masks."""

    def __init__(self, drawing: Drawing, strict: bool) -> None:
        self.drawing = drawing
        self.strict = strict
        self.all = (1 << len(drawing.sides)) - 1
        self.inner = [p for p in range(len(drawing.points)) if p not in drawing.outside and drawing.seams_at[p]]
        self._at = [mask(seams) if p not in drawing.outside else 0 for p, seams in enumerate(drawing.seams_at)]
        self._ahead = {
            (s, p): mask(drawing.ahead(s, p)) for s, ends in enumerate(drawing.ends) for p in ends if self._at[p]
        }
        self._straight = [
            [(1 << s | 1 << t) for s in drawing.seams_at[p] for t in drawing.ahead(s, p)] for p in self.inner
        ]

    def owed(self, sewn: int) -> tuple[int, int]:
        """Return what closing the open points costs at least: a pivot at a knot, a finish where no straight seam is whole.

        Closing such a point by a bend instead spares the finish and costs a pivot more, which counts for more.
        """
        pivots = finishes = 0
        for point, straight in zip(self.inner, self._straight, strict=True):
            if self._at[point] & ~sewn:
                if not straight:
                    pivots += 1
                elif all(pair & sewn for pair in straight):
                    finishes += 1
        return pivots, finishes

    def runs(self, sewn: int) -> Iterator[Run]:
        """Yield every run that may be sewn next."""
        seen: set[int] = set()
        units = self.units(sewn) if self.strict else []
        for seam in bits(self.all & ~sewn):
            for start, end in (self.drawing.ends[seam], self.drawing.ends[seam][::-1]):
                for run in self._from(sewn, seam, start, end):
                    if run.seams not in seen:
                        seen.add(run.seams)
                        if not self.strict or self._in_order(sewn, run, units):
                            yield run

    def _from(self, sewn: int, first: int, start: int, end: int) -> Iterator[Run]:
        """Yield the runs that begin with a seam, travelled from one end to the other, and go on."""
        path, seam, pivots = 1 << first, first, 0
        while True:
            ring = start == end  # then the point at which it meets itself is passed like any other
            sides = () if ring else ((first, start), (seam, end))
            turns = ring and self._is_last(sewn | path, end) and not self._ahead[seam, end] >> first & 1
            closing = [(s, p) for s, p in sides if self._is_last(sewn | path, p)]
            carried = [bool(self._ahead[s, p] & (sewn | path)) for s, p in closing]
            carries = any(self._ahead[s, p] & sewn for s, p in sides if self._at[p])
            yield Run(path, pivots + turns + len(closing) - sum(carried), len(closing), carries)
            others = self._at[end] & ~sewn & ~path
            if ring or others.bit_count() != 1 or self._at[end] & path & ~(1 << seam):
                return
            following = others.bit_length() - 1
            pivots += not self._ahead[seam, end] & others
            path |= others
            seam, end = following, self.drawing.far(following, end)

    def _is_last(self, sewn: int, point: int) -> bool:
        return bool(self._at[point]) and not self._at[point] & ~sewn

    def units(self, sewn: int) -> list[int]:
        """Return, for each patch, the lowest patch of its unit."""
        unit = list(range(self.drawing.patches))
        for seam in bits(sewn):
            a, b = sorted(unit[patch] for patch in self.drawing.sides[seam])
            if a != b:
                unit = [a if u == b else u for u in unit]
        return unit

    def _in_order(self, sewn: int, run: Run, units: list[int]) -> bool:
        """Tell whether a run is a join or a finish as the strict rule has them."""
        a, b = (units[patch] for patch in self.drawing.sides[next(bits(run.seams))])
        if a == b:
            return run.carries and not run.pivots
        rest = [s for s in bits(self.all & ~sewn & ~run.seams) if {units[p] for p in self.drawing.sides[s]} <= {a, b}]
        return self._is_begun(rest, sewn | run.seams)

    def _is_begun(self, rest: list[int], sewn: int) -> bool:
        """Tell whether all of the unsewn rest carries something sewn straight on."""
        while rest:
            more = [s for s in rest if any(self._ahead.get((s, p), 0) & sewn for p in self.drawing.ends[s])]
            if not more:
                return False
            sewn |= mask(tuple(more))
            rest = [s for s in rest if not sewn >> s & 1]
        return True


def mask(seams: tuple[int, ...]) -> int:
    """Return seams as a bit mask."""
    return sum(1 << seam for seam in seams)


def fewest(drawing: Drawing, strict: bool = False, most: int = 100_000) -> tuple[int, int] | None:
    """Return the fewest pivots and, with those, the fewest partial seams; None when no order or after `most` states.

    Best first, pivots before partial seams, what is owed at open points added: sewing a run never makes paid and owed
    together less, so the first order found is the least.
    """
    needle = Needle(drawing, strict)
    paid = {0: (0, 0)}
    waiting = [(*needle.owed(0), needle.all.bit_count(), 0)]
    done: set[int] = set()
    while waiting and len(done) < most:
        _, _, _, sewn = heappop(waiting)
        if sewn == needle.all:
            return paid[sewn]
        if sewn in done:
            continue
        done.add(sewn)
        pivots, finishes = paid[sewn]
        for run in needle.runs(sewn):
            after = sewn | run.seams
            cost = pivots + run.pivots, finishes + run.finishes
            if after not in paid or cost < paid[after]:
                paid[after] = cost
                owed = needle.owed(after)
                heappush(waiting, (cost[0] + owed[0], cost[1] + owed[1], (needle.all & ~after).bit_count(), after))
    return None
