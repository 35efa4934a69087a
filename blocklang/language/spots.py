"""Work out where points lie."""

from collections.abc import Iterable
from math import hypot

from blocklang.language.arithmetic import angle, length, share
from blocklang.language.drawing import Place
from blocklang.language.quantities import Exact, direction, magnitude
from blocklang.language.scope import Scope
from blocklang.language.syntax import Expression, PointLine, Spot, Word
from blocklang.limits import LARGEST_LENGTH

#: Two points this close (in inches) do not say which way a line runs.
TOO_CLOSE = 1e-4


def draw_point(scope: Scope, line: PointLine) -> None:
    """Give a name to a place."""
    if not scope.declare(line.name, "point"):
        return
    place = locate(scope, line.spot)
    scope.points[line.name.text] = place
    if place is not None and scope.has_room(0, line.name[1:], points=1):
        scope.drawing.points[line.name.text] = place


def points(scope: Scope, words: Iterable[Word]) -> tuple[Place, ...] | None:
    """Return where several named points lie; None when one is not known."""
    places = [scope.point(word) for word in words]
    known = tuple(place for place in places if place is not None)
    return known if len(known) == len(places) else None


def locate(scope: Scope, spot: Spot) -> Place | None:
    """Return the place that a spot describes; None when a mistake has been reported."""
    named = points(scope, spot.points)
    if named is None:
        return None
    place = LOCATE[spot.verb](scope, spot, named)
    if place is not None and max(magnitude(place[0]), magnitude(place[1])) > LARGEST_LENGTH:
        found = f"It would lie more than {LARGEST_LENGTH:,} in from the lower left corner."
        scope.draft.error("length-too-large", "This point is too far away", found, "", spot[-2:])
        return None
    return place


def _at(scope: Scope, spot: Spot, _: tuple[Place, ...]) -> Place | None:
    x, y = length(scope, spot.amounts[0]), length(scope, spot.amounts[1])
    return None if x is None or y is None else (x, y)


def _point(_: Scope, __: Spot, named: tuple[Place, ...]) -> Place | None:
    return named[0]


def _from(scope: Scope, spot: Spot, named: tuple[Place, ...]) -> Place | None:
    step, way = length(scope, spot.amounts[0]), _way(scope, spot.amounts[1], named[0])
    if step is None or way is None:
        return None
    return named[0][0] + step * way[0], named[0][1] + step * way[1]


def _way(scope: Scope, toward: Expression, start: Place) -> tuple[Exact, Exact] | None:
    """Return a direction of length 1: toward a point when a point is named, else at an angle."""
    if isinstance(toward, Word) and not any(toward.text in outer.values for outer in scope.chain()):
        end = scope.point(toward)
        return None if end is None else _unit(scope, start, end, toward[1:])
    degrees = angle(scope, toward)
    return None if degrees is None else direction(degrees)


def _unit(scope: Scope, start: Place, end: Place, at: tuple[int, int]) -> tuple[Exact, Exact] | None:
    dx, dy = end[0] - start[0], end[1] - start[1]
    run = magnitude(dx + dy) if dx == 0 or dy == 0 else hypot(dx, dy)
    if run > TOO_CLOSE:
        return dx / run, dy / run
    found = "Both points lie in the same place, so there is no direction from one to the other."
    scope.draft.error("same-point", "There is no direction here", found, "", at)
    return None


def _along(scope: Scope, spot: Spot, named: tuple[Place, ...]) -> Place | None:
    step = length(scope, spot.amounts[0])
    way = _unit(scope, named[0], named[1], (spot.points[0].start, spot.points[1].end))
    if step is None or way is None:
        return None
    return named[0][0] + step * way[0], named[0][1] + step * way[1]


def _between(scope: Scope, spot: Spot, named: tuple[Place, ...]) -> Place | None:
    (px, py), (qx, qy) = named
    if not spot.amounts:
        return (px + qx) / 2, (py + qy) / 2
    part = share(scope, spot.amounts[0])
    return None if part is None else (px + (qx - px) * part, py + (qy - py) * part)


def _meeting(scope: Scope, spot: Spot, named: tuple[Place, ...]) -> Place | None:
    p, q, r, s = named
    place = meeting_place(p, q, r, s)
    if place is None:
        names = [word.text for word in spot.points]
        found = f"The line {names[0]} {names[1]} and the line {names[2]} {names[3]} run side by side and never meet."
        scope.draft.error("never-meet", "These lines never meet", found, "", spot[-2:])
    return place


def meeting_place(p: Place, q: Place, r: Place, s: Place) -> Place | None:
    """Return where the line through p and q meets the line through r and s; None when they are parallel."""
    ax, ay, bx, by = q[0] - p[0], q[1] - p[1], s[0] - r[0], s[1] - r[1]
    turn = ax * by - ay * bx
    if magnitude(turn) <= 1e-9 * float(hypot(ax, ay) * hypot(bx, by)):
        return None
    part = ((r[0] - p[0]) * by - (r[1] - p[1]) * bx) / turn
    return p[0] + ax * part, p[1] + ay * part


LOCATE = {"at": _at, "point": _point, "from": _from, "along": _along, "between": _between, "meeting": _meeting}
