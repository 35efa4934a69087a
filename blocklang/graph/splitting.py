"""Breaking every edge wherever another patch has a corner on it."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import pairwise

from blocklang.geometry import Edge, Point
from blocklang.geometry.tolerance import SAME_POINT


@dataclass(frozen=True, slots=True)
class CornerIndex:
    """Corners by square cells, so that an edge looks only at corners near it."""

    points: tuple[Point, ...]
    cell: int
    cells: dict[tuple[int, int], tuple[int, ...]]

    def along(self, edge: Edge) -> Iterator[int]:
        """Yield the corners in the cells that an edge passes, each once."""
        seen: set[tuple[int, int]] = set()
        shift = self.cell // 3
        for a, b in pairwise([Point(x + shift, y + shift) for x, y in edge.chords()]):
            for cell in _cells_passed(a, b, self.cell):
                if cell not in seen:
                    seen.add(cell)
                    yield from self.cells.get(cell, ())


def index_corners(points: Iterable[Point], edges: Iterable[Edge]) -> CornerIndex:
    """Index corners with a cell about as long as a usual edge, or as two corners lie apart where edges are long."""
    corners = tuple(points)
    lengths = sorted(edge.length() for edge in edges)
    cell = max(int(min(lengths[len(lengths) // 2], _apart(corners))), 64 * SAME_POINT) if lengths else 1
    shift = cell // 3  # corners of a regular block lie well inside cells, not on their borders
    cells: dict[tuple[int, int], list[int]] = {}
    for number, point in enumerate(corners):
        cells.setdefault(((point.x + shift) // cell, (point.y + shift) // cell), []).append(number)
    return CornerIndex(corners, cell, {key: tuple(numbers) for key, numbers in cells.items()})


def _apart(corners: tuple[Point, ...]) -> float:
    """Return how far apart corners would lie if they were spread evenly."""
    width, height = (max(sides) - min(sides) for sides in zip(*corners, strict=True))
    return math.sqrt(max(width, 1) * max(height, 1) / len(corners))


def corners_on(edge: Edge, index: CornerIndex) -> tuple[int, ...]:
    """Return the corners strictly inside an edge, in order along it."""
    slack = 1.5 * SAME_POINT / max(edge.length(), 1.0)
    found = []
    reach = _reach(edge)
    for number in index.along(edge):
        if not _within(index.points[number], reach):
            continue
        along, off = edge.offset_of(index.points[number])
        if abs(off) <= SAME_POINT and slack < along < 1 - slack:
            found.append((along, number))
    return tuple(number for _, number in sorted(found))


def _reach(edge: Edge) -> tuple[int, int, int, int] | None:
    """Return the box round a straight edge; None for an arc, which bulges."""
    if edge.arc is not None:
        return None
    (ax, ay), (bx, by) = edge.start, edge.end
    low_x, high_x = (ax, bx) if ax < bx else (bx, ax)
    low_y, high_y = (ay, by) if ay < by else (by, ay)
    return low_x - SAME_POINT, low_y - SAME_POINT, high_x + SAME_POINT, high_y + SAME_POINT


def _within(point: Point, box: tuple[int, int, int, int] | None) -> bool:
    return box is None or (box[0] <= point[0] <= box[2] and box[1] <= point[1] <= box[3])


def _cells_passed(a: Point, b: Point, cell: int) -> Iterator[tuple[int, int]]:
    """Yield every cell that comes within reach of the line from a to b, some more than once."""
    (ax, ay), (bx, by) = (a, b) if a.x <= b.x else (b, a)
    first, last = (ax - SAME_POINT) // cell, (bx + SAME_POINT) // cell
    for column in range(first, last + 1):
        left, right = max(ax, column * cell - SAME_POINT), min(bx, (column + 1) * cell + SAME_POINT)
        if bx == ax:
            low, high = (ay, by) if ay < by else (by, ay)
        else:
            start = ay + (by - ay) * (left - ax) // (bx - ax)
            end = ay + (by - ay) * (right - ax) // (bx - ax)
            low, high = (start, end) if start < end else (end, start)
        for row in range((low - 2 * SAME_POINT) // cell, (high + 2 * SAME_POINT) // cell + 1):
            yield column, row
