"""Locks and spins found again from the plan's JSON alone, by nothing but its paths, patches and directions."""

import math
from itertools import pairwise
from typing import Any

from shapely.geometry import Point, Polygon

ASIDE = 0.003  # inches
BEND = 0.06  # radians; the first chord of a curve lies so far off its tangent at most


class Sewn:
    """One pressed piece of a join, as chords from one junction to the next."""

    def __init__(self, piece: dict[str, Any], join: int, patches: dict[str, Polygon]) -> None:
        self.path, self.toward, self.join, self.patches = piece["path"], piece["toward"], join, patches

    def leaves(self, at) -> float | None:
        """The angle at which it leaves a place; None when it does not end there."""
        for path in (self.path, self.path[::-1]):
            if math.dist(path[0], at) < 1e-4:
                return math.atan2(path[1][1] - path[0][1], path[1][0] - path[0][0])
        return None

    def sense(self, at) -> str:
        """The way round that its allowance lies, seen from a place where it ends."""
        if self.toward == "open":
            return "open"
        angle = self.leaves(at)
        x, y = (a + 4 * ASIDE * f(angle) for a, f in zip(at, (math.cos, math.sin), strict=True))
        aside = Point(x - ASIDE * math.sin(angle), y + ASIDE * math.cos(angle))
        return "counterclockwise" if self.patches[self.toward].contains(aside) else "clockwise"


def locks_in(plan: dict[str, Any]) -> dict[str, bool]:
    """Every junction that can lock, by id, and whether it does."""
    patches = {patch["id"]: Polygon(patch["outline"]) for patch in plan["patches"]}
    joins = [(step["kind"], join) for step in plan["steps"] for join in step["joins"]]
    sewn = [[Sewn(piece, number, patches) for piece in join["press"]] for number, (_, join) in enumerate(joins)]
    order = made_before(joins)
    found = {}
    for junction in plan["junctions"]:
        if junction["kind"] == "edge":
            continue
        at = junction["at"]
        here = [piece for pieces in sewn for piece in pieces if piece.leaves(at) is not None]
        begun = [piece for piece in here if joins[piece.join][0] == "partial"]
        for number, (kind, _) in enumerate(joins):
            own = [piece for piece in here if piece.join == number]
            pairs = (
                list(pairwise(own))
                if len(own) > 1
                else [(a, b) for a in own for b in begun if kind == "partial-finish"]
            )
            for pair in pairs:
                sides = sides_of(at, pair, [p for p in here if p not in pair and p.join in order[number]])
                if sides is not None and all(sides):
                    senses = {piece.sense(at) for side in sides for piece in side}
                    found[junction["id"]] = len(senses) == 1 and "open" not in senses
    return found


def sides_of(at, pair, others):
    """The other pieces left and right of two that run straight through a place; None when those bend."""
    a, b = (piece.leaves(at) for piece in pair)
    if abs(math.remainder(a - b - math.pi, 2 * math.pi)) > BEND:
        return None
    turned = [((piece.leaves(at) - a) % (2 * math.pi), piece) for piece in others]
    return [p for turn, p in turned if turn < math.pi], [p for turn, p in turned if turn > math.pi]


def made_before(joins) -> list[set[int]]:
    """For each join, the joins inside the units that it sews together."""
    makes: dict[str, set[int]] = {}
    before = []
    for number, (_, join) in enumerate(joins):
        inside = set().union(*(makes.get(unit, set()) for unit in join["units"]))
        before.append(inside)
        makes[join["makes"]] = inside | {number}
    return before
