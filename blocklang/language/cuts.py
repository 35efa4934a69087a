"""Cut a shape along lines, the way a folded paper is cut, and name the pieces."""

from collections.abc import Iterator
from itertools import pairwise
from math import hypot

from blocklang.language.drawing import DrawnPatch, Place, Shape
from blocklang.language.outlines import fabrics_of, trace
from blocklang.language.quantities import Exact
from blocklang.language.scope import Scope
from blocklang.language.spots import meeting_place, points
from blocklang.language.syntax import CutLine, Cutting, Piece
from blocklang.limits import MOST_CUTS, MOST_PATCHES

Ring = tuple[Place, ...]
#: A corner this close to a cut, in inches, lies on it.
ON_LINE = 1e-5


def draw_cutting(scope: Scope, cutting: Cutting) -> None:
    """Cut a shape and put down its pieces."""
    ring = _ring(scope, cutting)
    pieces = None if ring is None else _cut_all(scope, cutting, ring)
    if pieces is None:
        scope.broken = True
        return
    taken: dict[int, Piece] = {}
    for line in cutting.cuts:
        if isinstance(line, Piece):
            _name_pieces(scope, line, pieces, taken)
    if len(taken) < len(pieces) and not scope.broken:
        x, y = _middle(next(piece for index, piece in enumerate(pieces) if index not in taken))
        found = f"The cuts make {len(pieces)} pieces, and {len(taken)} of them {'has' if len(taken) == 1 else 'have'} a fabric."
        advice = f"Add a `piece` line for the one round {x:.3g}, {y:.3g} in (across, up)."
        at = (cutting.start, cutting.start + len("cut"))
        scope.draft.error("piece-without-fabric", "A piece has no fabric", found, advice, at)


def _ring(scope: Scope, cutting: Cutting) -> Ring | None:
    """Return the corners of the shape that is cut, counterclockwise."""
    if not cutting.steps:
        wide, high = scope.draft.width.value, scope.draft.height.value
        zero = 0 * wide
        return ((zero, zero), (wide, zero), (wide, high), (zero, high))
    shape = trace(scope, cutting.steps, "shape")
    if shape is None:
        return None
    area = _area(shape.corners)
    ring = shape.corners if area > 0 else shape.corners[::-1]
    if shape.bends or not _is_convex(ring):
        found = "It has an arc, or a corner that points inward."
        advice = "Cut a straight-sided shape without inward corners, or draw the pieces as patches."
        at = (cutting.steps[0].start, cutting.steps[-1].end)
        scope.draft.error("cannot-cut", "This shape cannot be cut", found, advice, at)
        return None
    return ring


def _cut_all(scope: Scope, cutting: Cutting, ring: Ring) -> list[Ring] | None:
    lines = [(line, *ends) for line in cutting.cuts if isinstance(line, CutLine) for ends in _ends(scope, line)]
    if len(lines) > MOST_CUTS:
        found = f"A shape is cut along at most {MOST_CUTS} lines."
        scope.draft.error("too-many-cuts", "There are too many cuts", found, "", lines[MOST_CUTS][0][-2:])
        return None
    pieces = [ring]
    for line, p, q in lines:
        cut = None if p is None or q is None else _cut_once(scope, line, pieces, p, q)
        if cut is None or len(cut) > MOST_PATCHES:
            return None
        pieces = cut
    return pieces


def _ends(scope: Scope, line: CutLine) -> Iterator[tuple[Place | None, Place | None]]:
    """Return where each cut of a line starts and ends."""
    if len(line.points) < 2:
        found = "A cut runs from one point to another, and this line names one."
        scope.draft.error("one-point", "This cut has no direction", found, "Write it like `along nw se`.", line[-2:])
    return pairwise([scope.point(word) for word in line.points] if len(line.points) > 1 else [None, None])


def _cut_once(scope: Scope, line: CutLine, pieces: list[Ring], p: Place, q: Place) -> list[Ring] | None:
    if hypot(q[0] - p[0], q[1] - p[1]) <= ON_LINE:
        found = "Both points lie in the same place, so there is no line to cut along."
        scope.draft.error("same-point", "There is no direction here", found, "", line[-2:])
        return None
    made: list[Ring] = []
    for piece in pieces:
        halves = _halves(piece, p, q)
        reach = "whole" if line.whole or len(halves) < 2 else _reach(halves[0], p, q)
        if reach == "part":
            found = "It ends inside a piece, and scissors would not free anything."
            advice = "Let the cut run to an edge of the piece, or to an earlier cut."
            scope.draft.error("cut-stops-short", "This cut stops inside a piece", found, advice, line[-2:])
            return None
        made += halves if reach == "whole" else [piece]
    if len(made) == len(pieces):
        found = "It lies along an edge or outside, so it cuts nothing."
        scope.draft.error("cuts-nothing", "This cut does nothing", found, "Take it out.", line[-2:])
        return None
    return made


