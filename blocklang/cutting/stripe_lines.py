"""The seams between the stripes of a striped patch, as lines across its cut outline."""

import math
from collections.abc import Iterator

from blocklang.block import Stripes
from blocklang.geometry import Outline, Point

Line = tuple[Point, Point]


def stripe_lines(finished: Outline, cut: Outline, stripes: Stripes) -> tuple[Line, ...]:
    """Return the seams between equal stripes, from cut edge to cut edge, in ticks; first the one next to the first."""
    away = [_away(stripes, point) for point in finished.chords()]
    far = max(away, key=abs)
    count = len(stripes.fabrics)
    return tuple(line for place in range(1, count) for line in _across(cut, stripes, far * place / count))


def _across(cut: Outline, stripes: Stripes, off: float) -> Iterator[Line]:
    """Yield the parts of a line beside the first edge of the stripes that lie within an outline."""
    ring = cut.chords()
    crossings = []
    for a, b in zip(ring, ring[1:] + ring[:1], strict=True):
        here, there = _away(stripes, a) - off, _away(stripes, b) - off
        if (here > 0) != (there > 0):
            share = here / (here - there)
            crossings.append(Point(round(a.x + (b.x - a.x) * share), round(a.y + (b.y - a.y) * share)))
    ux, uy = stripes.end.x - stripes.start.x, stripes.end.y - stripes.start.y
    crossings.sort(key=lambda p: p.x * ux + p.y * uy)
    yield from zip(crossings[::2], crossings[1::2], strict=True)


def _away(stripes: Stripes, point: Point) -> float:
    (ax, ay), (bx, by) = stripes.start, stripes.end
    return ((bx - ax) * (point.y - ay) - (by - ay) * (point.x - ax)) / (math.hypot(bx - ax, by - ay) or 1.0)
