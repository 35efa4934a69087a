"""What lies where on a drawing, worked out apart from the code that draws: boxes of words, lines of everything else."""

import math
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
from blocklang_drawing import Arrow, Dot, Drawing, Group, Path, Shape, Text, Trail, Window, text_width
from blocklang_drawing.shapes import ArcTo, Place
from shapely import STRtree, box, distance
from shapely.affinity import translate
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as Spot

SMALLEST = 8.0
#: How far letters reach above their line and below it, as a share of the type size; figures and capitals reach nothing below.
ABOVE, BELOW = 0.74, 0.21
_STANDING = re.compile("[A-PR-Z0-9]*")
#: Two decimals are written, so that nothing is held to more.
SLACK = 0.02


@dataclass(frozen=True)
class Words:
    text: Text
    area: Polygon
    order: int = 0


@dataclass(frozen=True)
class Line:
    shape: LineString | Polygon
    half: float
    order: int = 0
    fills: bool = False


def words_on(drawing: Drawing) -> list[Words]:
    """Return the words that are seen; those of which a window shows a part only count as beyond the edge."""
    found = []
    for order, (shape, by, seen) in enumerate(_all(drawing.shapes)):
        if isinstance(shape, Text):
            area = _moved(box_of(shape), by)
            if seen is None or seen.contains(area):
                found.append(Words(shape, area, order))
            elif seen.intersects(area):
                found.append(Words(shape, translate(area, xoff=-1e6), order))
    return found


def box_of(text: Text) -> Polygon:
    width = text_width(text.text, text.size, text.bold)
    left = text.at[0] - {"start": 0.0, "middle": width / 2, "end": width}[text.anchor]
    below = 0.0 if _STANDING.fullmatch(text.text) else BELOW * text.size
    return box(left, text.at[1] - ABOVE * text.size, left + width, text.at[1] + below)


def lines_on(drawing: Drawing) -> list[Line]:
    return [
        replace(line, shape=part, order=order)
        for order, (shape, by, seen) in enumerate(_all(drawing.shapes))
        for line in _lines(shape, by)
        for part in _seen(line.shape, seen)
    ]


def _seen(shape: LineString, seen: Polygon | None) -> list[LineString]:
    """Return what of a line is seen; windows are level boxes, so that their bounds say all of them."""
    if seen is None or _holds(seen.bounds, shape.bounds):
        return [shape]
    if not seen.intersects(shape):
        return []
    return [
        part for part in getattr(seen.intersection(shape), "geoms", [seen.intersection(shape)]) if not part.is_empty
    ]


def assert_in_order(drawing: Drawing) -> None:
    """Everything lies on the drawing; no words are too small to read, cover other words, or touch a line."""
    words, lines = words_on(drawing), lines_on(drawing)
    sheet = box(-SLACK, -SLACK, drawing.width + SLACK, drawing.height + SLACK)
    outside = [each.text.text for each in words if not sheet.contains(each.area)]
    assert not outside, f"words beyond the edge: {outside}"
    assert all(_holds(sheet.bounds, line.shape.bounds) for line in lines), "a mark beyond the edge"
    assert all(each.text.size >= SMALLEST - SLACK for each in words), "words too small to read"
    _assert_apart(words, lines)


def _assert_apart(words: list[Words], lines: list[Line]) -> None:
    if not words:
        return
    tree = STRtree([each.area for each in words])
    for a, b in tree.query([each.area for each in words], predicate="intersects").T:
        assert a == b, f"{words[a].text.text!r} covers {words[b].text.text!r}"
    shapes = [line.shape for line in lines]
    widest = max((line.half for line in lines), default=0.0)
    for which, near in tree.query(np.array(shapes, dtype=object), predicate="dwithin", distance=widest).T:
        apart = distance(shapes[which], words[near].area)
        if _is_hidden(lines, lines[which], words[near]):
            continue
        assert apart > lines[which].half - SLACK, f"a line touches {words[near].text.text!r}"
        assert apart > 0, f"a line crosses {words[near].text.text!r}"


def _holds(outer: tuple[float, ...], inner: tuple[float, ...]) -> bool:
    return outer[0] <= inner[0] and outer[1] <= inner[1] and inner[2] <= outer[2] and inner[3] <= outer[3]


def _is_hidden(lines: list[Line], line: Line, words: Words) -> bool:
    """Tell whether something painted later, on which all of the words lie, covers a line there."""
    return any(
        line.order < each.order < words.order
        and each.fills
        and each.shape.is_closed
        and Polygon(each.shape.coords).contains(words.area)
        for each in lines
    )


def _all(
    shapes: tuple[Shape, ...], by: Place = (0.0, 0.0), seen: Polygon | None = None
) -> Iterator[tuple[Shape, Place, Polygon | None]]:
    """Give every shape, how far it is moved, and what of it is seen: all of it (None) or what lies in a window."""
    for shape in shapes:
        if isinstance(shape, Group):
            yield from _all(shape.shapes, by, seen)
        elif isinstance(shape, Window):
            inner = (by[0] + shape.at[0] - shape.onto[0], by[1] + shape.at[1] - shape.onto[1])
            left, top = by[0] + shape.at[0], by[1] + shape.at[1]
            pane = box(left - SLACK, top - SLACK, left + shape.width + SLACK, top + shape.height + SLACK)
            yield from _all(shape.shapes, inner, pane if seen is None else pane.intersection(seen))
        else:
            yield shape, by, seen


def _lines(shape: Shape, by: Place) -> Iterator[Line]:
    """Give the sides of what is painted, and the run of what is only stroked."""
    match shape:
        case Path():
            half = shape.paint.width / 2 if shape.paint.stroke else 0.0
            for trail in shape.trails:
                places = places_of(trail)
                run = _moved(LineString([*places, places[0]] if trail.closed else places), by)
                yield Line(run, half, fills=trail.closed and shape.paint.fill is not None)
        case Dot():
            ring = _moved(Spot(shape.at).buffer(shape.radius).exterior, by)
            yield Line(ring, shape.paint.width / 2, fills=shape.paint.fill is not None)
        case Arrow():
            yield Line(_moved(LineString([shape.start, shape.end]), by), max(shape.width, shape.head) / 2)


def places_of(trail: Trail) -> list[Place]:
    """Return a trail as chords."""
    places = [trail.start]
    for stretch in trail.stretches:
        places += _round(places[-1], stretch) if isinstance(stretch, ArcTo) else [stretch.end]
    return places


def _round(start: Place, arc: ArcTo) -> list[Place]:
    (ax, ay), (bx, by) = start, arc.end
    chord = math.dist(start, arc.end)
    rise = math.sqrt(max(arc.radius**2 - chord**2 / 4, 0.0)) / chord
    side = 1 if arc.clockwise != arc.large else -1
    x, y = (ax + bx) / 2 - (by - ay) * rise * side, (ay + by) / 2 + (bx - ax) * rise * side
    first, last = math.atan2(ay - y, ax - x), math.atan2(by - y, bx - x)
    sweep = (last - first) % math.tau if arc.clockwise else -((first - last) % math.tau)
    return [
        (x + arc.radius * math.cos(first + sweep * k / 16), y + arc.radius * math.sin(first + sweep * k / 16))
        for k in range(1, 17)
    ]


def _moved(shape, by: Place):
    return translate(shape, *by) if by != (0.0, 0.0) else shape
