"""Show a place in a source text: its line, with the place underlined."""

from typing import NamedTuple

from blocklang.diagnostics.values import Span

#: A longer line is shown in part, round the place.
WIDEST = 100
#: What stands for a character that cannot be seen, or that could command a terminal.
HIDDEN = "\N{REPLACEMENT CHARACTER}"


class Snippet(NamedTuple):
    """One line of a source and what is marked in it; `before` and `marked` count columns of a terminal."""

    line_number: int
    line: str
    before: int
    marked: int


def snippet(span: Span) -> Snippet:
    """Return the line of a place, cut to size, and where the place lies in it."""
    text = span.source.text
    line_start = text.rfind("\n", 0, span.start) + 1
    line_end = text.find("\n", span.start)
    line_end = len(text) if line_end < 0 else line_end
    start, end = span.start - line_start, min(max(span.end, span.start), line_end) - line_start
    line = text[line_start:line_end]
    first = max(0, min(start - WIDEST // 3, len(line) - WIDEST)) if len(line) > WIDEST else 0
    shown = printable(line[first : first + WIDEST])
    start, end = start - first, min(end - first, len(shown))
    left, right = "… " if first else "", " …" if first + WIDEST < len(line) else ""
    before = _columns(left + shown[:start])
    return Snippet(span.position()[0], left + shown + right, before, max(1, _columns(shown[start:end])))


def printable(text: str) -> str:
    """Return text with tabs as spaces and hidden characters made visible."""
    if text.isprintable():
        return text
    return "".join(letter if letter.isprintable() else " " if letter == "\t" else HIDDEN for letter in text)


def _columns(text: str) -> int:
    if text.isascii():
        return len(text)
    from unicodedata import combining, east_asian_width

    return sum(0 if combining(letter) else 2 if east_asian_width(letter) in "WF" else 1 for letter in text)
