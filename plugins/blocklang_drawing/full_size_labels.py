"""The words on a full-size piece, with or without an arrow for the grain: inside it where they fit, else below it."""

from dataclasses import dataclass, replace
from enum import Enum

from blocklang_drawing.full_size_furniture import wrap_words
from blocklang_drawing.full_size_inside import Box, Ring, place_box
from blocklang_drawing.shapes import Arrow, Drawing, Place, Shape, Text
from blocklang_drawing.type_widths import shorten, text_width

INK = "#000000"
NUMBER = 13.0
_LEADING, _GAP, _ARROW, _LANE, _SHORT = 1.3, 6.0, 48.0, 8.0, 20.0
#: What lies inside keeps this far from the line round it.
_PAD = 5.0
_BELOW = 4.0
#: A label below a piece is never squeezed into less than this.
_NARROWEST = 160.0


class Grain(Enum):
    """How the straight grain of a piece runs on the page; NONE draws no arrow."""

    UPRIGHT = "upright"
    LEVEL = "level"
    NONE = "none"


@dataclass(frozen=True, slots=True)
class Label:
    """What is written on a piece: its number and name, and a line for each thing that is cut with it."""

    number: str
    name: str
    lines: tuple[str, ...]
    size: float
    grain: Grain = Grain.NONE

    @property
    def width(self) -> float:
        """The width of all of it as a block of text."""
        return max([self._heading_width(), *(text_width(line, self.size) for line in self.lines)])

    @property
    def height(self) -> float:
        """The height of all of it as a block of text."""
        return NUMBER * _LEADING + len(self.lines) * self.size * _LEADING

    @property
    def number_size(self) -> tuple[float, float]:
        """The width and height of the number alone."""
        return text_width(self.number, NUMBER, bold=True), NUMBER * 1.1

    def _heading_width(self) -> float:
        return self.number_size[0] + _GAP + text_width(self.name, self.size, bold=True)

    def draw(self, at: Place, room: float) -> tuple[Shape, ...]:
        """Return all of it as a block of text with its upper left corner at a place."""
        x, y = at[0], at[1] + NUMBER
        room += 0.1  # the block of text as wide as itself fits, whatever sums of widths round to
        beside = self.number_size[0] + _GAP
        name = shorten(self.name, self.size, room - beside, bold=True)
        lines = (
            Text((x, y + self.size * _LEADING * place), shorten(line, self.size, room), self.size, INK)
            for place, line in enumerate(self.lines, 1)
        )
        return self.draw_number(at), Text((x + beside, y), name, self.size, INK, bold=True), *lines

    def wrapped(self, room: float) -> "Label":
        """Return the label with every line no wider than the room; what is left of the name goes on lines of its own."""
        name, *more = tuple(wrap_words(self.name, self.size, room - self.number_size[0] - _GAP, bold=True)) or ("",)
        lines = (*more, *(part for line in self.lines for part in wrap_words(line, self.size, room)))
        return replace(self, name=name, lines=lines)

    def draw_number(self, at: Place) -> Text:
        """Return the number alone."""
        return Text((at[0], at[1] + NUMBER), self.number, NUMBER, INK, bold=True, halo="#ffffff")


def with_label(
    drawing: Drawing, ring: Ring, label: Label, *, whole: bool = True, within: tuple[Box, ...] = ()
) -> Drawing:
    """Return a drawing with its label inside a ring, or below the drawing what does not fit; the arrow always inside.

    Without `whole` no more than the number goes inside. `within` names the parts of the drawing that come on one page
    each, as `tile_boxes` gives them: the label then lies on one of them.
    """
    inside, complete = _write_inside(ring, label, whole, within or (None,))
    if complete:
        return Drawing(drawing.width, drawing.height, (*drawing.shapes, *inside), drawing.title)
    room = max(drawing.width - 2 * _BELOW, min(label.width, _NARROWEST))
    below = label.wrapped(room)
    shapes = (*drawing.shapes, *inside, *below.draw((_BELOW, drawing.height + _BELOW), room))
    width = max(drawing.width, min(below.width, room) + 2 * _BELOW)
    return Drawing(width, drawing.height + 2 * _BELOW + below.height, shapes, drawing.title)


def _write_inside(
    ring: Ring, label: Label, whole: bool, within: tuple[Box | None, ...]
) -> tuple[tuple[Shape, ...], bool]:
    """Return as much of a label as fits inside a ring, and whether that is all of it."""
    size = (label.width, label.height)
    at = _place(ring, label, size, _ARROW, within) if whole else None
    if at is not None:
        arrow, text = _parts(label, at, size, _ARROW)
        return (*arrow, *label.draw(text, label.width)), True
    for length in (_ARROW, _SHORT):
        at = _place(ring, label, label.number_size, length, within)
        if at is not None:
            arrow, text = _parts(label, at, label.number_size, length)
            return (*arrow, label.draw_number(text)), False
    return _bare_arrow(ring, label), False


def _box(label: Label, text: tuple[float, float], arrow: float) -> tuple[float, float]:
    if label.grain is Grain.UPRIGHT:
        return _LANE + _GAP + text[0], max(arrow, text[1])
    if label.grain is Grain.LEVEL:
        return max(arrow, text[0]), _LANE + _GAP + text[1]
    return text


def _place(
    ring: Ring, label: Label, text: tuple[float, float], arrow: float, within: tuple[Box | None, ...]
) -> Place | None:
    width, height = _box(label, text, arrow)
    for part in within:
        at = place_box(ring, width + 2 * _PAD, height + 2 * _PAD, part)
        if at is not None:
            return at[0] + _PAD, at[1] + _PAD
    return None


def _parts(label: Label, at: Place, text: tuple[float, float], length: float) -> tuple[tuple[Arrow, ...], Place]:
    """Return the arrow, and where the text begins."""
    width, height = _box(label, text, length)
    if label.grain is Grain.UPRIGHT:
        x, y = at[0] + _LANE / 2, at[1] + (height - length) / 2
        words = at[0] + _LANE + _GAP, at[1] + (height - text[1]) / 2
        return (_grain_arrow((x, y + length), (x, y)),), words
    if label.grain is Grain.LEVEL:
        x, y = at[0] + (width - length) / 2, at[1] + _LANE / 2
        words = at[0] + (width - text[0]) / 2, at[1] + _LANE + _GAP
        return (_grain_arrow((x, y), (x + length, y)),), words
    return (), at


def _bare_arrow(ring: Ring, label: Label) -> tuple[Arrow, ...]:
    x, y = place_box(ring, 1.0, 1.0) or ring[0]
    half = _SHORT / 2
    if label.grain is Grain.UPRIGHT:
        return (_grain_arrow((x, y + half), (x, y - half)),)
    return (_grain_arrow((x - half, y), (x + half, y)),) if label.grain is Grain.LEVEL else ()


def _grain_arrow(start: Place, end: Place) -> Arrow:
    # With a head at both ends: the grain has no direction.
    return Arrow(start, end, INK, 1.0, 6.0, halo="#ffffff", both=True)
