"""The rectangle that some patches fill together, if they fill one."""

from collections.abc import Iterable, Iterator, Sequence

from blocklang.cutting.sides import sides_of
from blocklang.geometry import Outline, Point
from blocklang.geometry.points import cross
from blocklang.geometry.tolerance import SAME_POINT


def rectangle_of(outlines: Sequence[Outline]) -> Outline | None:
    """Return the rectangle that outlines fill together, however turned; None when they do not."""
    hull = Outline.through(_hull(edge.start for outline in outlines for edge in outline.edges))
    sides = sides_of(hull, 4)
    gap = hull.area() - sum(outline.area() for outline in outlines)
    if sides is None or not sides.is_equiangular or abs(gap) > SAME_POINT * hull.perimeter():
        return None
    return hull


def _hull(corners: Iterable[Point]) -> list[Point]:
    """Return the corners of the convex hull, counterclockwise; those in line by rounding are left out."""
    ordered = sorted(set(corners), key=lambda p: (p.x, p.y))
    return [*_chain(ordered), *_chain(ordered[::-1])]


def _chain(ordered: Sequence[Point]) -> Iterator[Point]:
    chain: list[Point] = []
    for point in ordered:
        while len(chain) > 1 and _turns_right_or_not(chain[-2], chain[-1], point):
            chain.pop()
        chain.append(point)
    return iter(chain[:-1])


def _turns_right_or_not(a: Point, b: Point, c: Point) -> bool:
    """Tell whether b lies no further than a whisker outside of the line from a to c."""
    away = abs(c.x - a.x) + abs(c.y - a.y)
    return cross(a, b, c) <= SAME_POINT * away
