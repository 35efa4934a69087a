"""One piece of stock, or several that are cut alike, drawn to the scale of the strips with what is cut from it."""

from collections.abc import Iterator

from blocklang_drawing import Drawing, Paint, Path, Shape, Text, Theme, lines_of
from blocklang_drawing.shapes import polygon

from blocklang.cloth import ClothPlan, CutStock
from blocklang_cutting_plan.contents import StockWords
from blocklang_cutting_plan.strip_picture import LEFT, LINE, SIZE, WIDTH, Bar, caption, hatched, strip_shapes


def draw_stock(cloth: ClothPlan, cut: CutStock, said: StockWords, letters: dict[int, str], theme: Theme) -> Drawing:
    """Return the piece, its widest strip at the top, with its name beside it and its strips in words below."""
    longest = max(float(cloth.cutting.options.usable_width), float(cut.stock.width))
    piece = Bar(LEFT, 2.0, (WIDTH - LEFT - 2.0) / longest, float(cut.stock.height))
    below = piece.top + piece.high * piece.scale + 4.0
    words = tuple(_below(said))
    beside = tuple(_beside(said, theme))
    shapes = (
        *beside,
        *_cloth(cloth, cut, piece, letters, theme),
        *(Text((LEFT, below + (row + 1) * LINE - 3), line, SIZE, theme.ink) for row, line in enumerate(words)),
    )
    height = max(below + len(words) * LINE, len(beside) * LINE + 6) + 2
    return Drawing(WIDTH, height, shapes, f"{said.numbers}, {said.size}", theme.font)


def _beside(said: StockWords, theme: Theme) -> Iterator[Shape]:
    lines = [(line, True) for line in _name(said.numbers)]
    lines += [(line, False) for line in lines_of(said.size, SIZE, LEFT - 8)]
    for row, (line, bold) in enumerate(lines):
        yield Text((0.0, 11.0 + row * LINE), line, SIZE, theme.ink, bold=bold)


def _name(numbers: str) -> tuple[str, ...]:
    """Return the name in lines; how many there are, its last word, never stands alone."""
    lines = tuple(lines_of(numbers, SIZE, LEFT - 8, True))
    *which, of, count = numbers.split(" ")
    if lines[-1] != count:
        return lines
    return *lines_of(" ".join(which), SIZE, LEFT - 8, True), f"{of} {count}"


def _below(said: StockWords) -> Iterator[str]:
    for strip in said.strips:
        yield from caption(strip, f"{strip.numbers}, {strip.wide}. ")
    if said.below:
        yield said.below


def _cloth(cloth: ClothPlan, cut: CutStock, piece: Bar, letters: dict[int, str], theme: Theme) -> Iterator[Shape]:
    wide, down = float(cut.stock.width), piece.top
    for strip in cut.strips:
        for _ in range(strip.count):
            bar = Bar(piece.left, down, piece.scale, float(strip.width))
            yield from strip_shapes(cloth, strip, wide, bar, letters, theme)
            down += bar.high * bar.scale
    if cut.left:
        yield hatched(piece.box(0.0, wide, 0.0, float(cut.left)), theme)
    yield Path((polygon(piece.box(0.0, wide, 0.0, piece.high)),), Paint(stroke=theme.ink, width=1.2))
