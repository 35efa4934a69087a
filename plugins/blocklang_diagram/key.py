"""The key under a picture: numbers, swatches and what they stand for, in columns."""

from collections.abc import Iterator
from dataclasses import dataclass

from blocklang_drawing import Paint, Path, Place, Shape, Text, Theme, clean_text, lines_of, shorten, text_width
from blocklang_drawing.hatching import hatch
from blocklang_drawing.shapes import polygon

SIZE, LEADING, GAP = 9.0, 14.0, 14.0
#: How wide and high a swatch is; one of several fabrics is cut up between them.
SWATCH = (16.0, 9.0)
#: A key is at least this wide, so that a name has room; more columns, or more lines to an entry, are hard to read.
NARROWEST, MOST_COLUMNS, MOST_LINES = 200.0, 3, 3


@dataclass(frozen=True, slots=True)
class Entry:
    """A number, the fabrics it stands for, and what it says."""

    number: str
    fabrics: tuple[str, ...]
    sentence: str


@dataclass(frozen=True, slots=True)
class Key:
    """The shapes of a key and how far to the right and down they reach from the picture's corner (points)."""

    shapes: tuple[Shape, ...]
    width: float
    height: float


def draw_key(entries: tuple[Entry, ...], notes: tuple[str, ...], theme: Theme, width: float, at: Place) -> Key:
    """Return a key as wide as the picture or, where that is narrow, as one column; notes stand below it."""
    wide = max(width, NARROWEST)
    indent = max(text_width(entry.number, SIZE, bold=True) for entry in entries) + SWATCH[0] + 11
    longest = max(text_width(clean_text(entry.sentence), SIZE) for entry in entries) + indent
    columns = max(1, min(MOST_COLUMNS, int((wide + GAP) / (longest + GAP))))
    column = (wide - GAP * (columns - 1)) / columns
    rows = -(-len(entries) // columns)
    shapes: list[Shape] = []
    foot = at[1]
    for start in range(0, len(entries), rows):
        down, left = at[1], at[0] + start // rows * (column + GAP)
        for entry in entries[start : start + rows]:
            lines = _broken(entry.sentence, column - indent)
            shapes.extend(_entry(entry, lines, (left, down), indent, theme))
            down += len(lines) * LEADING
        foot = max(foot, down)
    said = [line for note in notes for line in lines_of(note, SIZE, wide)]
    foot += 4 if said else 0
    shapes += [Text((at[0], foot + number * LEADING - 3), line, SIZE, theme.ink) for number, line in enumerate(said, 1)]
    return Key(tuple(shapes), at[0] * 2 + wide, foot - at[1] + len(said) * LEADING + 2)


def _broken(sentence: str, room: float) -> tuple[str, ...]:
    """Break a sentence into lines, the last of so many cut short."""
    lines = lines_of(sentence, SIZE, room)
    if len(lines) <= MOST_LINES:
        return lines or ("",)
    return (*lines[: MOST_LINES - 1], shorten(" ".join(lines[MOST_LINES - 1 :]), SIZE, room))


def _entry(entry: Entry, lines: tuple[str, ...], at: Place, indent: float, theme: Theme) -> Iterator[Shape]:
    (left, top), line = at, at[1] + LEADING - 3.5
    yield Text((left + indent - SWATCH[0] - 11, line), entry.number, SIZE, theme.ink, anchor="end", bold=True)
    yield from _swatch(entry.fabrics, (left + indent - SWATCH[0] - 6, line - SWATCH[1] + 1), theme)
    for number, words in enumerate(lines, 1):
        yield Text((left + indent, top + number * LEADING - 3.5), words, SIZE, theme.ink)


def _swatch(fabrics: tuple[str, ...], at: Place, theme: Theme) -> Iterator[Shape]:
    wide, high = SWATCH[0] / len(fabrics), SWATCH[1]
    for index, fabric in enumerate(fabrics):
        left, fill = at[0] + index * wide, theme.fill(fabric)
        ring = ((left, at[1]), (left + wide, at[1]), (left + wide, at[1] + high), (left, at[1] + high))
        yield Path((polygon(ring),), Paint(fill=fill.colour))
        if fill.texture is not None:
            yield Path(hatch(ring, fill.texture), Paint(stroke=fill.texture_ink, width=fill.texture.width))
    x, y = at
    whole = ((x, y), (x + SWATCH[0], y), (x + SWATCH[0], y + high), (x, y + high))
    yield Path((polygon(whole),), Paint(stroke=theme.ink, width=0.6))
