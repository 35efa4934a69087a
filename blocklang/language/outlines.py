"""Outlines through points, and what can be wrong with one."""

from fractions import Fraction
from math import hypot

from blocklang.geometry.points import TICKS_PER_INCH
from blocklang.geometry.tolerance import SAME_POINT
from blocklang.language.arithmetic import length, whole_number
from blocklang.language.crossing import crossing
from blocklang.language.drawing import STILL, Bend, DrawnPatch, Place, Shape, moved_shape, turning
from blocklang.language.quantities import magnitude
from blocklang.language.scope import Scope
from blocklang.language.snapping import snapped_outline
from blocklang.language.spots import locate
from blocklang.language.syntax import Material, PatchLine, RectangleLine, Rounds, Step
from blocklang.limits import MOST_CORNERS, MOST_FABRICS, MOST_WRITTEN_CORNERS

#: Corners closer than this, in inches, are one corner.
SAME = SAME_POINT / TICKS_PER_INCH


def draw_patch(scope: Scope, line: PatchLine) -> None:
    """Put a patch through points."""
    shape = trace(scope, line.steps, f"patch `{line.name.text}`", line.rounds)
    fabrics = fabrics_of(scope, line.material)
    declared = scope.declare(line.name, "patch")
    along = _first_stripe(scope, line.material, shape)
    if shape is None or fabrics is None or along is None or not declared:
        scope.broken = True
        return
    name, span = line.name.text, scope.draft.span(line.start, line.end)
    stripes = fabrics if line.material.along else ()
    scope.add_patch(DrawnPatch(name, name, fabrics[0], shape, span, stripes, along), line.name[1:])


def draw_rectangle(scope: Scope, line: RectangleLine) -> None:
    """Put down a square or a rectangle."""
    spot, width = locate(scope, line.spot), length(scope, line.width)
    height = width if line.height is None else length(scope, line.height)
    declared, fabrics = scope.declare(line.name, "patch"), fabrics_of(scope, line.material)
    if spot is None or width is None or height is None or not declared or fabrics is None:
        scope.broken = True
        return
    if width <= SAME or height <= SAME:
        found = f"It would be {float(width):.4g} in by {float(height):.4g} in."
        scope.draft.error("no-area", "This is not a shape", found, "", (line.width.start, line[-1]))
        return
    (x, y), span = spot, scope.draft.span(line.start, line.end)
    shape = Shape(((x, y), (x + width, y), (x + width, y + height), (x, y + height)))
    along, name = _first_stripe(scope, line.material, shape), line.name.text
    if along is not None:
        scope.add_patch(DrawnPatch(name, name, fabrics[0], shape, span, fabrics if along else (), along), line.name[1:])


def fabrics_of(scope: Scope, material: Material) -> tuple[str, ...] | None:
    """Return the fabric ids of a material."""
    if len(material.fabrics) > MOST_FABRICS:
        found = f"A patch has at most {MOST_FABRICS} stripes."
        scope.draft.error("too-many-stripes", "There are too many stripes", found, "", material[-2:])
        return None
    ids = [scope.draft.fabric(word) for word in material.fabrics]
    known = tuple(name for name in ids if name is not None)
    return known if len(known) == len(ids) else None


def _first_stripe(scope: Scope, material: Material, shape: Shape | None) -> tuple[Place, ...] | None:
    """Return the edge that the first stripe lies along; nothing for a plain patch."""
    if not material.along:
        return ()
    ends = [scope.point(word) for word in material.along]
    start, end = ends
    if start is None or end is None or shape is None:
        return None
    if len(material.fabrics) < 2:
        found = "Stripes need two fabrics or more, and only one is named."
        advice = f"Write `of {material.fabrics[0].text}` for a patch of one fabric."
        scope.draft.error("one-stripe", "These are not stripes", found, advice, material[-2:])
        return None
    corners = shape.corners
    for index, corner in enumerate(corners):
        straight = not shape.bends or shape.bends[index] is None
        pair = corner, corners[(index + 1) % len(corners)]
        if straight and (_same(pair, (start, end)) or _same(pair, (end, start))):
            return start, end
    names = " ".join(word.text for word in material.along)
    found = f"`{names}` is not a straight edge of this patch."
    advice = "Name two neighbouring corners: the first stripe lies along the edge between them."
    at = (material.along[0].start, material.along[1].end)
    scope.draft.error("stripe-edge", "The stripes have no edge to lie along", found, advice, at)
    return None


