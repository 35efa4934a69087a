"""Words on a little plate of paper, so that they read on any fabric and over any line."""

from blocklang_drawing.shapes import Paint, Path, Text, polygon
from blocklang_drawing.theme import Theme
from blocklang_drawing.type_widths import text_width

#: How much paper is left round the words (points).
PLATE = 1.5


def on_plate(text: Text, theme: Theme) -> tuple[Path, Text]:
    """Return a level line of words and the plate under it."""
    wide = text_width(text.text, text.size, text.bold)
    left = text.at[0] - {"start": 0.0, "middle": wide / 2, "end": wide}[text.anchor] - PLATE
    right, top, low = left + wide + 2 * PLATE, text.at[1] - text.size * 0.75 - PLATE, text.at[1] + PLATE + 0.5
    return Path((polygon(((left, top), (right, top), (right, low), (left, low))),), Paint(theme.paper)), text
