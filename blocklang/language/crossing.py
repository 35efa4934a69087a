"""Find out whether an outline crosses or touches itself."""

from blocklang.geometry import Outline, Point, to_inches
from blocklang.geometry.points import cross
from blocklang.geometry.tolerance import CHORD_ERROR


def crossing(outline: Outline) -> tuple[float, float] | None:
    """Return about where (in inches) two edges meet that are not neighbours; None when none do."""
    curved = any(edge.arc is not None for edge in outline.edges)
    ring = _broken_line(outline) if curved else outline.corners
    if _is_convex(ring):
        return None
    count = len(ring)
    sides = [(ring[index], ring[(index + 1) % count], index) for index in range(count)]
    sides.sort(key=lambda side: min(side[0].x, side[1].x))
    for place, (a, b, i) in enumerate(sides):
        most = max(a.x, b.x)
        for c, d, j in sides[place + 1 :]:
            if min(c.x, d.x) > most:
                break
            if abs(i - j) in (1, count - 1):
                if _folds_back(a, b, c, d):
                    return to_inches(b if b in (c, d) else a)
            elif _meet(a, b, c, d):
                return to_inches(_meeting_point(a, b, c, d))
    return None


def _broken_line(outline: Outline) -> tuple[Point, ...]:
    """Return the outline as a coarse broken line, which is near enough to see a crossing."""
    return tuple(point for edge in outline.edges for point in edge.chords(8 * CHORD_ERROR)[:-1])


def _is_convex(ring: tuple[Point, ...]) -> bool:
    """Say whether a ring turns the same way at every corner, and once round in all."""
    turns = [cross(ring[i - 2], ring[i - 1], ring[i]) for i in range(len(ring))]
    if not (all(turn > 0 for turn in turns) or all(turn < 0 for turn in turns)):
        return False
    ups = [ring[i].y > ring[i - 1].y for i in range(len(ring))]
    return sum(ups[i] != ups[i - 1] for i in range(len(ups))) == 2


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    if max(a.y, b.y) < min(c.y, d.y) or max(c.y, d.y) < min(a.y, b.y):
        return False
    first, second, third, fourth = cross(a, b, c), cross(a, b, d), cross(c, d, a), cross(c, d, b)
    return not (first > 0 < second or first < 0 > second or third > 0 < fourth or third < 0 > fourth)


def _meeting_point(a: Point, b: Point, c: Point, d: Point) -> Point:
    turn = (b.x - a.x) * (d.y - c.y) - (b.y - a.y) * (d.x - c.x)
    if turn == 0:
        return c
    part = ((c.x - a.x) * (d.y - c.y) - (c.y - a.y) * (d.x - c.x)) / turn
    return Point(round(a.x + (b.x - a.x) * part), round(a.y + (b.y - a.y) * part))


def _folds_back(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Say whether two neighbouring edges lie on each other."""
    shared, start, end = (b, a, d) if b == c else (a, b, c)
    if cross(start, shared, end):
        return False
    return (start.x - shared.x) * (end.x - shared.x) + (start.y - shared.y) * (end.y - shared.y) > 0
