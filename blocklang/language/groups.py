"""Draw the lines of a file in order, and repeat groups by turning and mirroring."""

from collections.abc import Callable
from fractions import Fraction
from math import hypot
from typing import NamedTuple

from blocklang.language.arithmetic import angle, whole_number, work_out
from blocklang.language.drawing import STILL, Motion, copied, flipping, numbered, turning
from blocklang.language.scope import Scope
from blocklang.language.spots import TOO_CLOSE, draw_point, points
from blocklang.language.syntax import (
    AddLine,
    Cutting,
    Heading,
    Item,
    LetLine,
    Mirror,
    OutlineLine,
    PatchLine,
    PlaceLine,
    PointLine,
    RectangleLine,
    Rows,
    Turn,
    WishLine,
)
from blocklang.limits import MOST_TURNS


class Repeats(NamedTuple):
    """How many members a group has, and how the first is moved to each other one, worked out when it is asked for."""

    members: int
    motion: Callable[[int], Motion]


def draw_items(scope: Scope, items: tuple[Item, ...]) -> None:
    """Draw all lines, and then note the wishes, which may be about anything drawn."""
    for item in items:
        if not isinstance(item, WishLine):
            _draw(scope, item)
    wishes = [item for item in items if isinstance(item, WishLine)]
    if wishes:
        from blocklang.language.wishes import draw_wish

        for wish in wishes:
            draw_wish(scope, wish)


def _draw(scope: Scope, item: Item) -> None:  # noqa: C901 - one branch for each kind of line
    if isinstance(item, PointLine):
        draw_point(scope, item)
    elif isinstance(item, LetLine):
        if scope.declare(item.name, "value"):
            scope.values[item.name.text] = work_out(scope, item.value)
    elif isinstance(item, PatchLine):
        from blocklang.language.outlines import draw_patch

        draw_patch(scope, item)
    elif isinstance(item, RectangleLine):
        from blocklang.language.outlines import draw_rectangle

        draw_rectangle(scope, item)
    elif isinstance(item, Rows):
        from blocklang.language.grid import draw_rows

        draw_rows(scope, item)
    elif isinstance(item, Cutting):
        from blocklang.language.cuts import draw_cutting

        draw_cutting(scope, item)
    elif isinstance(item, AddLine):
        from blocklang.language.adding import draw_added

        draw_added(scope, item)
    elif isinstance(item, PlaceLine):
        from blocklang.language.placing import draw_place

        draw_place(scope, item)
    elif isinstance(item, Turn | Mirror):
        _repeat(scope, item)
    elif scope.parent is not None:
        _misplaced(scope, item)


def _misplaced(scope: Scope, item: Item) -> None:
    """Say that a heading stands in a group."""
    line = item[0] if isinstance(item[0], Heading) else item
    start, end = line.start, line.end
    word = scope.draft.source.text[start:end].split()[0]
    what = "outline" if isinstance(line, OutlineLine) else word
    found = f"A `{what}` line is about the whole block, and this one stands in a group."
    scope.draft.error("misplaced-line", "This line stands in a group", found, "Move it out of the group.", (start, end))


def _repeat(scope: Scope, group: Turn | Mirror) -> None:
    """Draw a group once and put down its members, numbered from 1."""
    repeats = _turns(scope, group) if isinstance(group, Turn) else _mirror(scope, group)
    inner = Scope(scope.draft, scope)
    draw_items(inner, group.items)
    at = (group.start, group.start + len("turn" if isinstance(group, Turn) else "mirror"))
    drawn = inner.drawing
    if repeats is None or inner.broken:
        scope.broken = True
        return
    if not drawn.patches and not drawn.points:
        scope.draft.error("empty-group", "This group is empty", "It holds no patch and no point.", "Take it out.", at)
        return
    count = repeats.members
    if not scope.has_room(count * len(drawn.patches), at, count * len(drawn.points), count * len(drawn.wishes)):
        return
    for number in range(1, count + 1):
        motion = repeats.motion(number - 1) if number > 1 else STILL
        scope.absorb(copied(drawn, motion, _numbering(number)), at)
        for name, place in inner.points.items():
            if place is None:  # reported where it was drawn, so that nothing needs to be said where it is used
                scope.points[numbered(name, number)] = None
        for name, patches in inner.units.items():
            scope.units[numbered(name, number)] = tuple(
                numbered(patch, number) if patch in inner.patch_ids else patch for patch in patches
            )


def _numbering(number: int) -> Callable[[str], str]:
    return lambda name: numbered(name, number)


def _turns(scope: Scope, turn: Turn) -> Repeats | None:
    count = whole_number(scope, turn.times, 2, MOST_TURNS, "A group is repeated")
    about = scope.point(turn.about)
    step = angle(scope, turn.by) if turn.by is not None else Fraction(360, count or 1)
    if count is None or about is None or step is None:
        return None
    if step % 360 == 0:
        found = "A turn by nothing lays every member on the first."
        scope.draft.error("no-turn", "This group does not turn", found, "", turn.by[-2:] if turn.by else turn.times[1:])
        return None
    return Repeats(count, lambda number: turning(about, step * number))


def _mirror(scope: Scope, mirror: Mirror) -> Repeats | None:
    ends = points(scope, mirror.across)
    if ends is None:
        return None
    p, q = ends
    if hypot(q[0] - p[0], q[1] - p[1]) <= TOO_CLOSE:
        found = "Both points lie in the same place, so there is no line to mirror across."
        at = (mirror.across[0].start, mirror.across[1].end)
        scope.draft.error("same-point", "There is no direction here", found, "", at)
        return None
    return Repeats(2, lambda _: flipping(p, q))
