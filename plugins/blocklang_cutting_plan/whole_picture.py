"""The whole length of a fabric to scale, every strip where it is cut."""

from collections.abc import Iterator

from blocklang_drawing import Drawing, Paint, Path, Shape, Text, Texture, Theme
from blocklang_drawing.hatching import hatch
from blocklang_drawing.shapes import Place, polygon, polyline

from blocklang.cloth import ClothPlan, FabricPlan
from blocklang_cutting_plan import words

SIZE = 8.0
WIDTH, HIGHEST = 150.0, 260.0
_SCALE = 2.6
_LEFT_OVER = Texture(45, 4, 0.4)


def draw_whole(cloth: ClothPlan, fabric: FabricPlan, theme: Theme) -> Drawing:
    """Return the fabric as it is bought, the first strip at the top, numbers at the right."""
    usable, bought = float(cloth.cutting.options.usable_width), float(fabric.yards * 36)
    scale = min(_SCALE, HIGHEST / bought, (WIDTH - 46) / usable)
    shapes = [*_strips(fabric, usable * scale, scale, theme)]
    end = float(fabric.length) * scale
    if bought > float(fabric.length):
        shapes.append(
            Path(hatch(_box(0, usable * scale, end, bought * scale), _LEFT_OVER), Paint(stroke=theme.quiet, width=0.4))
        )
    shapes.append(Path((polygon(_box(0, usable * scale, 0, bought * scale)),), Paint(stroke=theme.ink, width=1.0)))
    return Drawing(
        WIDTH,
        bought * scale + 2 * SIZE,
        tuple(shapes),
        theme.language.say(words.whole_length(fabric.fabric)),
        theme.font,
    )


def _strips(fabric: FabricPlan, wide: float, scale: float, theme: Theme) -> Iterator[Shape]:
    top, free = 0.0, SIZE * 0.3
    for strip in fabric.strips:
        start = top
        for _ in range(strip.count):
            yield from _one([float(c.length) for c in strip.cuts], top, float(strip.width), wide, scale, theme)
            top += float(strip.width) * scale
        middle = max((start + top) / 2, free)
        if middle <= float(fabric.yards * 36) * scale + SIZE:
            said = str(strip.first) if strip.count == 1 else f"{strip.first}–{strip.last}"
            yield Text((wide + 6, middle + SIZE * 0.35 + 1), said, SIZE, theme.ink)
            free = middle + SIZE + 1


def _one(lengths: list[float], top: float, high: float, wide: float, scale: float, theme: Theme) -> Iterator[Shape]:
    low, at = top + high * scale + 1, 0.0
    lines = [polyline(((1, low), (1 + wide, low)))]
    for length in lengths:
        at += length
        lines.append(polyline(((1 + at * scale, top + 1), (1 + at * scale, low))))
    if lengths and wide - at * scale > 0.5:
        yield Path(hatch(_box(at * scale, wide, top, low - 1), _LEFT_OVER), Paint(stroke=theme.quiet, width=0.4))
    yield Path(tuple(lines), Paint(stroke=theme.ink, width=0.5))


def _box(left: float, right: float, top: float, low: float) -> tuple[Place, ...]:
    return (1 + left, top + 1), (1 + right, top + 1), (1 + right, low + 1), (1 + left, low + 1)
