"""The arrow and the words on a template, inside it where they fit, else below it."""

from dataclasses import dataclass

from blocklang_drawing import Arrow, Place, Shape, Text, shorten, text_width

from blocklang_templates.inside import Ring, place_box

INK = "#000000"
NUMBER = 13.0
_LEADING, _GAP, _ARROW, _LANE, _SHORT = 1.3, 6.0, 48.0, 8.0, 20.0
#: What lies inside keeps this far from the sewing line.
_PAD = 5.0


@dataclass(frozen=True, slots=True)
class Label:
    """What is written on a template: its number and name, and a line for each fabric; `upright` is how the grain runs."""

    number: str
    name: str
    lines: tuple[str, ...]
    size: float
    upright: bool

    @property
    def width(self) -> float:
        """The width of all of it as a block of text."""
        return max([self._heading_width(), *(text_width(line, self.size) for line in self.lines)])

    @property
    def height(self) -> float:
        """The height of all of it as a block of text."""
        return NUMBER * _LEADING + len(self.lines) * self.size * _LEADING

    def _heading_width(self) -> float:
        return text_width(self.number, NUMBER, bold=True) + _GAP + text_width(self.name, self.size, bold=True)

    def draw(self, at: Place, room: float) -> tuple[Shape, ...]:
        """Return all of it as a block of text with its upper left corner at a place."""
        x, y = at[0], at[1] + NUMBER
        beside = x + text_width(self.number, NUMBER, bold=True) + _GAP
        name = shorten(self.name, self.size, room - (beside - x), bold=True)
        lines = (
            Text((x, y + self.size * _LEADING * place), shorten(line, self.size, room), self.size, INK)
            for place, line in enumerate(self.lines, 1)
        )
        return self.draw_number((x, at[1])), Text((beside, y), name, self.size, INK, bold=True), *lines

    def draw_number(self, at: Place) -> Text:
        """Return the number alone."""
        return Text((at[0], at[1] + NUMBER), self.number, NUMBER, INK, bold=True, halo="#ffffff")


@dataclass(frozen=True, slots=True)
class Written:
    """The shapes inside a template, and whether all of the label is among them."""

    shapes: tuple[Shape, ...]
    whole: bool


def write_inside(ring: Ring, label: Label, *, whole: bool = True) -> Written:
    """Return as much of a label as fits inside a ring, the arrow always; without `whole` no more than the number."""
    number = (text_width(label.number, NUMBER, bold=True), NUMBER * 1.1)
    if whole:
        at = _place(ring, label, (label.width, label.height), _ARROW)
        if at is not None:
            arrow, text = _parts(label, at, (label.width, label.height), _ARROW)
            return Written((arrow, *label.draw(text, label.width)), whole=True)
    for length in (_ARROW, _SHORT):
        at = _place(ring, label, number, length)
        if at is not None:
            arrow, text = _parts(label, at, number, length)
            return Written((arrow, label.draw_number(text)), whole=False)
    return Written((_bare_arrow(ring, label),), whole=False)


def _box(label: Label, text: tuple[float, float], arrow: float) -> tuple[float, float]:
    if label.upright:
        return _LANE + _GAP + text[0], max(arrow, text[1])
    return max(arrow, text[0]), _LANE + _GAP + text[1]


def _place(ring: Ring, label: Label, text: tuple[float, float], arrow: float) -> Place | None:
    width, height = _box(label, text, arrow)
    at = place_box(ring, width + 2 * _PAD, height + 2 * _PAD)
    return (at[0] + _PAD, at[1] + _PAD) if at else None


def _parts(label: Label, at: Place, text: tuple[float, float], length: float) -> tuple[Arrow, Place]:
    """Return the arrow, and where the text begins."""
    width, height = _box(label, text, length)
    if label.upright:
        x, y = at[0] + _LANE / 2, at[1] + (height - length) / 2
        words = at[0] + _LANE + _GAP, at[1] + (height - text[1]) / 2
        return grain_arrow((x, y + length), (x, y)), words
    x, y = at[0] + (width - length) / 2, at[1] + _LANE / 2
    return grain_arrow((x, y), (x + length, y)), (at[0] + (width - text[0]) / 2, at[1] + _LANE + _GAP)


def _bare_arrow(ring: Ring, label: Label) -> Arrow:
    at = place_box(ring, 1.0, 1.0) or ring[0]
    half = _SHORT / 2
    if label.upright:
        return grain_arrow((at[0], at[1] + half), (at[0], at[1] - half))
    return grain_arrow((at[0] - half, at[1]), (at[0] + half, at[1]))


def grain_arrow(start: Place, end: Place) -> Arrow:
    """Return an arrow along the grain, with a head at both ends: the grain has no direction."""
    return Arrow(start, end, INK, 1.0, 6.0, halo="#ffffff", both=True)
