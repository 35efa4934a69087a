"""Where the lines of a drawing run, so that a page without any can be left out."""

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise

from blocklang_drawing.full_size_inside import Box, Ring
from blocklang_drawing.shapes import ArcTo, Group, Path, Place, Shape, Text, Trail, Window
from blocklang_drawing.type_widths import text_width

#: Arcs are followed in steps of at most this many radians.
_STEP = 0.1


def rings_of(shapes: Sequence[Shape]) -> Iterator[Ring]:
    """Yield the trails of all paths as broken lines, closed ones back to their start; words and dots do not count."""
    for shape in shapes:
        if isinstance(shape, Path):
            yield from map(_ring, shape.trails)
        elif isinstance(shape, Group):
            yield from rings_of(shape.shapes)
        elif isinstance(shape, Window):
            dx, dy = shape.at[0] - shape.onto[0], shape.at[1] - shape.onto[1]
            yield from (tuple((x + dx, y + dy) for x, y in ring) for ring in rings_of(shape.shapes))


def rings_round_words(shapes: Sequence[Shape]) -> Iterator[Ring]:
    """Yield a level ring round every line of words."""
    for shape in shapes:
        if isinstance(shape, Text):
            wide = text_width(shape.text, shape.size, shape.bold)
            left = shape.at[0] - {"start": 0.0, "middle": wide / 2, "end": wide}[shape.anchor]
            top, low = shape.at[1] - shape.size * 0.75, shape.at[1] + shape.size * 0.2
            yield (left, top), (left + wide, top), (left + wide, low), (left, low), (left, top)


def comes_into(ring: Ring, box: Box) -> bool:
    """Tell whether a broken line comes into a box."""
    return any(_cuts(a, b, box) for a, b in pairwise(ring))


def reaches(ring: Ring, box: Box) -> bool:
    """Tell whether a broken line comes into a box, or goes right round it."""
    if comes_into(ring, box):
        return True
    left, top, right, low = box
    sides = list(pairwise(ring))
    x, y = (left + right) / 2, (top + low) / 2
    round_it = sum(((ay > y) != (by > y)) and x < ax + (y - ay) * (bx - ax) / (by - ay) for (ax, ay), (bx, by) in sides)
    return ring[0] == ring[-1] and round_it % 2 == 1


def _cuts(a: Place, b: Place, box: Box) -> bool:
    """Tell whether any of a straight line lies in a box: what is left of it after cutting along the four sides."""
    start, end = 0.0, 1.0
    for axis in (0, 1):
        step = b[axis] - a[axis]
        near, far = box[axis] - a[axis], box[axis + 2] - a[axis]
        if not step:
            if near > 0 or far < 0:
                return False
            continue
        first, last = sorted((near / step, far / step))
        start, end = max(start, first), min(end, last)
    return start <= end


def _ring(trail: Trail) -> Ring:
    places = [trail.start]
    for stretch in trail.stretches:
        places.extend(_along(places[-1], stretch) if isinstance(stretch, ArcTo) else (stretch.end,))
    return (*places, trail.start) if trail.closed else tuple(places)


def _along(start: Place, arc: ArcTo) -> Iterator[Place]:
    """Yield places along an arc, its end last."""
    (ax, ay), (bx, by) = start, arc.end
    chord = math.dist(start, arc.end)
    radius = max(arc.radius, chord / 2)
    rise = math.sqrt(max(radius**2 - chord**2 / 4, 0.0)) * (1 if arc.large == arc.clockwise else -1)
    # With y down, a turn that looks clockwise goes from smaller to greater angles.
    cx, cy = (ax + bx) / 2 + rise * (by - ay) / chord, (ay + by) / 2 - rise * (bx - ax) / chord
    first, last = math.atan2(ay - cy, ax - cx), math.atan2(by - cy, bx - cx)
    sweep = (last - first) % math.tau if arc.clockwise else -((first - last) % math.tau)
    count = max(1, math.ceil(abs(sweep) / _STEP))
    for step in range(1, count):
        angle = first + sweep * step / count
        yield cx + radius * math.cos(angle), cy + radius * math.sin(angle)
    yield arc.end
