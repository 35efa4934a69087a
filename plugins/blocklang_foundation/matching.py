"""Marks in the allowance that say which sections meet where: a small letter for each kind of join, a tick at its ends."""

import math

from blocklang_drawing import Frame
from blocklang_drawing.full_size_inside import Box
from blocklang_drawing.shapes import Paint, Path, Place, Shape, Text, polyline

from blocklang.foundation import Foundation, Meeting, meetings_of
from blocklang.geometry import Edge

INK = "#000000"
_SIZE = 9.0
#: How far over the edge of what one page alone shows a letter may lie and still be clear of the fold (points).
_TOWARD_FOLD = 11.0
#: Where along an edge its letter may stand, the best first.
_PARTS = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8)
_LETTERS = "abcdefghijklmnopqrstuvwxyz"


def draw_marks(foundation: Foundation, paper: int, frame: Frame, within: tuple[Box, ...] = ()) -> tuple[Shape, ...]:
    """Return ticks and letters along the border of a paper's first section, outside its line.

    `within` are the parts that come on one page each: a letter then lies on one of them if it can.

    Where sections of one paper meet different neighbours, only the ticks are drawn: the picture of the front tells.
    """
    sections = foundation.papers[paper].sections
    lettered = len({_neighbours(foundation, place) for place in sections}) == 1
    away = foundation.graph.block.seam_allowance * frame.scale
    letters, own = _small_letters(foundation), foundation.sections[sections[0]].letter
    shapes: list[Shape] = []
    for meeting in meetings_of(foundation, sections[0]):
        if meeting.other is not None:
            shapes.extend(_ticks(frame, meeting, away))
            letter = letters[_pair(own, foundation.sections[meeting.other].letter)] if lettered else ""
            shapes.extend(_text(frame, edge, letter, away, within) for edge in meeting.edges if letter)
    return tuple(shapes)


def _neighbours(foundation: Foundation, section: int) -> tuple[str, ...]:
    """Return the letters round a section, read from the place where they read least."""
    round_it = [
        "" if meeting.other is None else foundation.sections[meeting.other].letter
        for meeting in meetings_of(foundation, section)
    ]
    return min(tuple(round_it[at:] + round_it[:at]) for at in range(len(round_it)))


def _small_letters(foundation: Foundation) -> dict[tuple[str, str], str]:
    """Return the small letter of each kind of join: the same for all joins of the same two papers."""
    owner = {patch: one.letter for one in foundation.sections for patch in one.patches}
    section = {patch: place for place, one in enumerate(foundation.sections) for patch in one.patches}
    kinds: dict[tuple[str, str], str] = {}
    for segment in foundation.graph.seams:
        left, right = segment.patches
        if section[left] != section[right]:
            kinds.setdefault(_pair(owner[left], owner[right]), _letter_at(len(kinds)))
    return kinds


def _letter_at(place: int) -> str:
    # Beyond z nothing is written: the picture of the front has to tell.
    return _LETTERS[place] if place < len(_LETTERS) else ""


def _pair(a: str, b: str) -> tuple[str, str]:
    return (a, b) if a <= b else (b, a)


def _ticks(frame: Frame, meeting: Meeting, away: float) -> list[Path]:
    ends = (meeting.edges[0], 0.0, 0.02), (meeting.edges[-1], 1.0, 0.98)
    lines = []
    for edge, at, beside in ends:
        here, out = frame.at(edge.at(at)), _outward(frame, edge.at(at), edge.at(beside), at < beside)
        lines.append(polyline((here, (here[0] + out[0] * away, here[1] + out[1] * away))))
    return [Path(tuple(lines), Paint(stroke=INK, width=0.8))]


def _text(frame: Frame, edge: Edge, letter: str, away: float, within: tuple[Box, ...]) -> Text:
    tried = [_text_at(frame, edge, letter, away, part) for part in _PARTS]
    kept = (text for room in (0.0, _TOWARD_FOLD) for text in tried if any(_lies_in(text, box, room) for box in within))
    return next(kept, tried[0])


def _text_at(frame: Frame, edge: Edge, letter: str, away: float, part: float) -> Text:
    x, y = frame.at(edge.at(part))
    out = _outward(frame, edge.at(part - 0.05), edge.at(part + 0.05), True)
    return Text(
        (x + out[0] * away / 2, y + out[1] * away / 2 + _SIZE * 0.32), letter, _SIZE, INK, anchor="middle", bold=True
    )


def _lies_in(text: Text, box: Box, more: float) -> bool:
    (x, y), (left, top, right, low) = text.at, box
    inset = _SIZE / 2 - more
    return left + inset <= x <= right - inset and top + inset + _SIZE / 2 <= y <= low - inset


def _outward(frame: Frame, start: Place, end: Place, forward: bool) -> Place:
    """Return the direction out of the section, on the drawing, beside a line of its border from start to end."""
    (ax, ay), (bx, by) = frame.at(start), frame.at(end)
    if not forward:
        ax, ay, bx, by = bx, by, ax, ay
    length = math.hypot(bx - ax, by - ay) or 1.0
    along = (bx - ax) / length, (by - ay) / length
    # Seen from the back a counterclockwise border runs clockwise on the page, where y goes down: out is to its left.
    return along[1], -along[0]
