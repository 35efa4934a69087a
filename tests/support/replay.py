"""An independent replay of a plan's JSON: its own geometry, with shapely; it shares no code with the planner."""

import math
from collections.abc import Sequence
from typing import Any

from shapely import minimum_rotated_rectangle
from shapely.geometry import LineString, Point, Polygon
from shapely.ops import unary_union

_NEAR = 2e-4
_CHORD = 4e-3


class Replay:
    """Sews a plan together join by join and complains of the first thing that cannot be."""

    def __init__(self, plan: dict[str, Any]) -> None:
        """Lay out the patches of a plan as JSON values."""
        self.plan = plan
        self.units = {patch["id"]: Polygon(_ring(patch["edges"])) for patch in plan["patches"]}
        self.holds = {patch["id"]: frozenset([patch["id"]]) for patch in plan["patches"]}
        self.shapes = dict(self.units)
        self.block = Polygon(plan["block"]["outline"])
        self.pivots = 0
        self.partials = 0
        self.open: Any = LineString()  # what partial seams have left unsewn so far

    def run(self) -> None:
        """Replay everything; at the end one unit must hold every patch."""
        for step in self.plan["steps"]:
            for join in step["joins"]:
                self._join(step, join)
            self._measure(step)
        assert len(self.units) == 1, f"{len(self.units)} units are left"
        assert next(iter(self.holds.values())) == frozenset(self.shapes)
        assert self.pivots == self.plan["set_in"]["pivots"]
        assert self.partials == self.plan["partial"]["count"]
        assert self.open.length < _CHORD * 4, "a partial seam is never finished"

    def _join(self, step: dict[str, Any], join: dict[str, Any]) -> None:
        path = LineString(join["path"])
        if len(join["units"]) == 1:
            if step["kind"] == "partial-finish":
                self._finish(join, path)
            else:
                self._close_ring(join, path)
            return
        a, b = (self.units.pop(name) for name in join["units"])
        shared = a.boundary.intersection(b.boundary.buffer(_NEAR))
        self._sewn_all(step, path, shared, a, b)
        together = unary_union([a.buffer(_NEAR / 2), b.buffer(_NEAR / 2)])
        assert together.geom_type == "Polygon", f"{join['makes']} falls apart"
        members = self.holds.pop(join["units"][0]) | self.holds.pop(join["units"][1])
        self.units[join["makes"]] = unary_union([a, b])
        self.holds[join["makes"]] = members
        self._ends(join, members)
        self._count_pivots(join)

    def _sewn_all(self, step: dict[str, Any], path: LineString, shared: Any, a: Polygon, b: Polygon) -> None:
        """The path lies on both units, and sews all that they share, but for what a partial seam leaves open."""
        assert path.is_valid and path.length > 0
        assert a.boundary.buffer(_CHORD).covers(path) and b.boundary.buffer(_CHORD).covers(path), "path off the edge"
        rest = shared.difference(path.buffer(_CHORD * 2))
        if rest.length > _CHORD * 4:
            self.open = self.open.union(rest)
        else:
            assert path.length <= shared.length + _CHORD * 4

    def _finish(self, join: dict[str, Any], path: LineString) -> None:
        self._was_open(path)
        self.open = self.open.difference(path.buffer(_CHORD * 4))
        unit = join["units"][0]
        self.units[join["makes"]] = self.units.pop(unit)
        self.holds[join["makes"]] = self.holds.pop(unit)
        assert join["start"] == "stop"
        self._count_pivots(join)
        self.partials += 1

    def _was_open(self, path: LineString) -> None:
        """A sharp corner may have eaten a thread's width of what is open, never more."""
        assert path.difference(self.open.buffer(_CHORD * 3)).length < 0.06, "nothing is open along that path"

    def _close_ring(self, join: dict[str, Any], path: LineString) -> None:
        """A seam across a ring: open until now, and both its ends on the edges of the unit, which has a hole."""
        self._was_open(path)
        self.open = self.open.difference(path.buffer(_CHORD * 4))
        unit = join["units"][0]
        self.units[join["makes"]] = self.units.pop(unit)
        self.holds[join["makes"]] = self.holds.pop(unit)
        edges = unary_union([self.units[join["makes"]].buffer(_NEAR).buffer(-_NEAR)]).boundary
        assert edges.geom_type == "MultiLineString", "only a ring is closed so"
        assert all(edges.distance(Point(at)) < _CHORD for at in (join["path"][0], join["path"][-1]))
        self._ends(join, self.holds[join["makes"]])

    def _ends(self, join: dict[str, Any], members: frozenset[str]) -> None:
        if join["path"][0] == join["path"][-1]:
            return
        for name, at in (("start", join["path"][0]), ("end", join["path"][-1])):
            expected = "stop" if self._is_notch(at, members) else "raw-edge"
            assert join[name] == expected, (
                f"{join['makes']} {name} at {at}: {join[name]}, but the angle says {expected}"
            )

    def _is_notch(self, at: Sequence[float], members: frozenset[str]) -> bool:
        """The angle of the united piece at a point, measured as the share of a small ring that lies in its patches."""
        point = Point(at)
        if self.block.exterior.distance(point) < _NEAR:
            return False
        radius = 0.02
        ring = point.buffer(radius, quad_segs=256).exterior
        nearby = [self.shapes[m] for m in members if self.shapes[m].distance(point) < radius]
        inside = ring.intersection(unary_union([shape.buffer(1e-5) for shape in nearby])).length
        return bool(inside / ring.length * 360 > 181.5)

    def _count_pivots(self, join: dict[str, Any]) -> None:
        bends = [
            end["from"] for start, end in zip(join["edges"], join["edges"][1:], strict=False) if _turns(start, end)
        ]
        assert bends == join["pivots"], f"{join['makes']}: bends at {bends}, pivots {join['pivots']}"
        self.pivots += len(bends)

    def _measure(self, step: dict[str, Any]) -> None:
        if step["measures"] is None:
            return
        allowance = self.plan["seam_allowance"]
        for made in step["makes"]:
            shape = self.units[made]
            box = minimum_rotated_rectangle(shape)
            assert abs(box.area - shape.area) < 1e-2 * max(1.0, box.length), f"{made} is no rectangle"
            corners = list(box.exterior.coords)
            sides = sorted(math.dist(corners[i], corners[i + 1]) + 2 * allowance for i in (0, 1))
            assert all(abs(x - y) < 1e-3 for x, y in zip(sides, sorted(step["measures"]), strict=True))


