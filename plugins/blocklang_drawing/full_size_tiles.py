"""A piece larger than the paper, cut into tiles that overlap, with crosses to lay on each other."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import product

from blocklang_drawing import words as said
from blocklang_drawing.full_size_ink import comes_into, reaches, rings_of, rings_round_words
from blocklang_drawing.full_size_inside import Box, Ring
from blocklang_drawing.full_size_paper import INCH, FullSize, PageWords, Room
from blocklang_drawing.shapes import Dot, Paint, Path, Place, Shape, Text, Window, polygon, polyline
from blocklang_drawing.type_widths import text_width

OVERLAP = 0.5 * INCH
_INK, _QUIET = "#000000", "#666666"
_RING, _REACH = 4.0, 8.0
#: How much further away than beside its cross a number may stand, the nearest first.
_STEPS = (0.0, 6.0, 12.0, 18.0)
_FURTHER = sorted(product(_STEPS, _STEPS), key=lambda each: (each[0] + each[1], each))


@dataclass(frozen=True, slots=True)
class Cross:
    """A numbered registration cross on a piece, in the middle of an overlap."""

    number: int
    at: Place


@dataclass(frozen=True, slots=True)
class Tile:
    """One tile of a piece: its name, the part of the piece that it shows, and where on the page it lies.

    `folds` are the middles of the overlaps as lines on the piece; `crosses` all crosses of the piece.
    """

    name: str
    piece: FullSize
    room: Room
    onto: Place
    width: float
    height: float
    folds: tuple[tuple[Place, Place], ...]
    crosses: tuple[Cross, ...]


def tiles_of(piece: FullSize, room: Room) -> tuple[Tile, ...]:
    """Return the fewest equal tiles that cover a piece, row by row from the top; neighbours share half an inch.

    A tile with nothing of the piece on it is left out.
    """
    drawing = piece.drawing
    columns, wide = _split(drawing.width, room.width)
    rows, high = _split(drawing.height, room.height)
    folds = tuple(_folds((columns, wide), (rows, high), drawing.width, drawing.height))
    crosses = tuple(_crosses((columns, wide), (rows, high)))
    tiles = (
        Tile(
            said.tile(piece.name, (row + 1, rows), (column + 1, columns)),
            piece,
            room,
            (column * (wide - OVERLAP), row * (high - OVERLAP)),
            wide,
            high,
            folds,
            crosses,
        )
        for row in range(rows)
        for column in range(columns)
    )
    lines = [ring for ring in rings_of(drawing.shapes) if len(ring) > 1]
    return tuple(tile for tile in tiles if not _is_blank(tile, lines))


def _is_blank(tile: Tile, lines: list[tuple[Place, ...]]) -> bool:
    left, top = tile.onto
    box = (left, top, left + tile.width, top + tile.height)
    return not any(reaches(ring, box) for ring in lines)


def inner_box(tile: Tile) -> Box:
    """Return the part of a piece that a tile alone shows (left, top, right, low)."""
    (left, top), drawing = tile.onto, tile.piece.drawing
    right, low = left + tile.width, top + tile.height
    return (
        left + OVERLAP if left > 0 else left,
        top + OVERLAP if top > 0 else top,
        right - OVERLAP if right < drawing.width - 1 else right,
        low - OVERLAP if low < drawing.height - 1 else low,
    )


def draw_tile(tile: Tile, words: PageWords) -> tuple[Shape, ...]:
    """Return the part of the piece, framed, with its dashed lines and crosses."""
    room, drawing = tile.room, tile.piece.drawing
    lines = [ring for ring in rings_of(drawing.shapes) if len(ring) > 1]
    lines += rings_round_words(drawing.shapes)
    crosses = (cross for cross in tile.crosses if _shows(tile, cross))
    (left, top), (wide, high) = tile.onto, (tile.width, tile.height)
    pane = (left, top, left + wide, top + high)
    marks = (*_fold_lines(tile), *(shape for cross in crosses for shape in draw_cross(cross, words.size, lines, pane)))
    at = (room.left, room.top)
    window = Window(at, tile.width, tile.height, tile.onto, (*drawing.shapes, *marks), words.language.say(tile.name))
    right, low = room.left + tile.width, room.top + tile.height
    frame = polygon((at, (right, room.top), (right, low), (room.left, low)))
    return window, Path((frame,), Paint(stroke=_QUIET, width=0.5))


def _shows(tile: Tile, cross: Cross) -> bool:
    """Tell whether a tile shows all of a cross."""
    (x, y), (left, top) = cross.at, tile.onto
    across = left + _REACH <= x <= left + tile.width - _REACH
    return across and top + _REACH <= y <= top + tile.height - _REACH


def draw_cross(cross: Cross, size: float, lines: Sequence[Ring] = (), pane: Box | None = None) -> tuple[Shape, ...]:
    """Return a cross in a ring, and its number: beside it, in the pane, where it is clear of the lines, if it can be."""
    x, y = cross.at
    trails = polyline(((x - _REACH, y), (x + _REACH, y))), polyline(((x, y - _REACH), (x, y + _REACH)))
    every = [_numbered(cross, size, *beside) for beside in product(_FURTHER, (True, False), (True, False))]
    beside = [each for each in every if pane is None or _holds(pane, each[1])] or every
    number = next((text for text, box in beside if not any(comes_into(line, box) for line in lines)), beside[0][0])
    return (
        Path(trails, Paint(stroke=_INK, width=0.6)),
        Dot(cross.at, _RING, Paint(stroke=_INK, width=0.6)),
        number,
    )


def _holds(outer: Box, inner: Box) -> bool:
    return outer[0] <= inner[0] and outer[1] <= inner[1] and inner[2] <= outer[2] and inner[3] <= outer[3]


def _numbered(cross: Cross, size: float, further: Place, right: bool, above: bool) -> tuple[Text, Box]:
    """Return the number of a cross on one side of it, and the box that it fills, with a little room round it."""
    x, y = cross.at
    wide, high = text_width(str(cross.number), size, bold=True), size * 0.75
    away = _RING + 1.5 + further[0]
    left = x + away if right else x - away - wide
    apart = _RING - 0.5 + further[1]
    low = y - apart if above else y + apart + high
    text = Text((left, low), str(cross.number), size, _INK, bold=True, halo="#ffffff")
    return text, (left - 1, low - high - 1, left + wide + 1, low + 1)


def _split(length: float, room: float) -> tuple[int, float]:
    """Return how many tiles cover a length, and how long each is."""
    count = max(1, math.ceil((length - OVERLAP) / (room - OVERLAP) - 1e-6))
    return count, (length + (count - 1) * OVERLAP) / count


def _middles(tiles: tuple[int, float]) -> list[float]:
    count, length = tiles
    return [place * (length - OVERLAP) + OVERLAP / 2 for place in range(1, count)]


def _folds(
    columns: tuple[int, float], rows: tuple[int, float], width: float, height: float
) -> Iterator[tuple[Place, Place]]:
    yield from (((x, 0.0), (x, height)) for x in _middles(columns))
    yield from (((0.0, y), (width, y)) for y in _middles(rows))


def _crosses(columns: tuple[int, float], rows: tuple[int, float]) -> Iterator[Cross]:
    """Yield two crosses for every two tiles that share an edge, a fifth of the edge away from its ends."""
    places = [(x, at) for row in range(rows[0]) for x in _middles(columns) for at in _fifths(row, rows[1])]
    places += [(at, y) for y in _middles(rows) for column in range(columns[0]) for at in _fifths(column, columns[1])]
    yield from (Cross(number, place) for number, place in enumerate(places, 1))


def _fifths(place: int, length: float) -> tuple[float, float]:
    start = place * (length - OVERLAP)
    return start + length * 0.2, start + length * 0.8


def _fold_lines(tile: Tile) -> tuple[Path, ...]:
    return (Path(tuple(polyline(fold) for fold in tile.folds), Paint(stroke=_QUIET, width=0.6, dash=(6.0, 4.0))),)
