"""Paper, its margins, and what goes on it at true size."""

import math
from dataclasses import dataclass

from blocklang.geometry import TICKS_PER_INCH, Outline
from blocklang.hooks import Paper
from blocklang.wording import ENGLISH, Language
from blocklang_drawing import words
from blocklang_drawing.frame import Frame
from blocklang_drawing.shapes import Drawing

INCH = 72.0
MILLIMETRE = INCH / 25.4
#: Points to a tick of the block's lattice at true size.
TRUE_SCALE = INCH / TICKS_PER_INCH

#: ANSI/ASME Y14.1 size A, and ISO 216 size A4 (points).
PAPERS = {Paper.LETTER: (8.5 * INCH, 11 * INCH), Paper.A4: (210 * MILLIMETRE, 297 * MILLIMETRE)}
#: No usual printer needs more than this at the edges.
MARGIN = 0.5 * INCH
#: Between pieces on a page, enough to cut them apart roughly.
GAP = 12.0
#: The lines at the top of every page.
HEADING = 32.0
#: A piece may be larger than its room by as little as this and still count as fitting.
_SLACK = 0.01


@dataclass(frozen=True, slots=True)
class FullSize:
    """A drawing at true size (72 points to the inch) and the name it goes by where it is tiled ("A", "Section B")."""

    name: str
    drawing: Drawing


@dataclass(frozen=True, slots=True)
class PageWords:
    """What is written on every page.

    `name` is the block's; `subject` says what the pages are ("Templates"); each of `notes` is a sentence beside the
    squares to measure; `size` is that of the small type in points, 9 or more; `page` is what a page is called in
    "page 1 of 2", for a document that has other pages too. All of it is said in `language`.
    """

    name: str
    subject: str
    notes: tuple[str, ...] = ()
    size: float = 9.0
    page: str = words.THE_PAGE
    language: Language = ENGLISH


def frame_for(outline: Outline, *, turn: float = 0.0, margin: float = 3.0) -> Frame:
    """Return the frame in which an outline lies at true size, inside a margin (points), after a turn (radians)."""
    c, s = math.cos(turn), math.sin(turn)
    xs, ys = zip(*((p.x * c - p.y * s, p.x * s + p.y * c) for p in outline.chords()), strict=True)
    return Frame((min(xs), min(ys), max(xs), max(ys)), TRUE_SCALE, margin, margin, turn=turn)


@dataclass(frozen=True, slots=True)
class Room:
    """Where pieces lie on a page (points)."""

    left: float
    top: float
    width: float
    height: float

    def holds(self, drawing: Drawing) -> bool:
        """Tell whether a drawing fits."""
        return drawing.width <= self.width + _SLACK and drawing.height <= self.height + _SLACK


def paper_size(paper: Paper) -> tuple[float, float]:
    """Return the width and height of a sheet of paper in points."""
    return PAPERS[paper]


def room_on(paper: Paper, band: float, heading: float) -> Room:
    """Return the room between the heading at the top and the band with the squares at the foot."""
    width, height = PAPERS[paper]
    return Room(MARGIN, MARGIN + heading, width - 2 * MARGIN, height - 2 * MARGIN - heading - band - GAP)
