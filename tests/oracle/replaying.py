"""The replay of a plan's JSON with shapely, held finer: the same chords on both sides of a curve, sharp corners kept."""

import math
from typing import Any

from shapely.geometry import LineString, Polygon

from tests.support.replay import Replay

_STEP = math.radians(0.5)
_FINE = 1e-3  # inches: what a path covers of a border
_OPEN = 0.016  # inches: less is no seam


class FineReplay(Replay):
    """A replay that follows the exact edges of the plan, and keeps what a partial seam leaves open up to its corner."""

    def __init__(self, plan: dict[str, Any]) -> None:
        """Draw every curve with corners at whole half degrees, wherever an edge begins or ends."""
        joins = [{**step, "joins": [_with_fine_path(join) for join in step["joins"]]} for step in plan["steps"]]
        patches = [{**patch, "outline": _chords(patch["edges"])[:-1]} for patch in plan["patches"]]
        super().__init__({**plan, "steps": joins, "patches": patches})

    def _sewn_all(self, step: dict[str, Any], path: LineString, shared: Any, a: Polygon, b: Polygon) -> None:
        assert path.is_valid and path.length > 0
        assert a.boundary.buffer(_FINE).covers(path) and b.boundary.buffer(_FINE).covers(path), "path off the edge"
        rest = shared.difference(path.buffer(_FINE))
        if rest.length > _OPEN:
            self.open = self.open.union(rest)
        else:
            assert path.length <= shared.length + _OPEN


def _with_fine_path(join: dict[str, Any]) -> dict[str, Any]:
    return {**join, "path": _chords(join["edges"])}


def _chords(edges: list[dict[str, Any]]) -> list[tuple[float, float]]:
    points = [tuple(edges[0]["from"])]
    for edge in edges:
        points.extend(_between(edge) if "centre" in edge else [])
        points.append(tuple(edge["to"]))
    return points


def _between(edge: dict[str, Any]) -> list[tuple[float, float]]:
    """Return the places on an arc, between its ends, at whole half degrees seen from its centre."""
    (x, y), radius = edge["centre"], math.dist(edge["centre"], edge["from"])
    first, last = (math.atan2(edge[end][1] - y, edge[end][0] - x) for end in ("from", "to"))
    if edge["clockwise"]:
        first, last = last, first
    last = first + (last - first) % math.tau
    turns = [k * _STEP for k in range(math.ceil(first / _STEP + 0.01), math.floor(last / _STEP - 0.01) + 1)]
    places = [(x + radius * math.cos(turn), y + radius * math.sin(turn)) for turn in turns]
    return places[::-1] if edge["clockwise"] else places


def replay(plan: dict[str, Any]) -> None:
    """Replay a plan as JSON values."""
    FineReplay(plan).run()
