"""The block with the place of every patch in the order."""

from blocklang_drawing import Drawing, Frame, Paint, Path, Shape, Text, Theme, on_plate, text_width
from blocklang_drawing.names_on_patches import room_in
from blocklang_drawing.painting import Painted, paint_patches

from blocklang.block import Block
from blocklang_paper_pieces import words

MARGIN = 2.0
SMALLEST, LARGEST = 8.0, 13.0
#: How much of the room across stays free at both sides together (points).
CLEAR, CLEAR_OF_PAPER = 2.5, 4.0


def draw_order(block: Block, places: tuple[int, ...], theme: Theme, *, width: float, height: float) -> Drawing:
    """Return the block, as large as fits, each patch with its number where that can be read."""
    room = (width - 2 * MARGIN, height - 2 * MARGIN)
    frame = Frame.fit(block.outline.bounds(), *room, left=MARGIN, top=MARGIN)
    painted = tuple(Painted(p, p.outline.chords(), frame.outline(p.outline)) for p in block.patches)
    numbers = (shape for patch, place in enumerate(places) for shape in _number(frame, block, patch, str(place), theme))
    border = Path((frame.outline(block.outline),), Paint(stroke=theme.ink, width=theme.line * 2))
    shapes: tuple[Shape, ...] = (
        *paint_patches(frame, painted, theme),
        border,
        *numbers,
    )
    title = theme.language.say(words.order_shown(block.name))
    return Drawing(frame.width + 2 * MARGIN, frame.height + 2 * MARGIN, shapes, title, theme.font)


def _number(frame: Frame, block: Block, patch: int, number: str, theme: Theme) -> tuple[Shape, ...]:
    """Return a number, on paper of its own where the fabric has lines or stripes; nothing where there is no room."""
    drawn = block.patches[patch]
    wide = text_width(number, 1.0, bold=True)
    at, half, tall = room_in(frame.ring(drawn.outline.chords()), wide * LARGEST)
    fill = theme.fill(drawn.fabric)
    plain = fill.texture is None and drawn.stripes is None
    size = min(LARGEST, (2 * half - (CLEAR if plain else CLEAR_OF_PAPER)) / wide, tall * 0.9)
    if size < SMALLEST:
        return ()
    place = (at[0], at[1] + size * 0.35)
    if plain:
        return (Text(place, number, size, fill.ink, "middle", True),)
    return on_plate(Text(place, number, size, theme.ink, "middle", True), theme)
