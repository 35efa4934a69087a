"""The pages: a heading with room for a name, the pictures in rows, and who made the block."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from statistics import median

from blocklang_drawing import Drawing, Shape, Text, Window, clean_text, lines_of, text_width
from blocklang_drawing.full_size_paper import paper_size
from blocklang_drawing.line_picture import draw_in_lines
from blocklang_drawing.shapes import Paint, Path, polyline

from blocklang.block import Block
from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang.wording import ENGLISH, Language
from blocklang_colouring_page import words

MARGIN, GAP = 45.0, 24.0
#: Type in points, the same in large print where that is as large already.
TITLE, PLAIN, FOOT, LARGE_PLAIN, LARGE_FOOT, LEADING = 22.0, 11.0, 9.0, 14.0, 14.0, 1.35
INK, QUIET, FONT = "#222222", "#555555", "Helvetica, Arial, sans-serif"
#: The line to write a name on.
NAME_LINE = 210.0
#: A line is this share of an average patch's side, but neither too faint to print nor heavier than a pencil.
SHARE, FAINTEST, HEAVIEST = 0.035, 0.3, 1.2
#: Small pictures on a page unless a number is asked for: the most in which half of the patches have this room (square
#: points, 2 mm each way), enough for a pencil.
USUAL, PENCIL = (6, 4, 2), 32.0


@dataclass(frozen=True, slots=True)
class _Page:
    """The size of the paper and of the type, the language, and how far down pictures may begin and must end."""

    width: float
    height: float
    plain: float
    foot: float
    language: Language = ENGLISH
    top: float = 0.0
    bottom: float = 0.0


def usual_count(block: Block, options: OutputOptions) -> int:
    """Return how many small pictures a page has; 0 when even two would be too small to colour."""
    page = _page(options)
    room = (page.width - 2 * MARGIN, page.height - 2 * MARGIN - TITLE * LEADING - 6 * page.plain)
    usual_patch = median(patch.outline.area() for patch in block.patches)
    return next((count for count in USUAL if usual_patch * _best_scale(block, count, room) ** 2 >= PENCIL), 0)


def draw_pages(plan: SewingPlan, counts: tuple[int, ...], options: OutputOptions) -> tuple[Drawing, ...]:
    """Return a page for each number of pictures."""
    page = _page(options)
    return tuple(_draw_page(plan.block, count, page, number, len(counts)) for number, count in enumerate(counts, 1))


def _page(options: OutputOptions) -> _Page:
    plain, foot = (LARGE_PLAIN, LARGE_FOOT) if options.large_print else (PLAIN, FOOT)
    return _Page(*paper_size(options.paper), plain, foot, options.language)


def _draw_page(block: Block, count: int, page: _Page, number: int, pages: int) -> Drawing:
    head, top = _heading(block, page)
    foot, bottom = _foot(block, page, page.language.say(words.page(number, pages)) if pages > 1 else "")
    pictures = _pictures(block, count, replace(page, top=top, bottom=bottom))
    title = page.language.say(words.title(block.name, count))
    return Drawing(page.width, page.height, (*head, *pictures, *foot), title, FONT)


def _heading(block: Block, page: _Page) -> tuple[list[Shape], float]:
    """Return the block's name and the line for a person's name, and how far down they reach."""
    down, room, asked = MARGIN - TITLE * (LEADING - 1), page.width - 2 * MARGIN, page.language.say(words.NAME)
    shapes: list[Shape] = []
    for line in lines_of(block.name, TITLE, room, bold=True)[:2]:
        down += TITLE * LEADING
        shapes.append(Text((MARGIN, down), line, TITLE, INK, bold=True))
    down += page.plain * 2.4
    start = MARGIN + text_width(asked, page.plain) + 6
    rule = polyline(((start, down + 2), (start + NAME_LINE, down + 2)))
    shapes += [Text((MARGIN, down), asked, page.plain, INK), Path((rule,), Paint(stroke=QUIET, width=0.8))]
    return shapes, down + GAP


def _foot(block: Block, page: _Page, number: str) -> tuple[list[Shape], float]:
    """Return who made the block, with the page's number beside, and how far down the room above reaches."""
    beside = text_width(number, page.foot) + 12 if number else 0.0
    room, leading = page.width - 2 * MARGIN - beside, page.foot * LEADING
    credited = map(page.language.say, words.credit_lines(block.credits))
    lines = [line for said in credited for line in lines_of(clean_text(said), page.foot, room)]
    low = page.height - MARGIN
    shapes: list[Shape] = [
        Text((MARGIN, low - (len(lines) - 1 - index) * leading), line, page.foot, QUIET)
        for index, line in enumerate(lines)
    ]
    if number:
        shapes.append(Text((page.width - MARGIN, low), number, page.foot, QUIET, anchor="end"))
    return shapes, low - max(len(lines), 1) * leading - GAP / 2


def _pictures(block: Block, count: int, page: _Page) -> Iterator[Window]:
    room = (page.width - 2 * MARGIN, page.bottom - page.top)
    columns = _columns(block, count, room)
    rows = -(-count // columns)
    wide, high = _cell(count, columns, room)
    drawing = _drawn(block, wide, high, page.language)
    across = columns * drawing.width + (columns - 1) * GAP
    down = rows * drawing.height + (rows - 1) * GAP
    for index in range(count):
        row, column = divmod(index, columns)
        left = MARGIN + (room[0] - across) / 2 + column * (drawing.width + GAP)
        top = page.top + (room[1] - down) / 2 + row * (drawing.height + GAP)
        yield Window((left, top), drawing.width, drawing.height, (0.0, 0.0), drawing.shapes, drawing.title)


def _columns(block: Block, count: int, room: tuple[float, float]) -> int:
    """Return in how many columns the pictures come out largest."""
    return max(range(1, count + 1), key=lambda each: (_scale(block, count, each, room), -each))


def _best_scale(block: Block, count: int, room: tuple[float, float]) -> float:
    return _scale(block, count, _columns(block, count, room), room)


def _cell(count: int, columns: int, room: tuple[float, float]) -> tuple[float, float]:
    rows = -(-count // columns)
    return (room[0] - GAP * (columns - 1)) / columns, (room[1] - GAP * (rows - 1)) / rows


def _scale(block: Block, count: int, columns: int, room: tuple[float, float]) -> float:
    wide, high = _cell(count, columns, room)
    return round(min(wide / block.size[0], high / block.size[1]), 9)


def _drawn(block: Block, width: float, height: float, language: Language) -> Drawing:
    scale = min(width / block.size[0], height / block.size[1])
    side = (block.outline.area() / len(block.patches)) ** 0.5 * scale
    line = max(FAINTEST, min(HEAVIEST, side * SHARE))
    return draw_in_lines(block, INK, width=width, height=height, line=line, language=language)
