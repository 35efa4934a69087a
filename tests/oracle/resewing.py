"""Sewing an order again, join by join, on the drawing: whatever the planner says is only a claim."""

import math

from blocklang.assembly import Assembly, Join, JoinKind
from blocklang.geometry import TICKS_PER_INCH, Edge, Point
from tests.oracle.drawing import Drawing, Place

_NEAR = 2e-3  # inches
_STRAIGHT = 2e-3  # radians


class Resewing:
    """Follows the joins of an order over the seams of a drawing and complains of the first that cannot be sewn."""

    def __init__(self, drawing: Drawing, assembly: Assembly) -> None:
        self.drawing = drawing
        self.assembly = assembly
        self.units: dict[int, frozenset[int]] = {p: frozenset([p]) for p in range(drawing.patches)}
        self.sewn: set[int] = set()
        self.pivots = 0
        self.partials = 0
        self._of_pair: dict[frozenset[int], list[int]] = {}
        for seam, pair in enumerate(drawing.sides):
            self._of_pair.setdefault(frozenset(pair), []).append(seam)

    def run(self) -> None:
        """Sew everything; at the end one unit holds every patch and every seam is sewn once."""
        for join in self.assembly.joins:
            self._sew(join)
        assert list(self.units.values()) == [frozenset(range(self.drawing.patches))]
        assert len(self.sewn) == len(self.drawing.sides), "a seam is left open"
        assert self.pivots == self.assembly.pivots.count
        assert self.partials == self.assembly.partials.count

    def _sew(self, join: Join) -> None:
        path, points = self._path(join)
        members = [self.units.pop(unit) for unit in join.units]
        together = frozenset().union(*members)
        assert not self.sewn.intersection(path), "sewn twice"
        self.sewn.update(path)
        if len(members) == 2:
            self._joins(path, members)
        else:
            self._closes(join, path, points, members)
        self._passes(join, path, points)
        self._turns(join, path, points)
        for stops, point in ((join.start_stops, points[0]), (join.end_stops, points[-1])):
            assert stops == self._stops(point, together) or points[0] == points[-1], f"stop at {self._at(point)}"
        self.units[join.makes] = together

    def _path(self, join: Join) -> tuple[list[int], list[int]]:
        """Find the seams of the drawing under a path, and the points passed; each is travelled with its unit on the left."""
        graph = self.assembly.graph
        seams: list[int] = []
        points: list[int] = []
        for step in join.path:
            segment = graph.segments[step.segment]
            edge = segment.edge if step.forward else segment.edge.reversed()
            under = self._under(edge, frozenset(segment.patches))
            for seam in under:
                a, b = self.drawing.ends[seam]
                start = points[-1] if points else self._first(edge, a, b)
                assert start in (a, b), "the path has a gap"
                points = points or [start]
                points.append(self.drawing.far(seam, start))
                seams.append(seam)
        assert seams and len(set(seams)) == len(seams)
        return seams, points

    def _under(self, edge: Edge, pair: frozenset[int]) -> list[int]:
        """Return the seams between two patches that lie on an edge, in the order in which the edge passes them."""
        on = []
        for seam in self._of_pair[pair]:
            x, y = self.drawing.middles[seam]
            share, off = edge.offset_of(Point(round(x * TICKS_PER_INCH), round(y * TICKS_PER_INCH)))
            if abs(off) < _NEAR * TICKS_PER_INCH and 0 < share < 1:
                on.append((share, seam))
        return [seam for _, seam in sorted(on)]

    def _first(self, edge: Edge, a: int, b: int) -> int:
        start = edge.start.x / TICKS_PER_INCH, edge.start.y / TICKS_PER_INCH
        return min((a, b), key=lambda point: math.dist(self._at(point), start))

    def _at(self, point: int) -> Place:
        return self.drawing.points[point]

    def _joins(self, path: list[int], members: list[frozenset[int]]) -> None:
        """Every seam of the path lies between the two units."""
        one, other = members
        for a, b in (self.drawing.sides[seam] for seam in path):
            assert (a in one and b in other) or (b in one and a in other), "the path leaves the two units"

    def _ahead(self, seam: int, point: int) -> tuple[int, ...]:
        return () if point in self.drawing.outside else self.drawing.ahead(seam, point)

    def _closes(self, join: Join, path: list[int], points: list[int], members: list[frozenset[int]]) -> None:
        """A finish goes on straight from something sewn, within one unit; else a ring of pieces is closed."""
        (unit,) = members
        assert all(set(self.drawing.sides[seam]) <= unit for seam in path)
        if join.kind is JoinKind.PARTIAL_FINISH:
            begun = self.sewn.intersection(self._ahead(path[0], points[0]))
            assert begun.difference(path), "a finish begins where nothing is begun"

    def _passes(self, join: Join, path: list[int], points: list[int]) -> None:
        """Inside a path nothing may be open any more; at its ends it may only close what it carries straight on."""
        for point in points[1:-1]:
            assert point not in self.drawing.outside
            assert self._is_closed(point), f"sewn across an open seam at {self._at(point)}"
        for seam, point in ((path[0], points[0]), (path[-1], points[-1])):
            if point not in self.drawing.outside and self._is_closed(point) and points[0] != points[-1]:
                assert self._ahead(seam, point), f"closed from one side without a pivot at {self._at(point)}"
                assert len(join.units) == 1, f"two units cannot close {self._at(point)} from one side"
                self.partials += 1
        if points[0] == points[-1] and points[0] not in self.drawing.outside and self._is_closed(points[0]):
            assert path[-1] in self._ahead(path[0], points[0]), (
                f"a ring turns where it meets itself at {self._at(points[0])}"
            )

    def _is_closed(self, point: int) -> bool:
        return self.sewn.issuperset(self.drawing.seams_at[point])

    def _turns(self, join: Join, path: list[int], points: list[int]) -> None:
        bends = [p for a, b, p in zip(path, path[1:], points[1:], strict=False) if b not in self.drawing.ahead(a, p)]
        claimed = [self.assembly.graph.junctions[j].at for j in join.pivots]
        assert len(bends) == len(claimed), f"bends at {[self._at(p) for p in bends]}"
        for point, (x, y) in zip(bends, claimed, strict=True):
            assert math.dist(self._at(point), (x / TICKS_PER_INCH, y / TICKS_PER_INCH)) < _NEAR
        self.pivots += len(bends)

    def _stops(self, point: int, together: frozenset[int]) -> bool:
        """More than half a turn inside, and not on the outline: something is set in there later."""
        inside = sum(angle for patch, angle in self.drawing.angles[point].items() if patch in together)
        return point not in self.drawing.outside and inside > math.pi + _STRAIGHT


def resew(drawing: Drawing, assembly: Assembly) -> None:
    """Sew an order again on a drawing of its block."""
    Resewing(drawing, assembly).run()
