"""Sides and angles of a straight-sided patch, and when two of them count as equal."""

import math
from dataclasses import dataclass

from blocklang.geometry import TICKS_PER_INCH, Outline
from blocklang.geometry.congruence import SAME_LENGTH
from blocklang.geometry.tolerance import STRAIGHT_ANGLE

RIGHT = math.pi / 2


@dataclass(frozen=True, slots=True)
class Sides:
    """Side lengths in inches, and the inside angle where each side starts, in radians."""

    lengths: tuple[float, ...]
    angles: tuple[float, ...]

    @property
    def is_equilateral(self) -> bool:
        """Whether all sides are equal."""
        return all(same_length(side, self.lengths[0]) for side in self.lengths)

    @property
    def is_equiangular(self) -> bool:
        """Whether all corners are equal."""
        return all(same_angle(angle, self.angles[0]) for angle in self.angles)


def sides_of(outline: Outline, count: int) -> Sides | None:
    """Return the sides of an outline when it has so many of them, all straight."""
    edges = outline.edges
    if len(edges) != count or any(edge.arc for edge in edges):
        return None
    return Sides(tuple(edge.length() / TICKS_PER_INCH for edge in edges), outline.angles())


def same_length(a: float, b: float) -> bool:
    """Tell whether two lengths in inches are one."""
    return abs(a - b) * TICKS_PER_INCH <= SAME_LENGTH


def same_angle(a: float, b: float) -> bool:
    """Tell whether two angles are one; each end of both sides may be off by lattice noise."""
    return abs(a - b) <= 2 * STRAIGHT_ANGLE


def right_angle(sides: Sides) -> int | None:
    """Return the corner of a triangle that is a right angle."""
    return next((i for i, angle in enumerate(sides.angles) if same_angle(angle, RIGHT)), None)


def long_side_of_right_isosceles(outline: Outline) -> int | None:
    """Return the long side of a triangle with two equal legs at a right angle; None for anything else."""
    sides = sides_of(outline, 3)
    corner = right_angle(sides) if sides else None
    if sides is None or corner is None or not same_length(sides.lengths[corner], sides.lengths[corner - 1]):
        return None
    return (corner + 1) % 3
