"""A block in lines alone: its seams, the lines of its stripes, and its outline a little heavier."""

from blocklang.block import Block
from blocklang.wording import ENGLISH, Language
from blocklang_drawing import words
from blocklang_drawing.frame import Frame
from blocklang_drawing.shapes import Drawing, Paint, Path, polygon
from blocklang_drawing.stripes import stripe_rings

MARGIN = 2.0


def draw_in_lines(
    block: Block, ink: str, *, width: float, height: float, line: float = 0.7, language: Language = ENGLISH
) -> Drawing:
    """Return the block in lines, as large as fits in the box (points)."""
    room = (width - 2 * MARGIN, height - 2 * MARGIN)
    frame = Frame.fit(block.outline.bounds(), *room, left=MARGIN, top=MARGIN)
    wide, high = frame.width + 2 * MARGIN, frame.height + 2 * MARGIN
    return Drawing(wide, high, line_paths(frame, block, ink, line), language.say(words.in_lines(block.name)))


def line_paths(frame: Frame, block: Block, ink: str, line: float) -> tuple[Path, ...]:
    """Return the stripes, the seams and the outline of a block."""
    stripes = tuple(
        polygon(frame.ring(ring))
        for patch in block.patches
        if patch.stripes is not None
        for _, ring in stripe_rings(patch, patch.outline.chords())
    )
    return Path(stripes, Paint(stroke=ink, width=line * 0.6)), *seam_paths(frame, block, ink, line)


def seam_paths(frame: Frame, block: Block, ink: str, line: float) -> tuple[Path, Path]:
    """Return the seams and the outline of a block, without the lines of its stripes."""
    seams = tuple(frame.outline(patch.outline) for patch in block.patches)
    return (
        Path(seams, Paint(stroke=ink, width=line)),
        Path((frame.outline(block.outline),), Paint(stroke=ink, width=line * 2)),
    )
