"""The blocks of a handout side by side in rows, each with its name below."""

from collections.abc import Iterator

from blocklang_drawing import Drawing, Shape, Text, Window, clean_text, draw_block, shorten, theme_for
from blocklang_drawing.theme import INK

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_handout import words

GAP, LABEL, LEADING, MARGIN = 22.0, 9.0, 14.0, 2.0


def draw_side_by_side(plans: tuple[SewingPlan, ...], options: OutputOptions, width: float, height: float) -> Drawing:
    """Return the blocks in as many columns as make them largest."""
    count = len(plans)
    columns = max(range(1, count + 1), key=lambda each: (min(_room(count, each, width, height)), -each))
    wide, high = _room(count, columns, width, height)
    across = (width - columns * wide - GAP * (columns - 1)) / 2
    shapes: list[Shape] = []
    for place, plan in enumerate(plans):
        row, column = divmod(place, columns)
        shapes += _named(plan, options, across + column * (wide + GAP), row * (high + LEADING + GAP), (wide, high))
    rows = -(-count // columns)
    return Drawing(
        width, rows * (high + LEADING + GAP) - GAP + MARGIN, tuple(shapes), options.language.say(words.CONTENTS)
    )


def _named(
    plan: SewingPlan, options: OutputOptions, left: float, top: float, room: tuple[float, float]
) -> Iterator[Shape]:
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    picture = draw_block(plan.block, theme, width=room[0], height=room[1])
    at = (left + (room[0] - picture.width) / 2, top + room[1] - picture.height)
    yield Window(at, picture.width, picture.height, (0.0, 0.0), picture.shapes, picture.title)
    said = shorten(clean_text(plan.block.name), LABEL, room[0] + GAP - 6)
    yield Text((left + room[0] / 2, top + room[1] + LEADING - 3), said, LABEL, INK, anchor="middle")


def _room(count: int, columns: int, width: float, height: float) -> tuple[float, float]:
    """Return the width and height of one picture, a square at most."""
    rows = -(-count // columns)
    wide = (width - GAP * (columns - 1)) / columns
    high = (height - MARGIN - GAP * (rows - 1)) / rows - LEADING
    return min(wide, max(high, 1.0)), max(min(wide, high), 1.0)
