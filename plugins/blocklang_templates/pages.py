"""Templates as drawings at true size, laid on pages."""

import math
from dataclasses import replace

from blocklang_drawing import Drawing, FullSize, PageWords, frame_for, lay_on_pages, tile_boxes
from blocklang_drawing.full_size_labels import Grain, Label, with_label

from blocklang.hooks import OutputOptions, Paper
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
    page = PageWords(plan.block.name, subject, words.notes(chosen, window=window), size, language=options.language)
    pieces = [_piece(plan, one, page, options.paper, window) for one in chosen]
    return lay_on_pages(pieces, page, options.paper)


def _piece(plan: SewingPlan, one: Numbered, page: PageWords, paper: Paper, window: bool) -> FullSize:
    """Return a template with its grain upright, or level when it only fits on the page so."""
    lines = tuple(page.language.say(words.say_use(plan, use)) for use in one.template.uses)
    label = Label(str(one.number), page.language.say(one.template.name), lines, page.size, Grain.UPRIGHT)
    drawing = _draw(one, label, page, paper, window)
    if tile_boxes(drawing, page, paper):
        level = _draw(one, replace(label, grain=Grain.LEVEL), page, paper, window)
        drawing = drawing if tile_boxes(level, page, paper) else level
    return FullSize(words.template(one.number), drawing)


def _draw(one: Numbered, label: Label, page: PageWords, paper: Paper, window: bool) -> Drawing:
    template = one.template
    turn = math.remainder((0.0 if label.grain is Grain.LEVEL else math.pi / 2) - template.grain, math.pi)
    frame = frame_for(template.cut, turn=turn, margin=MARGIN)
    bare = draw_template(template, words.titled(one.number, template.name), frame, window=window)
    within = tile_boxes(bare, page, paper)
    return with_label(bare, frame.ring(template.finished.chords()), label, whole=not template.stripes, within=within)