def _ring(edges: Sequence[dict[str, Any]]) -> list[tuple[float, float]]:
    """Return an outline with arcs in chords so short that no corner between two of them looks like a notch."""
    return [point for edge in edges for point in (_arc(edge) if "centre" in edge else [tuple(edge["from"])])]


def _arc(edge: dict[str, Any]) -> list[tuple[float, float]]:
    """Break an arc at whole half degrees, where its neighbours break it, too."""
    (cx, cy), first = edge["centre"], _bearing(edge, "from")
    turn = (_bearing(edge, "to") - first) % math.tau
    turn -= math.tau if edge["clockwise"] else 0
    step = math.radians(0.5)
    low, high = sorted((first, first + turn))
    inner = [k * step for k in range(math.floor(low / step) - 1, math.ceil(high / step) + 2)]
    radius = math.dist(edge["from"], edge["centre"])
    inside = sorted((a for a in inner if low + 1e-4 < a < high - 1e-4), reverse=bool(edge["clockwise"]))
    return [tuple(edge["from"]), *((cx + radius * math.cos(a), cy + radius * math.sin(a)) for a in inside)]


def _bearing(edge: dict[str, Any], at: str) -> float:
    return math.atan2(edge[at][1] - edge["centre"][1], edge[at][0] - edge["centre"][0])


def _turns(before: dict[str, Any], after: dict[str, Any]) -> bool:
    turn = _heading(after, "from") - _heading(before, "to")
    return abs(math.remainder(turn, math.tau)) > 2e-3


def _heading(edge: dict[str, Any], at: str) -> float:
    (x, y), (u, v) = edge["from"], edge["to"]
    if "centre" not in edge:
        return math.atan2(v - y, u - x)
    cx, cy = edge["centre"]
    px, py = edge[at]
    return math.atan2(py - cy, px - cx) + (-math.pi / 2 if edge["clockwise"] else math.pi / 2)


def replay(plan: dict[str, Any]) -> None:
    """Replay a plan as JSON values."""
    Replay(plan).run()
