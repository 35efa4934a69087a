"""Points on the lattice, and the way there from inches and back."""

import math
from fractions import Fraction
from typing import NamedTuple

from blocklang.geometry.tolerance import SAME_POINT, TICKS_PER_INCH

__all__ = [
    "TICKS_PER_INCH",
    "Point",
    "cross",
    "distance",
    "from_inches",
    "heading",
    "same_point",
    "to_inches",
]


class Point(NamedTuple):
    """A place in ticks: x to the right, y up, from the lower left corner of the block."""

    x: int
    y: int


def from_inches(x: float | Fraction, y: float | Fraction) -> Point:
    """Snap a place in inches to the lattice."""
    return Point(round(x * TICKS_PER_INCH), round(y * TICKS_PER_INCH))


def to_inches(point: Point) -> tuple[float, float]:
    """Return a lattice point in inches."""
    return point.x / TICKS_PER_INCH, point.y / TICKS_PER_INCH


def distance(a: Point, b: Point) -> float:
    """Return the straight distance between two points, in ticks."""
    return math.hypot(b.x - a.x, b.y - a.y)


def same_point(a: Point, b: Point) -> bool:
    """Tell whether two points are one junction."""
    return abs(a.x - b.x) <= SAME_POINT and abs(a.y - b.y) <= SAME_POINT


def cross(origin: Point, a: Point, b: Point) -> int:
    """Return twice the signed area of the triangle; positive when b lies to the left of origin to a."""
    return (a.x - origin.x) * (b.y - origin.y) - (a.y - origin.y) * (b.x - origin.x)


def heading(a: Point, b: Point) -> float:
    """Return the direction from a to b in radians, counterclockwise from the right."""
    return math.atan2(b.y - a.y, b.x - a.x)
