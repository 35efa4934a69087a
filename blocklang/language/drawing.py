"""What has been drawn so far, in inches and before it is snapped to the lattice, and how it is moved and repeated."""

from collections.abc import Callable, Iterable
from fractions import Fraction
from typing import NamedTuple

from blocklang.diagnostics import Span
from blocklang.language.quantities import Exact, direction

Place = tuple[Exact, Exact]


class Bend(NamedTuple):
    """How the edge that leaves a corner curves."""

    centre: Place
    clockwise: bool


class Shape(NamedTuple):
    """A closed outline; `bends` is empty when every edge is straight, else it has one entry for each corner."""

    corners: tuple[Place, ...]
    bends: tuple[Bend | None, ...] = ()


class DrawnPatch(NamedTuple):
    """A patch as drawn; `stripes` holds the fabrics of a strip set, `along` where its first stripe lies."""

    id: str
    name: str
    fabric: str
    shape: Shape
    span: Span
    stripes: tuple[str, ...] = ()
    along: tuple[Place, ...] = ()
    group: tuple[str, ...] = ()


class DrawnWish(NamedTuple):
    """What the author wants of the sewing, with patch ids and places: `word` is a name, a sense or a direction."""

    verb: str
    patches: tuple[str, ...]
    at: Place | None
    word: str
    span: Span


class Drawing:
    """Patches, named points and wishes, in the order in which they were drawn."""

    __slots__ = ("patches", "points", "wishes")

    def __init__(
        self,
        patches: list[DrawnPatch] | None = None,
        points: dict[str, Place] | None = None,
        wishes: list[DrawnWish] | None = None,
    ) -> None:
        """Begin with what is drawn already, or with nothing."""
        self.patches = patches or []
        self.points = points or {}
        self.wishes = wishes or []


class Motion(NamedTuple):
    """A turn, flip, scale and shift: x' = a x + b y + e, y' = c x + d y + f."""

    a: Exact
    b: Exact
    c: Exact
    d: Exact
    e: Exact = Fraction(0)
    f: Exact = Fraction(0)

    def place(self, place: Place) -> Place:
        """Move a place."""
        x, y = place
        return self.a * x + self.b * y + self.e, self.c * x + self.d * y + self.f

    @property
    def flips(self) -> bool:
        """Whether left and right change sides."""
        return self.a * self.d < self.b * self.c


def turning(about: Place, degrees: Exact) -> Motion:
    """Return the turn round a place, counterclockwise."""
    cosine, sine = direction(degrees)
    return _about(about, cosine, -sine, sine, cosine)


def flipping(p: Place, q: Place) -> Motion:
    """Return the mirror image across the line through two places."""
    dx, dy = q[0] - p[0], q[1] - p[1]
    length = dx * dx + dy * dy
    cosine, sine = (dx * dx - dy * dy) / length, 2 * dx * dy / length
    return _about(p, cosine, sine, sine, -cosine)


def _about(o: Place, a: Exact, b: Exact, c: Exact, d: Exact) -> Motion:
    return Motion(a, b, c, d, o[0] - a * o[0] - b * o[1], o[1] - c * o[0] - d * o[1])


STILL = Motion(Fraction(1), Fraction(0), Fraction(0), Fraction(1))


def copied(drawing: Drawing, motion: Motion, rename: Callable[[str], str]) -> Drawing:
    """Return a moved copy under new names; names that are not the drawing's own (in wishes) stay as they are."""
    moved: dict[int, Place] = {}

    def move(place: Place) -> Place:
        if motion is STILL:
            return place
        found = moved.get(id(place))  # cells share their corners, and the originals outlive this table
        if found is None:
            found = moved[id(place)] = motion.place(place)
        return found

    own = {patch.id: rename(patch.id) for patch in drawing.patches}
    patches = [_moved_patch(patch, motion, move, own[patch.id], rename) for patch in drawing.patches]
    wishes = [_moved_wish(wish, motion, move, own, rename) for wish in drawing.wishes]
    return Drawing(patches, {rename(name): move(place) for name, place in drawing.points.items()}, wishes)


Move = Callable[[Place], Place]


def _moved_patch(
    patch: DrawnPatch, motion: Motion, move: Move, new_id: str, rename: Callable[[str], str]
) -> DrawnPatch:
    return DrawnPatch(
        new_id,
        patch.name,
        patch.fabric,
        moved_shape(patch.shape, motion, move),
        patch.span,
        patch.stripes,
        tuple(map(move, patch.along)),
        (rename(patch.group[0]), *patch.group[1:]) if patch.group else (),
    )


def moved_shape(shape: Shape, motion: Motion, move: Move) -> Shape:
    """Move an outline."""
    bends = tuple(bend and Bend(move(bend.centre), bend.clockwise ^ motion.flips) for bend in shape.bends)
    return Shape(tuple(map(move, shape.corners)), bends)


OPPOSITE = {"clockwise": "counterclockwise", "counterclockwise": "clockwise"}


def _moved_wish(
    wish: DrawnWish, motion: Motion, move: Move, own: dict[str, str], rename: Callable[[str], str]
) -> DrawnWish:
    word = wish.word
    if wish.verb == "first":
        word = rename(word)
    elif wish.verb == "spin" and motion.flips:
        word = OPPOSITE.get(word, word)
    patches = tuple(own.get(patch, patch) for patch in wish.patches)
    return DrawnWish(wish.verb, patches, None if wish.at is None else move(wish.at), word, wish.span)


def numbered(name: str, number: int) -> str:
    """Return the name of a group's member: `m` becomes `m.3`, and `m.1` of an inner group becomes `m.3.1`."""
    base, dot, rest = name.partition(".")
    return f"{base}.{number}{dot}{rest}"


def extents(places: Iterable[Place]) -> tuple[Exact, Exact, Exact, Exact]:
    """Return the least x, least y, greatest x and greatest y."""
    points = list(places)
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)
