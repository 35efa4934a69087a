"""What is on every full-size page: the block's name, the page's number, and squares to measure before cutting."""

from collections.abc import Iterator, Sequence
from functools import lru_cache

from blocklang.hooks import Paper
from blocklang_drawing import words as said
from blocklang_drawing.full_size_paper import HEADING, INCH, MARGIN, MILLIMETRE, PAPERS, PageWords
from blocklang_drawing.shapes import Paint, Path, Place, Shape, Text, polygon
from blocklang_drawing.type_widths import clean_text, shorten, text_width

_INK, _QUIET = "#000000", "#444444"
_TITLE, _LEADING, _BETWEEN = 12.0, 1.25, 12.0
_SMALL = 20 * MILLIMETRE


def band_height(words: PageWords, paper: Paper) -> float:
    """Return the height of the band with the squares at the foot of a page."""
    return max(INCH, len(_notes(words, paper)) * words.size * _LEADING + words.size * 0.3)


def draw_furniture(words: PageWords, paper: Paper, number: tuple[int, int]) -> tuple[Shape, ...]:
    """Return the heading and the squares of a page; `number` is which page of how many."""
    width, height = PAPERS[paper]
    page, subject = words.language.say(said.called_page_of(words.page, *number)), words.language.say(words.subject)
    room = width - 2 * MARGIN - text_width(page, words.size + 1) - _BETWEEN
    low = height - MARGIN
    return (
        Text((MARGIN, MARGIN + 10), shorten(clean_text(words.name), _TITLE, room, bold=True), _TITLE, _INK, bold=True),
        Text((width - MARGIN, MARGIN + 10), page, words.size + 1, _INK, anchor="end"),
        Text((MARGIN, MARGIN + 24), shorten(clean_text(subject), words.size, room), words.size, _QUIET),
        *_square((MARGIN, low - INCH), INCH, words.language.say(said.ONE_INCH)),
        *_square((MARGIN + INCH + _BETWEEN, low - _SMALL), _SMALL, words.language.say(said.TWO_CENTIMETRES)),
        *_lines(_notes(words, paper), (_beside(), low - band_height(words, paper)), words.size),
    )


def tile_heading_height(words: PageWords, paper: Paper) -> float:
    """Return the height of the lines that a tile has below the heading."""
    return words.size * (1.6 + _LEADING * len(_join_lines(words, paper)))


def draw_tile_heading(name: str, words: PageWords, paper: Paper) -> tuple[Shape, ...]:
    """Return the lines that say which tile of which piece a page is, and how tiles are joined."""
    top, size = MARGIN + HEADING, words.size + 1
    which = shorten(clean_text(words.language.say(name)), size, PAPERS[paper][0] - 2 * MARGIN, bold=True)
    lines = [(line, False) for line in _join_lines(words, paper)]
    heading = Text((MARGIN, top + words.size), which, size, _INK, bold=True)
    return heading, *_lines(lines, (MARGIN, top + words.size * 1.3), words.size)


def _join_lines(words: PageWords, paper: Paper) -> tuple[str, ...]:
    return tuple(wrap_words(words.language.say(said.JOIN_TILES), words.size, PAPERS[paper][0] - 2 * MARGIN))


def wrap_words(text: str, size: float, room: float, bold: bool = False) -> Iterator[str]:
    """Yield the lines of a text set in a width; a word wider than that is cut short."""
    line = ""
    for word in clean_text(text).split():
        longer = f"{line} {word}".strip()
        if line and text_width(longer, size, bold) > room:
            yield shorten(line, size, room, bold)
            longer = word
        line = longer
    if line:
        yield shorten(line, size, room, bold)


def _square(at: Place, side: float, words: str) -> tuple[Shape, ...]:
    x, y = at
    ring = polygon((at, (x + side, y), (x + side, y + side), (x, y + side)))
    return (
        Path((ring,), Paint(stroke=_INK, width=0.5)),
        Text((x + side / 2, y + side / 2 + 3.5), words, 10.0, _INK, anchor="middle"),
    )


def _beside() -> float:
    return MARGIN + INCH + _BETWEEN + _SMALL + _BETWEEN


@lru_cache(maxsize=4)
def _notes(words: PageWords, paper: Paper) -> tuple[tuple[str, bool], ...]:
    # Asked for on every page, and the same on all of them.
    room = PAPERS[paper][0] - MARGIN - _beside()
    lines = [(words.language.say(said.MEASURE), True)]
    for sentence in map(words.language.say, (said.SQUARES, *words.notes)):
        lines.extend((line, False) for line in wrap_words(sentence, words.size, room))
    return tuple(lines)


def _lines(lines: Sequence[tuple[str, bool]], at: Place, size: float) -> tuple[Text, ...]:
    x, y = at
    return tuple(
        Text((x, y + size * (1 + _LEADING * place)), text, size, _INK, bold=bold)
        for place, (text, bold) in enumerate(lines)
    )
