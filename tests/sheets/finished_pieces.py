"""What the pieces of a cutting list must measure, worked out from the outlines of a plan's JSON and from nothing else."""

import math
from fractions import Fraction
from typing import Any

from shapely import Polygon, unary_union
from shapely.geometry.base import BaseGeometry

from tests.sheets.following import CutLine

CLOSE = 1e-4
Plan = dict[str, Any]


def eighths_up(length: float) -> Fraction:
    """Return the next eighth of an inch that is not less."""
    return Fraction(math.ceil(length * 8 - CLOSE), 8)


def finished(patch: Plan) -> Polygon:
    """Return the finished shape of a patch, in inches."""
    return Polygon(patch["outline"])


def raw(patch: Plan, allowance: float) -> Polygon:
    """Return the shape of a patch out to its raw edges, points and all."""
    return finished(patch).buffer(allowance, join_style="mitre", mitre_limit=20)


def fits(line: CutLine, patch: Plan, allowance: float) -> bool:
    """Say whether a patch is what a line cuts."""
    if patch["fabric"] != line.fabric:
        return False
    curved = any(edge.get("centre") for edge in patch["edges"])
    if curved or line.kind == "template":
        return curved and line.kind == "template"
    shape = raw(patch, allowance)
    return bool(_FITS[line.kind](line, patch, shape))


def _sides(shape: Polygon) -> list[tuple[float, float]]:
    """Return length and direction (degrees, 0 to 180) of every side, corners that do not bend taken out."""
    corners = list(shape.simplify(CLOSE).normalize().exterior.coords)
    steps = [(b[0] - a[0], b[1] - a[1]) for a, b in zip(corners, corners[1:], strict=False)]
    return [(math.hypot(x, y), round(math.degrees(math.atan2(y, x)), 3) % 180) for x, y in steps]


def _upright(shape: Polygon) -> bool:
    return len(_sides(shape)) == 4 and all(way in (0, 90) for _, way in _sides(shape))


def _extent(shape: BaseGeometry) -> tuple[float, float]:
    west, south, east, north = shape.bounds
    return east - west, north - south


def _square(line: CutLine, _: Plan, shape: Polygon) -> bool:
    return _upright(shape) and {eighths_up(side) for side in _extent(shape)} == set(line.measures)


def _rectangle(line: CutLine, _: Plan, shape: Polygon) -> bool:
    return _upright(shape) and sorted(map(eighths_up, _extent(shape))) == sorted(line.measures)


def _corner_triangle(shape: Polygon) -> tuple[float, float, float] | None:
    """Return leg, long side and the direction of the long side of a right triangle with equal legs."""
    sides = sorted(_sides(shape))
    if len(sides) != 3 or abs(sides[0][0] - sides[1][0]) > CLOSE or abs(sides[2][0] - sides[0][0] * 2**0.5) > CLOSE:
        return None
    return sides[0][0], sides[2][0], sides[2][1]


def _once(line: CutLine, _: Plan, shape: Polygon) -> bool:
    triangle = _corner_triangle(shape)
    return triangle is not None and triangle[2] in (45, 135) and eighths_up(triangle[0]) == line.measures[0]


def _twice(line: CutLine, _: Plan, shape: Polygon) -> bool:
    triangle = _corner_triangle(shape)
    return triangle is not None and triangle[2] in (0, 90) and eighths_up(triangle[1]) == line.measures[0]


def _slanted(line: CutLine, _: Plan, shape: Polygon) -> bool:
    sides = _sides(shape)
    if len(sides) != 4 or max(sides)[0] - min(sides)[0] > CLOSE:
        return False
    angle = min(abs(sides[0][1] - sides[1][1]), 180 - abs(sides[0][1] - sides[1][1]))
    across = eighths_up(shape.area / sides[0][0])
    return line.measures == (across, across, Fraction(round(angle)))


def _pointed(line: CutLine, _: Plan, shape: Polygon) -> bool:
    sides = sorted(_sides(shape))
    if len(sides) != 3 or abs(sides[0][0] - sides[1][0]) > CLOSE:
        return False
    base, height = sides[2][0], 2 * shape.area / sides[2][0]
    angle = round(math.degrees(math.atan2(height, base / 2)))
    return line.measures == (eighths_up(height), eighths_up(base), Fraction(angle))


def _striped(_: CutLine, patch: Plan, __: Polygon) -> bool:
    return bool(patch["stripes"])


_FITS = {
    "square": _square,
    "rectangle": _rectangle,
    "once": _once,
    "twice": _twice,
    "slanted": _slanted,
    "pointed": _pointed,
    "set": _striped,
}


def shapes_of_units(plan: Plan) -> dict[str, BaseGeometry]:
    """Return the finished shape of every patch and of everything that is ever joined, by its name in the plan."""
    shapes: dict[str, BaseGeometry] = {patch["id"]: finished(patch) for patch in plan["patches"]}
    for join in (join for step in plan["steps"] for join in step["joins"]):
        shapes[join["makes"]] = unary_union([shapes[unit] for unit in join["units"]]).buffer(0)
    return shapes


def measures_of(shape: BaseGeometry, allowance: float) -> tuple[float, float]:
    """Return how wide and high a unit is from raw edge to raw edge."""
    width, height = _extent(shape)
    return width + 2 * allowance, height + 2 * allowance


def corner_angles(patch: Plan) -> list[float]:
    """Return the angles at the corners of a patch with straight sides, in degrees."""
    corners = patch["outline"]
    ways = [math.atan2(b[1] - a[1], b[0] - a[0]) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    return [
        180 - abs(math.degrees(math.remainder(b - a, math.tau))) for a, b in zip(ways, ways[1:] + ways[:1], strict=True)
    ]


def most_crossed(shape: BaseGeometry, joins: list[Plan], lines: int = 97) -> float:
    """Return how many seams a line across a unit crosses at most, each as far as its normal lies along the line."""
    pieces = [(start, end) for join in joins for start, end in zip(join["path"], join["path"][1:], strict=False)]
    west, south, east, north = shape.bounds
    level = [_crossed(pieces, 1, south + (north - south) * (k + 0.5) / lines) for k in range(lines)]
    upright = [_crossed(pieces, 0, west + (east - west) * (k + 0.5) / lines) for k in range(lines)]
    return max(*level, *upright)


def _crossed(pieces: list[tuple[list[float], list[float]]], axis: int, at: float) -> float:
    across = [
        abs(end[axis] - start[axis]) / math.dist(start, end)
        for start, end in pieces
        if min(start[axis], end[axis]) < at < max(start[axis], end[axis])
    ]
    return sum(across)