def _halves(piece: Ring, p: Place, q: Place) -> list[Ring]:
    """Return the parts of a piece left and right of a line; one part when the line does not go through."""
    sides = [_side(p, q, corner) for corner in piece]
    if not any(side > 0 for side in sides) or not any(side < 0 for side in sides):
        return [piece]
    left: list[Place] = []
    right: list[Place] = []
    for index, corner in enumerate(piece):
        before, side = sides[index - 1], sides[index]
        if before * side < 0:
            crossing = meeting_place(piece[index - 1], corner, p, q)
            assert crossing is not None, "a line that has corners on both sides is not parallel to the edge between"
            left.append(crossing)
            right.append(crossing)
        if side >= 0:
            left.append(corner)
        if side <= 0:
            right.append(corner)
    return [tuple(left), tuple(right)]


def _side(p: Place, q: Place, corner: Place) -> int:
    dx, dy = q[0] - p[0], q[1] - p[1]
    off = float(dx * (corner[1] - p[1]) - dy * (corner[0] - p[0])) / hypot(dx, dy)
    return 0 if abs(off) <= ON_LINE else 1 if off > 0 else -1


def _reach(half: Ring, p: Place, q: Place) -> str:
    """Say how much of a piece's width a cut from p to q runs through: whole, none or part."""
    dx, dy = q[0] - p[0], q[1] - p[1]
    run = float(hypot(dx, dy))
    on_line = [corner for corner in half if _side(p, q, corner) == 0]
    along = sorted(float(dx * (x - p[0]) + dy * (y - p[1])) / run for x, y in on_line)
    start, end = along[0], along[-1]
    if start >= -ON_LINE and end <= run + ON_LINE:
        return "whole"
    return "none" if end <= ON_LINE or start >= run - ON_LINE else "part"


def _name_pieces(scope: Scope, line: Piece, pieces: list[Ring], taken: dict[int, Piece]) -> None:
    fabrics, places = fabrics_of(scope, line.material), points(scope, line.at)
    if not scope.declare(line.name, "patch") or fabrics is None or places is None:
        scope.broken = True
        return
    along = points(scope, line.material.along)
    if along is None:
        scope.broken = True
        return
    for number, place in enumerate(places, 1):
        word = line.at[number - 1]
        index = _picked(pieces, place)
        if index is None or index in taken:
            found = f"`{word.text}` lies on a cut or outside the shape."
            if index is not None:
                found = f"The piece round `{word.text}` is named `{taken[index].name.text}` already."
            advice = "Name a point inside the piece, or a corner that only this piece has."
            scope.draft.error("no-piece-here", "This point does not pick a piece", found, advice, word[1:])
            scope.broken = True
            return
        taken[index] = line
        name = line.name.text if len(places) == 1 else f"{line.name.text}.{number}"
        span = scope.draft.span(line.start, line.end)
        stripes = fabrics if along else ()
        patch = DrawnPatch(name, line.name.text, fabrics[0], Shape(pieces[index]), span, stripes, along)
        scope.add_patch(patch, word[1:])


def _picked(pieces: list[Ring], place: Place) -> int | None:
    """Return the one piece that holds a place or has it on its edge."""
    found = [index for index, piece in enumerate(pieces) if _holds(piece, place)]
    return found[0] if len(found) == 1 else None


def _holds(piece: Ring, place: Place) -> bool:
    return all(_side(piece[index - 1], corner, place) >= 0 for index, corner in enumerate(piece))


def _area(ring: Ring) -> Exact:
    return sum((ring[i - 1][0] * y - x * ring[i - 1][1] for i, (x, y) in enumerate(ring)), 0 * ring[0][0])


def _is_convex(ring: Ring) -> bool:
    return all(_side(ring[i - 2], ring[i - 1], ring[i]) >= 0 for i in range(len(ring)))


def _middle(ring: Ring) -> tuple[float, float]:
    return float(sum(x for x, _ in ring)) / len(ring), float(sum(y for _, y in ring)) / len(ring)
