"""Pages with words: a title, sentences, one large drawing with its key, and more sentences under headings."""

from collections.abc import Callable, Iterator, Sequence

from blocklang.hooks import OutputFile, OutputOptions, Paper
from blocklang_drawing import words
from blocklang_drawing.full_size_paper import paper_size
from blocklang_drawing.pen import LEADING, MARGIN, Pen, lines_of
from blocklang_drawing.raster import to_png
from blocklang_drawing.shapes import Drawing, Paint, Path, Shape, Text, polyline
from blocklang_drawing.svg import to_svg
from blocklang_drawing.theme import Theme
from blocklang_drawing.type_widths import clean_text, shorten
from blocklang_drawing.written import KeyEntry, Section, Written

#: Type in points.
TITLE, PLAIN, LARGE, FOOT = 22.0, 10.5, 14.0, 9.0
#: A drawing is given at least this much of the page's height.
LEAST_DRAWING = 0.5
_KEY_GAP = 8.0


def write_page(written: Written, paper: Paper, theme: Theme, *, large_print: bool = False) -> tuple[Drawing, ...]:
    """Return the page, and more pages when the words do not fit on it."""
    return write_all((written,), paper, theme, large_print=large_print)


def write_all(
    written: Sequence[Written], paper: Paper, theme: Theme, *, large_print: bool = False
) -> tuple[Drawing, ...]:
    """Return the pages of several, numbered through; everything on them is said in the language of the theme."""
    written = theme.language.tell(tuple(written))
    size = LARGE if large_print else PLAIN
    made = [(each, page) for each in written for page in _pages(each, Pen(paper, theme, size, [[]]))]
    return tuple(
        _finished(each, page, (number, len(made)), paper, theme) for number, (each, page) in enumerate(made, 1)
    )


def _pages(written: Written, pen: Pen) -> list[list[Shape]]:
    _head(pen, written)
    left = pen.bottom - pen.down - _key_height(pen, written.key) - pen.size
    with_words = left - sum(_section_height(pen, section) for section in written.sections)
    least = (pen.bottom - MARGIN) * LEAST_DRAWING
    drawing = written.draw(pen.width, with_words if with_words >= least else max(left, least))
    pen.need(drawing.height)
    pen.place(drawing, MARGIN + (pen.width - drawing.width) / 2, pen.down)
    pen.down += drawing.height + pen.size
    _write_key(pen, written.key)
    for section in written.sections:
        _write_section(pen, section)
    return pen.pages


def as_files(pages: Sequence[Drawing], options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return pages as files: one PDF, or a picture a page ("page-2.png" is the second)."""
    if options.format == "pdf":
        from blocklang_drawing.full_size_pdf import to_pages

        return (OutputFile("", to_pages(pages, options.language)),)
    draw: Callable[[Drawing], bytes] = to_png if options.format == "png" else lambda page: to_svg(page).encode()
    made = map(draw, pages)
    return tuple(OutputFile(f"page-{n}.{options.format}" if n > 1 else "", data) for n, data in enumerate(made, 1))


def _head(pen: Pen, written: Written) -> None:
    pen.down = MARGIN - TITLE * (LEADING - 1)
    for line in lines_of(written.name, TITLE, pen.width, bold=True)[:2]:
        pen.write(line, TITLE, bold=True)
    pen.write(written.subject, pen.size * 1.2, bold=True)
    pen.down += pen.size * 0.3
    for sentence in written.sentences:
        pen.write(sentence, pen.size)
    pen.down += pen.size


def _write_section(pen: Pen, section: Section) -> None:
    pen.need(min(_section_height(pen, section), pen.size * LEADING * 4))
    pen.down += pen.size * 0.4
    pen.write(section.heading, pen.size * 1.15, bold=True)
    for sentence in section.sentences:
        pen.down += pen.size * 0.25
        pen.write(sentence, pen.size)


def _section_height(pen: Pen, section: Section) -> float:
    heading = lines_of(section.heading, pen.size * 1.15, pen.width, bold=True)
    words = sum(0.25 + LEADING * len(lines_of(sentence, pen.size, pen.width)) for sentence in section.sentences)
    return pen.size * (0.5 + 1.15 * LEADING * len(heading) + words)


def _rows(pen: Pen, key: Sequence[KeyEntry]) -> Iterator[tuple[list[tuple[float, KeyEntry, tuple[str, ...]]], float]]:
    """Yield the rows of the key with their heights: each entry with its place from the left and its lines."""
    columns = next((n for n in (3, 2) if all(len(lines) == 1 for lines in _broken(pen, key, n))), 2)
    lines = _broken(pen, key, columns)
    for start in range(0, len(key), columns):
        places = range(start, min(start + columns, len(key)))
        row = [(_column(pen, columns) * (place - start), key[place], lines[place]) for place in places]
        yield row, max(max(e.drawing.height, len(text) * pen.size * LEADING) for _, e, text in row) + 4


def _broken(pen: Pen, key: Sequence[KeyEntry], columns: int) -> list[tuple[str, ...]]:
    room = _column(pen, columns) - 2 * _KEY_GAP
    return [lines_of(entry.sentence, pen.size, room - entry.drawing.width) for entry in key]


def _column(pen: Pen, columns: int) -> float:
    return (pen.width + _KEY_GAP) / columns


def _key_height(pen: Pen, key: Sequence[KeyEntry]) -> float:
    return sum(height for _, height in _rows(pen, key))


def _write_key(pen: Pen, key: Sequence[KeyEntry]) -> None:
    for row, height in _rows(pen, key):
        pen.need(height)
        for left, entry, lines in row:
            pen.place(entry.drawing, MARGIN + left, pen.down + (height - 4 - entry.drawing.height) / 2)
            first = pen.down + (height - 4 - len(lines) * pen.size * LEADING) / 2 - pen.size * 0.3
            for number, line in enumerate(lines, 1):
                at = (MARGIN + left + entry.drawing.width + _KEY_GAP, first + number * pen.size * LEADING)
                pen.pages[-1].append(Text(at, line, pen.size, pen.theme.ink))
        pen.down += height


def _finished(written: Written, shapes: list[Shape], number: tuple[int, int], paper: Paper, theme: Theme) -> Drawing:
    width, height = paper_size(paper)
    foot, right = height - MARGIN + 6.0, width - MARGIN
    rule = Path((polyline(((MARGIN, foot - 14), (right, foot - 14))),), Paint(stroke=theme.quiet, width=0.6))
    counted = theme.language.say(words.page_of(*number))
    named = shorten(clean_text(f"{written.name}: {written.subject}"), FOOT, right - MARGIN - 60)
    line = (
        Text((MARGIN, foot), named, FOOT, theme.quiet),
        Text((right, foot), counted, FOOT, theme.quiet, anchor="end"),
    )
    title = words.page_title(written.name, written.subject, words.called_page_of(words.THE_PAGE, *number))
    return Drawing(width, height, (*shapes, rule, *line), theme.language.say(title), theme.font)