def _same(a: tuple[Place, Place], b: tuple[Place, Place]) -> bool:
    return all(_near(p, q) for p, q in zip(a, b, strict=True))


def _near(p: Place, q: Place) -> bool:
    return magnitude(p[0] - q[0]) <= SAME and magnitude(p[1] - q[1]) <= SAME


def trace(scope: Scope, steps: tuple[Step, ...], what: str, rounds: Rounds | None = None) -> Shape | None:
    """Return the closed outline through steps, or through their turned copies; None when a mistake was reported."""
    times = 1 if rounds is None else whole_number(scope, rounds.times, 2, MOST_CORNERS, "Steps are repeated")
    if times is None or not _has_few_corners(scope, steps, times):
        return None
    places = [scope.point(step.to) for step in steps]
    corners = tuple(place for place in places if place is not None)
    if len(corners) < len(places):
        return None
    shape = _repeated(scope, steps, corners, rounds, times) if rounds else _with_bends(scope, steps, corners)
    if shape is None or not _is_outline(scope, steps, shape, what):
        return None
    return shape


def _has_few_corners(scope: Scope, steps: tuple[Step, ...], times: int) -> bool:
    count = len(steps) * times
    scope.draft.written_corners += count
    if count <= MOST_CORNERS and scope.draft.written_corners <= MOST_WRITTEN_CORNERS:
        return True
    most = MOST_CORNERS if count > MOST_CORNERS else MOST_WRITTEN_CORNERS
    found = f"{'An outline' if most == MOST_CORNERS else 'A file'} has at most {most:,} corners."
    at = (steps[0].start, steps[-1].end)
    scope.draft.error("too-many-corners", "There are too many corners", found, "", at)
    return False


def _repeated(
    scope: Scope, steps: tuple[Step, ...], corners: tuple[Place, ...], rounds: Rounds, times: int
) -> Shape | None:
    """Go on with the same steps turned about a point, all the way round."""
    about, bends = scope.point(rounds.about), _bends(scope, steps, corners)
    if about is None or bends is None:
        return None
    motions = [STILL if number == 0 else turning(about, Fraction(360, times) * number) for number in range(times)]
    shape = Shape(corners, (*bends, None))
    copies = [moved_shape(shape, motion, motion.place) for motion in motions]
    meets = _near(corners[-1], copies[1].corners[0])  # then the last corner of each copy is the first of the next
    kept = len(corners) - meets
    arcs = tuple(bend for copy in copies for bend in copy.bends[:kept])
    return Shape(tuple(corner for copy in copies for corner in copy.corners[:kept]), arcs if any(arcs) else ())


def _with_bends(scope: Scope, steps: tuple[Step, ...], corners: tuple[Place, ...]) -> Shape | None:
    """Work out the arcs. An outline that comes back to its first point by an arc names that point again."""
    closed = len(corners) > 1 and _near(corners[0], corners[-1])
    bends = _bends(scope, steps, corners)
    if bends is None:
        return None
    arcs = bends if closed else (*bends, None)
    return Shape(corners[:-1] if closed else corners, arcs if any(arcs) else ())


