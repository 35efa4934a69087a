"""The cutting plan as one drawing: every fabric below the one before, its strips in the order of cutting."""

from collections.abc import Iterator
from dataclasses import dataclass

from blocklang_drawing import Drawing, Paint, Path, Shape, Text, Theme, Window, draw_swatch, lines_of, theme_for, to_svg
from blocklang_drawing.shapes import polyline

from blocklang.cloth import ClothPlan, FabricPlan
from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_plan.contents import FabricWords, PlanWords, cloth_of, letters_of, write_words
from blocklang_cutting_plan.stock_picture import draw_stock
from blocklang_cutting_plan.strip_picture import WIDTH, draw_strip
from blocklang_cutting_plan.whole_picture import draw_whole

_MARGIN, _PLAIN, _HEAD, _LARGE, _LEADING = 24.0, 10.0, 14.0, 20.0, 1.4


@dataclass(frozen=True, slots=True)
class _Part:
    """A line of type, or a drawing, one below the other."""

    drawing: Drawing | None
    text: str = ""
    size: float = _PLAIN
    bold: bool = False

    @property
    def height(self) -> float:
        return self.drawing.height + 6 if self.drawing else self.size * _LEADING


def write_svg(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the drawing as SVG text."""
    cloth = cloth_of(plan, options)
    sheet = write_words(plan, cloth, options)
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    parts = [*_heading(sheet)]
    for fabric, spoken in zip(cloth.fabrics, sheet.fabrics, strict=True):
        parts.extend(_fabric(plan, cloth, fabric, (spoken, sheet.headings.stock), theme))
    parts.extend(_written((sheet.headings.notes,), _HEAD, True))
    parts.extend(_written(sheet.notes))
    return to_svg(_stacked(parts, f"{sheet.headings.title}: {sheet.name}", theme))


def _heading(sheet: PlanWords) -> Iterator[_Part]:
    yield from _written((f"{sheet.headings.title}: {sheet.name}",), _LARGE, True)
    yield from _written((sheet.made_for, *sheet.reading))


def _fabric(
    plan: SewingPlan, cloth: ClothPlan, fabric: FabricPlan, words: tuple[FabricWords, str], theme: Theme
) -> Iterator[_Part]:
    spoken, stock = words
    yield _Part(Drawing(WIDTH, 10, (Path((polyline(((0, 10), (WIDTH, 10))),), Paint(stroke=theme.quiet)),), ""))
    yield from _written((f"{spoken.title}: {spoken.buy}",), _HEAD, True)
    yield _Part(draw_swatch(plan.block.fabric(fabric.fabric), theme))
    yield from _written(spoken.facts)
    yield from _written(tuple(f"{letter}  {sentence}" for letter, sentence in spoken.letters))
    if fabric.cut_stock:
        yield from _written((stock,), bold=True)
        for piece, told in zip(fabric.cut_stock, spoken.stock, strict=True):
            yield _Part(draw_stock(cloth, piece, told, letters_of(fabric), theme))
    if fabric.strips:
        yield _Part(draw_whole(cloth, fabric, theme))
    for strip, said in zip(fabric.strips, spoken.strips, strict=True):
        yield _Part(draw_strip(cloth, strip, said, letters_of(fabric), theme))


def _written(sentences: tuple[str, ...], size: float = _PLAIN, bold: bool = False) -> Iterator[_Part]:
    for sentence in sentences:
        for line in lines_of(sentence, size, WIDTH, bold):
            yield _Part(None, line, size, bold)


def _stacked(parts: list[_Part], title: str, theme: Theme) -> Drawing:
    down = _MARGIN
    shapes: list[Shape] = []
    for part in parts:
        if part.drawing is not None:
            shapes.append(_moved(part.drawing, down))
        else:
            shapes.append(Text((_MARGIN, down + part.size), part.text, part.size, theme.ink, bold=part.bold))
        down += part.height
    return Drawing(WIDTH + 2 * _MARGIN, down + _MARGIN, tuple(shapes), title, theme.font)


def _moved(drawing: Drawing, down: float) -> Shape:
    return Window((_MARGIN, down), drawing.width, drawing.height, (0.0, 0.0), drawing.shapes, drawing.title)
