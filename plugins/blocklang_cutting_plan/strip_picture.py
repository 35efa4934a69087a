"""One strip, or several that are cut alike, drawn to scale with its numbers, measures and letters."""

from collections.abc import Iterator
from dataclasses import dataclass

from blocklang_drawing import Drawing, Paint, Path, Shape, Text, Texture, Theme, cut_lines, on_plate, text_width
from blocklang_drawing.hatching import hatch
from blocklang_drawing.shapes import polygon, polyline

from blocklang.cloth import ClothPlan, PlannedStrip, SubCuts
from blocklang.cutting import Lay
from blocklang_cutting_plan.contents import StripWords

WIDTH = 504.0
SIZE = 9.0
LEFT, LINE, _GAP = 92.0, 12.0, 4.0
_LEFT_OVER = Texture(45, 4, 0.5)


@dataclass(frozen=True, slots=True)
class Bar:
    """Where a strip lies on the drawing: its left upper corner, and points to the inch."""

    left: float
    top: float
    scale: float
    high: float

    def at(self, along: float, up: float) -> tuple[float, float]:
        """Return where a place in inches from the strip's lower left corner comes to lie."""
        return self.left + along * self.scale, self.top + (self.high - up) * self.scale

    def box(self, start: float, end: float, low: float, high: float) -> tuple[tuple[float, float], ...]:
        """Return the corners of a part of the strip."""
        return self.at(start, low), self.at(end, low), self.at(end, high), self.at(start, high)


def draw_strip(
    cloth: ClothPlan, strip: PlannedStrip, said: StripWords, letters: dict[int, str], theme: Theme
) -> Drawing:
    """Return the strip with what is said about it."""
    usable = float(cloth.cutting.options.usable_width)
    bar = Bar(LEFT, 2.0, (WIDTH - LEFT - 2.0) / usable, float(strip.width))
    below = bar.top + bar.high * bar.scale + _GAP
    lines = list(caption(said))
    shapes = (*_beside(said, theme), *strip_shapes(cloth, strip, usable, bar, letters, theme))
    words = tuple(
        Text((LEFT, below + (place + 1) * LINE - 3), line, SIZE, theme.ink) for place, line in enumerate(lines)
    )
    height = max(below + len(lines) * LINE, 2 * LINE + 6) + 2
    return Drawing(WIDTH, height, (*shapes, *words), f"{said.numbers}, {said.wide}", theme.font)


def _beside(said: StripWords, theme: Theme) -> Iterator[Shape]:
    yield Text((0.0, 11.0), said.numbers, SIZE, theme.ink, bold=True)
    yield Text((0.0, 11.0 + LINE), said.wide, SIZE, theme.ink)


def caption(said: StripWords, start: str = "") -> Iterator[str]:
    """Yield what is cut from a strip, in lines that fit under it."""
    parts = [*said.cuts, *((said.left,) if said.left else ())]
    parts[0] = f"{start}{parts[0]}"
    line = ""
    for part in parts:
        longer = f"{line};  {part}" if line else part
        if line and text_width(longer, SIZE) > WIDTH - LEFT:
            yield line
            longer = part
        line = longer
    yield line


def strip_shapes(
    cloth: ClothPlan, strip: PlannedStrip, usable: float, bar: Bar, letters: dict[int, str], theme: Theme
) -> Iterator[Shape]:
    """Yield the strip itself, as long as the cloth it is cut from."""
    at = 0.0
    whole = bar.box(0.0, usable, 0.0, bar.high)
    yield Path((polygon(whole),), Paint(fill=theme.paper))
    for cut in strip.cuts:
        yield from _run(cloth, cut, at, bar, theme)
        at += float(cut.length)
    if strip.strip_set is None and usable - at > 1e-6:
        yield hatched(bar.box(at, usable, 0.0, bar.high), theme)
    yield Path((polygon(whole),), Paint(stroke=theme.ink, width=1.2))
    yield from _labels(cloth, strip, bar, letters, theme)


def _run(cloth: ClothPlan, cut: SubCuts, at: float, bar: Bar, theme: Theme) -> Iterator[Shape]:
    high, end = float(cut.width), at + float(cut.length)
    if high < bar.high:
        yield hatched(bar.box(at, end, high, bar.high), theme)
    lines = list(cut_lines(cloth.cutting.pieces[cut.piece], cut.count, high, float(cut.length), mirrored=cut.mirrored))
    for later, paint in (
        (False, Paint(stroke=theme.ink, width=0.7)),
        (True, Paint(stroke=theme.quiet, width=0.6, dash=(2, 2))),
    ):
        trails = tuple(
            polyline((bar.at(at + line.start[0], line.start[1]), bar.at(at + line.end[0], line.end[1])))
            for line in lines
            if line.later is later
        )
        yield Path(trails, paint)
    if high < bar.high:
        yield Path((polyline((bar.at(at, high), bar.at(end, high))),), Paint(stroke=theme.ink, width=0.7))


def hatched(ring: tuple[tuple[float, float], ...], theme: Theme) -> Shape:
    """Return the hatching of what is left over."""
    return Path(hatch(ring, _LEFT_OVER), Paint(stroke=theme.quiet, width=_LEFT_OVER.width))


def _labels(cloth: ClothPlan, strip: PlannedStrip, bar: Bar, letters: dict[int, str], theme: Theme) -> Iterator[Shape]:
    """Yield a letter in every shape, or in the middle of all where they are too narrow for that or slant."""
    at = 0.0
    for cut in strip.cuts:
        letter, step = letters[cut.piece], float(cut.length) / cut.count
        is_straight = cloth.cutting.pieces[cut.piece].lay in (Lay.UPRIGHT, Lay.TEMPLATE)
        if is_straight and text_width(letter, SIZE, bold=True) + 3 <= step * bar.scale:
            middles = [at + (number + 0.5) * step for number in range(cut.count)]
        else:
            middles = [at + float(cut.length) / 2]
        for middle in middles:
            across, down = bar.at(middle, float(cut.width) / 2)
            yield from on_plate(Text((across, down + SIZE * 0.35), letter, SIZE, theme.ink, "middle", bold=True), theme)
        at += float(cut.length)
