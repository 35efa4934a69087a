"""Which corners are one junction, and which nearly are."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from blocklang.geometry.points import Point, distance, same_point
from blocklang.geometry.tolerance import NEAR_MISS, SAME_POINT

_CELL = 8 * SAME_POINT


@dataclass(slots=True)
class Corners:
    """A register of distinct corners; numbers go by first sight, one number to a cluster."""

    points: list[Point] = field(default_factory=list)
    _exact: dict[Point, int] = field(default_factory=dict)
    _cells: dict[tuple[int, int], list[int]] = field(default_factory=dict)

    def number(self, point: Point) -> int:
        """Return the number of the corner at a point, new if no known corner is the same junction."""
        known = self._exact.get(point)
        if known is None:
            known = self._exact[point] = self._find_or_add(point)
        return known

    def _find_or_add(self, point: Point) -> int:
        x, y = point.x // _CELL, point.y // _CELL
        for cell in ((x + i, y + j) for i in (-1, 0, 1) for j in (-1, 0, 1)):
            for number in self._cells.get(cell, ()):
                if same_point(self.points[number], point):
                    return number
        self.points.append(point)
        self._cells.setdefault((x, y), []).append(len(self.points) - 1)
        return len(self.points) - 1

    def near_misses(self) -> Iterator[tuple[int, int]]:
        """Yield pairs of corners too near to be a seam apart and too far to be one junction."""
        cells: dict[tuple[int, int], list[int]] = {}
        for number, point in enumerate(self.points):
            x, y = point.x // NEAR_MISS, point.y // NEAR_MISS
            for i in (-1, 0, 1):
                for j in (-1, 0, 1):
                    for other in cells.get((x + i, y + j), ()):
                        if distance(self.points[other], point) < NEAR_MISS:
                            yield other, number
            cells.setdefault((x, y), []).append(number)
