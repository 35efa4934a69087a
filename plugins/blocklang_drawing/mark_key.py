"""The key to the marks of the step pictures, each drawn exactly as it is there."""

from enum import StrEnum
from typing import Final

from blocklang.wording import say
from blocklang_drawing.seam_marks import DASH, SeamEnd, draw_pivot, draw_quarter_tick, draw_seam_end
from blocklang_drawing.shapes import Arrow, Drawing, Paint, Path, Shape, polygon, polyline
from blocklang_drawing.theme import Theme

WIDTH, HEIGHT = 44.0, 22.0


class Mark(StrEnum):
    """A mark of the step pictures."""

    SEAM = "seam"
    STOP = "stop"
    RAW_EDGE = "raw edge"
    PIVOT = "pivot"
    QUARTER = "quarter"
    PRESS = "press"
    OPEN = "open"


_TITLES: Final = {
    Mark.SEAM: say("The mark for: seam"),
    Mark.STOP: say("The mark for: stop"),
    Mark.RAW_EDGE: say("The mark for: raw edge"),
    Mark.PIVOT: say("The mark for: pivot"),
    Mark.QUARTER: say("The mark for: quarter"),
    Mark.PRESS: say("The mark for: press"),
    Mark.OPEN: say("The mark for: open"),
}


def draw_mark(mark: Mark, theme: Theme) -> Drawing:
    """Return one mark on a scrap of cloth."""
    cloth = polygon(((0.5, 0.5), (WIDTH - 0.5, 0.5), (WIDTH - 0.5, HEIGHT - 0.5), (0.5, HEIGHT - 0.5)))
    scrap = Path((cloth,), Paint("#eef2f2", theme.quiet, 0.6))
    return Drawing(WIDTH, HEIGHT, (scrap, *_shapes(mark, theme)), theme.language.say(_TITLES[mark]), theme.font)


def _shapes(mark: Mark, theme: Theme) -> tuple[Shape, ...]:
    middle = HEIGHT / 2
    seam = Path((polyline(((0.5, middle), (WIDTH - 16, middle))),), Paint(stroke=theme.ink, width=1.7, dash=DASH))
    end = SeamEnd((WIDTH - 16, middle), (1.0, 0.0), stops=mark is Mark.STOP)
    match mark:
        case Mark.SEAM:
            return (seam,)
        case Mark.STOP | Mark.RAW_EDGE:
            return seam, *draw_seam_end(end, 15.0, theme)
        case Mark.PIVOT:
            bent = polyline(((0.5, 4.0), (WIDTH / 2, HEIGHT - 6), (WIDTH - 0.5, 4.0)))
            line = Path((bent,), Paint(stroke=theme.ink, width=1.7, dash=DASH))
            return line, draw_pivot((WIDTH / 2, HEIGHT - 6), theme)
        case Mark.QUARTER:
            line = Path(
                (polyline(((0.5, middle), (WIDTH - 0.5, middle))),), Paint(stroke=theme.ink, width=1.7, dash=DASH)
            )
            places = ((WIDTH / 4, False), (WIDTH / 2, True), (WIDTH * 3 / 4, False))
            return line, *(draw_quarter_tick((x, middle), (1.0, 0.0), longer, theme) for x, longer in places)
        case Mark.PRESS | Mark.OPEN:
            line = Path((polyline(((WIDTH / 2, 0.5), (WIDTH / 2, HEIGHT - 0.5))),), Paint(stroke=theme.ink, width=0.7))
            start = WIDTH / 2 - (9 if mark is Mark.OPEN else 6)
            arrow = Arrow((start, middle), (start + 18, middle), theme.ink, 1.3, 5.5, theme.paper, mark is Mark.OPEN)
            return line, arrow
