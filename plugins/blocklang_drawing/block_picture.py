"""The whole finished block: in its fabrics, or in lines with the names of its patches."""

from blocklang.block import Block
from blocklang_drawing import words
from blocklang_drawing.frame import Frame
from blocklang_drawing.names_on_patches import name_patches
from blocklang_drawing.painting import Painted, paint_patches
from blocklang_drawing.shapes import Drawing, Paint, Path, Shape
from blocklang_drawing.theme import Theme

MARGIN = 2.0


def draw_block(block: Block, theme: Theme, *, width: float = 288.0, height: float = 288.0) -> Drawing:
    """Return the block in its fabrics, as large as fits in the box (points)."""
    frame = _frame(block, width, height)
    painted = (Painted(p, p.outline.chords(), frame.outline(p.outline)) for p in block.patches)
    shapes: tuple[Shape, ...] = (*paint_patches(frame, painted, theme), _border(block, frame, theme))
    return _drawing(frame, shapes, words.block(block.name), theme)


def draw_lines(block: Block, theme: Theme, *, width: float = 432.0, height: float = 432.0) -> Drawing:
    """Return the block in lines, with the name of every patch that has room for it."""
    frame = _frame(block, width, height)
    lines = Path(tuple(frame.outline(p.outline) for p in block.patches), Paint(theme.paper, theme.ink, theme.line))
    shapes: tuple[Shape, ...] = (lines, _border(block, frame, theme), *name_patches(frame, block, theme))
    return _drawing(frame, shapes, words.names(block.name), theme)


def _frame(block: Block, width: float, height: float) -> Frame:
    room = (width - 2 * MARGIN, height - 2 * MARGIN)
    return Frame.fit(block.outline.bounds(), *room, left=MARGIN, top=MARGIN)


def _border(block: Block, frame: Frame, theme: Theme) -> Path:
    return Path((frame.outline(block.outline),), Paint(stroke=theme.ink, width=theme.line * 2))


def _drawing(frame: Frame, shapes: tuple[Shape, ...], title: str, theme: Theme) -> Drawing:
    return Drawing(frame.width + 2 * MARGIN, frame.height + 2 * MARGIN, shapes, theme.language.say(title), theme.font)
