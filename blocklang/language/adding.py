"""Sew strips to the sides of what is drawn so far: logs, borders, rows of bars."""

from blocklang.language.arithmetic import length
from blocklang.language.drawing import DrawnPatch, Place, Shape, extents
from blocklang.language.outlines import SAME
from blocklang.language.quantities import Exact
from blocklang.language.scope import Scope
from blocklang.language.syntax import AddLine, Word
from blocklang.limits import MOST_PATCHES

Box = tuple[Exact, Exact, Exact, Exact]


def draw_added(scope: Scope, line: AddLine) -> None:
    """Put down the strips of a line in the order written, each as long as its side is by then."""
    width = length(scope, line.width)
    fabrics = [scope.draft.fabric(word) for word in line.fabrics]
    declared = scope.declare(line.name, "patch")
    known = tuple(name for name in fabrics if name is not None)
    if width is None or not declared or len(known) < len(fabrics) or not _can_be_added(scope, line, width):
        scope.broken = True
        return
    box: Box = extents(corner for patch in scope.drawing.patches for corner in patch.shape.corners)
    span = scope.draft.span(line.start, line.end)
    for number, side in enumerate(line.sides):
        strip, box = _grown(box, side.text, width)
        name = line.name.text
        fabric = known[number % len(known)]
        scope.add_patch(DrawnPatch(f"{name}.{number + 1}", name, fabric, Shape(strip), span), side[1:])


def _can_be_added(scope: Scope, line: AddLine, width: Exact) -> bool:
    draft = scope.draft
    odd = next((side for side in line.sides if side.text not in SIDES), None)
    if odd is not None:
        _not_a_side(scope, odd)
    elif not scope.drawing.patches:
        found = "Nothing is drawn above this line that a strip can be sewn to."
        draft.error("nothing-to-add-to", "There is nothing to sew this to", found, "", (line.start, line.end))
    elif width <= SAME:
        draft.error("no-area", "This is not a strip", "It would have no width.", "", line.width[-2:])
    elif len(line.sides) % len(line.fabrics):
        found = f"{len(line.sides)} strips cannot be shared out among {len(line.fabrics)} fabrics."
        advice = "Name one fabric for each side, or a few that repeat."
        at = (line.fabrics[0].start, line.sides[-1].end)
        draft.error("fabrics-and-sides", "Fabrics and sides do not go together", found, advice, at)
    elif len(line.sides) <= MOST_PATCHES and scope.has_room(len(line.sides), (line.start, line.end)):
        return True
    return False


def _not_a_side(scope: Scope, word: Word) -> None:
    found = f"`{word.text}` is not a side: the sides are n, e, s and w."
    scope.draft.error("not-a-side", "This side is not known", found, "", word[1:])


SIDES = frozenset("nesw")


def _grown(box: Box, side: str, width: Exact) -> tuple[tuple[Place, ...], Box]:
    """Return the corners of a strip along a side of a box, and the box with the strip."""
    left, low, right, high = box
    strip, grown = {
        "n": ((left, high, right, high + width), (left, low, right, high + width)),
        "e": ((right, low, right + width, high), (left, low, right + width, high)),
        "s": ((left, low - width, right, low), (left, low - width, right, high)),
        "w": ((left - width, low, left, high), (left - width, low, right, high)),
    }[side]
    x, y, far, top = strip
    return ((x, y), (far, y), (far, top), (x, top)), grown
