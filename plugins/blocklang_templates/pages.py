"""Templates as drawings at true size, laid on pages."""

import math

from blocklang_drawing import Drawing, FullSize, PageWords, frame_for, lay_on_pages, room_for_pieces
from blocklang_drawing.full_size_labels import Grain, Label

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_templates import words
from blocklang_templates.choosing import Numbered
from blocklang_templates.drawing import MARGIN, draw_template

SMALL, LARGE = 9.0, 12.0


def draw_pages(
    plan: SewingPlan, chosen: tuple[Numbered, ...], options: OutputOptions, *, window: bool
) -> tuple[Drawing, ...]:
    """Return the pages of templates."""
    size = LARGE if options.large_print else SMALL
    subject = words.WINDOW_SUBJECT if window else words.SUBJECT
    page = PageWords(plan.block.name, subject, words.notes(chosen, window=window), size)
    room = room_for_pieces(page, options.paper)
    pieces = [_piece(plan, one, size, room, window) for one in chosen]
    return lay_on_pages(pieces, page, options.paper)


def _piece(plan: SewingPlan, one: Numbered, size: float, room: tuple[float, float], window: bool) -> FullSize:
    """Return a template with its grain upright, or level when it only fits on the page so."""
    lines = tuple(words.say_use(plan, use) for use in one.template.uses)
    upright = _draw(one, lines, size, False, window)
    if not _fits(upright, room) and _fits(level := _draw(one, lines, size, True, window), room):
        return FullSize(f"Template {one.number}", level)
    return FullSize(f"Template {one.number}", upright)


def _fits(drawing: Drawing, room: tuple[float, float]) -> bool:
    return drawing.width <= room[0] and drawing.height <= room[1]


def _draw(one: Numbered, lines: tuple[str, ...], size: float, level: bool, window: bool) -> Drawing:
    template = one.template
    turn = math.remainder((0.0 if level else math.pi / 2) - template.grain, math.pi)
    frame = frame_for(template.cut, turn=turn, margin=MARGIN)
    label = Label(str(one.number), template.name, lines, size, Grain.LEVEL if level else Grain.UPRIGHT)
    return draw_template(template, label, frame, window=window)
