"""A pen that writes lines down pages and begins a new page when one is full."""

from dataclasses import dataclass

from blocklang.hooks import Paper
from blocklang_drawing.full_size_paper import paper_size
from blocklang_drawing.shapes import Drawing, Shape, Text, Window
from blocklang_drawing.theme import Theme
from blocklang_drawing.type_widths import clean_text, shorten, text_width

MARGIN = 45.0
#: The height of a line as a part of the size of its type.
LEADING = 1.38


@dataclass(slots=True)
class Pen:
    """Where writing goes on: pages so far, and how far down the last one is written."""

    paper: Paper
    theme: Theme
    size: float
    pages: list[list[Shape]]
    down: float = MARGIN

    @property
    def width(self) -> float:
        """The room between the margins."""
        return paper_size(self.paper)[0] - 2 * MARGIN

    @property
    def bottom(self) -> float:
        """How far down a page is written."""
        return paper_size(self.paper)[1] - MARGIN - 16.0

    def need(self, height: float) -> None:
        """Begin a new page when so much does not fit on this one."""
        if self.down + height > self.bottom + 0.5 and self.down > MARGIN:
            self.pages.append([])
            self.down = MARGIN

    def write(self, text: str, size: float, *, bold: bool = False, indent: float = 0.0) -> None:
        """Write a paragraph, broken into lines."""
        for line in lines_of(text, size, self.width - indent, bold):
            self.need(size * LEADING)
            self.down += size * LEADING
            self.pages[-1].append(Text((MARGIN + indent, self.down), line, size, self.theme.ink, bold=bold))

    def place(self, drawing: Drawing, left: float, top: float) -> None:
        """Put a drawing on the page."""
        window = Window((left, top), drawing.width, drawing.height, (0.0, 0.0), drawing.shapes, drawing.title)
        self.pages[-1].append(window)


def lines_of(text: str, size: float, room: float, bold: bool = False) -> tuple[str, ...]:
    """Break a text into lines no wider than the room; a word that is wider is cut short."""
    lines: list[str] = []
    for word in clean_text(text).split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size, bold) <= room:
            lines[-1] = longer
        else:
            lines.append(shorten(word, size, room, bold))
    return tuple(lines)