def _bends(scope: Scope, steps: tuple[Step, ...], corners: tuple[Place, ...]) -> tuple[Bend | None, ...] | None:
    """Return how the steps from each corner to the next curve; None when a mistake has been reported."""
    ends = corners[1:]
    bends = [_bend(scope, step, start, end) for step, start, end in zip(steps[1:], corners, ends, strict=False)]
    if steps[0].bend:
        found = "An outline begins with a point, and this one begins with an arc."
        scope.draft.error(
            "arc-first", "This arc starts nowhere", found, "Name the point it starts from.", steps[0][-2:]
        )
        return None
    if any(bend is BROKEN for bend in bends):
        return None
    return tuple(None if bend is STRAIGHT else bend for bend in bends)


# Told apart by identity, because a real arc may equal either of them.
STRAIGHT = Bend((0.0, 0.0), False)
BROKEN = Bend((0.0, 0.0), True)


def _bend(scope: Scope, step: Step, start: Place, end: Place) -> Bend:
    if not step.bend:
        return STRAIGHT
    by = scope.point(step.by) if step.by is not None else None
    if by is None:
        return BROKEN
    return _through(scope, step, start, by, end) if step.bend == "via" else _around(scope, step, start, by, end)


def _around(scope: Scope, step: Step, start: Place, centre: Place, end: Place) -> Bend:
    if step.bend == "not":
        found = "An arc runs `clockwise` or `counterclockwise`."
        scope.draft.error("arc-sense", "This arc runs neither way", found, "", step[-2:])
        return BROKEN
    near, far = (hypot(p[0] - centre[0], p[1] - centre[1]) for p in (start, end))
    if abs(near - far) > SAME or near <= SAME:
        found = f"It starts {near:.4g} in from its centre and ends {far:.4g} in from it, so it is not part of a circle."
        scope.draft.error("not-one-circle", "This arc does not fit its centre", found, "", step[-2:])
        return BROKEN
    return Bend(centre, step.bend == "clockwise")


def _through(scope: Scope, step: Step, start: Place, via: Place, end: Place) -> Bend:
    ax, ay, bx, by = via[0] - start[0], via[1] - start[1], end[0] - start[0], end[1] - start[1]
    turn = 2 * (ax * by - ay * bx)
    a, b = ax * ax + ay * ay, bx * bx + by * by
    if abs(turn) <= 1e-6 * float(a + b):
        found = "The three points lie in one straight line."
        scope.draft.error("flat-arc", "This arc is not curved", found, "Leave out `arc via`.", step[-2:])
        return BROKEN
    centre = start[0] + (a * by - b * ay) / turn, start[1] + (b * ax - a * bx) / turn
    return Bend(centre, turn < 0)


def _is_outline(scope: Scope, steps: tuple[Step, ...], shape: Shape, what: str) -> bool:
    at = (steps[0].start, steps[-1].end)
    corners = shape.corners
    if len(corners) < (2 if shape.bends else 3):
        found = f"The {what} goes through {len(corners)} points, and a shape needs three corners or more."
        scope.draft.error("too-few-corners", "This is not a shape", found, "", at)
        return False
    for index, corner in enumerate(corners):
        after = corners[(index + 1) % len(corners)]
        if _near(corner, after):
            names = f"`{steps[index % len(steps)].to.text}` and `{steps[(index + 1) % len(steps)].to.text}`"
            found = f"{names} lie in the same place, one after the other."
            scope.draft.error("same-point", "Two corners are one", found, "Leave one of them out.", at)
            return False
    outline = snapped_outline(shape)
    where = crossing(outline) if len(corners) > 3 or shape.bends else None
    if where is None and abs(outline.area()) < TICKS_PER_INCH * SAME_POINT:
        scope.draft.error("no-area", "This is not a shape", f"The {what} covers no area.", "", at)
        return False
    if where is None:
        return True
    x, y = where
    found = f"The {what} crosses itself at about {x:.3g}, {y:.3g} in (across, up)."
    advice = "Name the corners in order, going once round the shape."
    scope.draft.error("crosses-itself", "This outline crosses itself", found, advice, at)
    return False
