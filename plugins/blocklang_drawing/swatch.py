"""A swatch of a fabric, for the key."""

from blocklang.block import Fabric
from blocklang_drawing import words
from blocklang_drawing.hatching import hatch
from blocklang_drawing.shapes import Drawing, Paint, Path, Shape, polygon
from blocklang_drawing.theme import Theme


def draw_swatch(fabric: Fabric, theme: Theme, *, width: float = 40.0, height: float = 26.0) -> Drawing:
    """Return a small rectangle of the fabric."""
    ring = ((0.5, 0.5), (width - 0.5, 0.5), (width - 0.5, height - 0.5), (0.5, height - 0.5))
    fill = theme.fill(fabric.id)
    shapes: list[Shape] = [Path((polygon(ring),), Paint(fill=fill.colour))]
    if fill.texture is not None:
        shapes.append(Path(hatch(ring, fill.texture), Paint(stroke=fill.texture_ink, width=fill.texture.width)))
    shapes.append(Path((polygon(ring),), Paint(stroke=theme.ink, width=theme.line)))
    title = theme.language.say(words.swatch(fabric.title or fabric.id))
    return Drawing(width, height, tuple(shapes), title, theme.font)
