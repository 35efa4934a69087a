"""How a shape is cut further: across a square, at a slant from a strip, its corners off; with its measures."""

from collections.abc import Iterator

from blocklang.block import LengthUnit
from blocklang.cutting import Lay, Piece, format_measure
from blocklang_drawing.cloth_box import (
    ClothBox,
    draw_cuts,
    has_room_between,
    paint_band,
    say_angle,
    say_distance,
    say_height,
    say_length,
)
from blocklang_drawing.cut_lines import CutLine, cut_lines
from blocklang_drawing.shapes import Drawing, Place
from blocklang_drawing.theme import Theme

#: The room for the cloth itself (points); measures come beside it and below.
ROOM = (126.0, 58.0)
#: How many shapes of a strip are shown.
_SHOWN = {Lay.SLANTED: 1, Lay.POINTED: 2, Lay.BOTH_ENDS: 2, Lay.ONE_END: 2}


def draw_cut(piece: Piece, theme: Theme, shown_in: LengthUnit) -> Drawing | None:
    """Return how a line of the cutting list is cut; None for plain squares and rectangles, templates and strip sets."""
    if piece.strip_set is not None or piece.lay is Lay.TEMPLATE or not piece.cut:
        return None
    if piece.lay is Lay.UPRIGHT:
        inside = tuple(_inside(piece))
        return _draw_shape(piece, inside, theme, shown_in) if inside else None
    return _draw_strip(piece, theme, shown_in)


def _draw_shape(piece: Piece, inside: tuple[CutLine, ...], theme: Theme, shown_in: LengthUnit) -> Drawing:
    wide, high = float(piece.cut[-1].shown), float(piece.cut[0].shown)
    below, beside = (theme.language.say(format_measure(piece.cut[place], shown_in)) for place in (-1, 0))
    is_oblong = len(piece.cut) > 1
    box = ClothBox.fit(wide, high, ROOM, below, beside if is_oblong else "")
    shapes = (
        *paint_band(box, piece.fabric, 0.0, high, theme),
        *draw_cuts(box, inside, theme),
        *say_length(box, 0.0, wide, below, theme),
        *(say_height(box, 0.0, high, beside, theme) if is_oblong else ()),
    )
    return Drawing(*box.room, shapes, theme.language.say(piece.name), theme.font)


def _draw_strip(piece: Piece, theme: Theme, shown_in: LengthUnit) -> Drawing:
    high, count = float(piece.cut[0].shown), min(_SHOWN[piece.lay], piece.count)
    lines = tuple(cut_lines(piece, count, high, 0.0))
    length = max(max(line.start[0], line.end[0]) for line in lines)
    beside, along = (theme.language.say(format_measure(piece.cut[place], shown_in)) for place in (0, -1))
    slanted, angle = piece.lay is Lay.SLANTED, piece.angle or 90.0
    box = ClothBox.fit(length, high, ROOM, along, beside, goes_on=True)
    if slanted and has_room_between(box, lines[-2:], along, angle):
        box = ClothBox.fit(length, high, ROOM, "", beside, goes_on=True)
    shapes = (
        *paint_band(box, piece.fabric, 0.0, high, theme),
        *draw_cuts(box, lines, theme),
        *say_height(box, 0.0, high, beside, theme),
        *(() if slanted else say_length(box, lines[0].start[0], lines[1].start[0], along, theme)),
        *(say_distance(box, lines[-2:], along, angle, theme) if slanted else ()),
        *say_angle(box, lines[0].start, angle, theme),
    )
    return Drawing(*box.room, shapes, theme.language.say(piece.name), theme.font)


def _inside(piece: Piece) -> Iterator[CutLine]:
    """Yield the cuts inside one square, rectangle or hexagon."""
    wide, high = float(piece.cut[-1].shown), float(piece.cut[0].shown)
    corners = tuple(_corners(piece, wide, high))
    for start, end in zip(corners, corners[1:] + corners[:1], strict=True):
        if start[0] != end[0] and start[1] != end[1]:
            yield CutLine(start, end, later=True)
    if not corners:
        yield from (line for line in cut_lines(piece, 1, high, wide) if line.later)


def _corners(piece: Piece, wide: float, high: float) -> Iterator[Place]:
    """Yield the corners of a shape whose corners are cut off, in order."""
    if piece.angle is not None:  # a hexagon, its points along the strip
        yield from ((0.0, high / 2), (wide / 4, high), (wide * 3 / 4, high))
        yield from ((wide, high / 2), (wide * 3 / 4, 0.0), (wide / 4, 0.0))
    elif piece.marks and len(piece.cut) == 1:
        near, far = (wide - float(piece.marks[0].shown)) / 2, (wide + float(piece.marks[0].shown)) / 2
        yield from ((near, 0.0), (far, 0.0), (wide, near), (wide, far))
        yield from ((far, high), (near, high), (0.0, far), (0.0, near))
    elif piece.marks:
        mark = float(piece.marks[0].shown)
        yield from ((0.0, high / 2), (mark, high), (wide, high / 2), (mark, 0.0))
