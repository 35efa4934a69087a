"""Foundations laid on pages: what to know first, then each paper once, at true size."""

import math
from collections.abc import Iterable
from dataclasses import replace

from blocklang_drawing import (
    Drawing,
    FullSize,
    PageWords,
    Theme,
    lay_on_pages,
    room_for_pieces,
    say_measure,
    shorten,
    theme_for,
    tile_boxes,
)
from blocklang_drawing.full_size_furniture import wrap_words
from blocklang_drawing.full_size_inside import Box
from blocklang_drawing.placing import lying_straight
from blocklang_drawing.shapes import Shape, Text, Window

from blocklang.block import Block, LengthUnit
from blocklang.foundation import Foundation, section_outline
from blocklang.hooks import OutputOptions
from blocklang_foundation import words
from blocklang_foundation.front import draw_front, draw_section_front
from blocklang_foundation.section_drawing import Drawn, draw_section

SMALL, LARGE = 9.0, 12.0
_FRONT, _THUMBNAIL, _BETWEEN, _LEADING = 190.0, 60.0, 12.0, 1.3
#: The words below a section and the picture beside them are as wide as this (points): one tile of a large section.
_WORDS = 250.0


def draw_pages(block: Block, foundation: Foundation, options: OutputOptions) -> tuple[Drawing, ...]:
    """Return the pages of a foundation."""
    size = LARGE if options.large_print else SMALL
    theme = theme_for(block.fabrics, options.black_and_white, options.language)
    page = PageWords(block.name, words.SUBJECT, words.NOTES, size, language=options.language)
    room = room_for_pieces(page, options.paper)
    first = FullSize(words.INTRODUCTION, _introduction(foundation, theme, size, room[0], options.unit))
    papers = [_paper(foundation, place, theme, options, page) for place in range(len(foundation.papers))]
    pages = lay_on_pages((first, *papers), page, options.paper)
    if len(pages) == 1:
        return pages
    # Tall pieces come first on the pages, so the introduction is given a page of its own.
    alone = FullSize(first.name, replace(first.drawing, height=max(room[1], first.drawing.height)))
    return lay_on_pages((alone, *papers), page, options.paper)


def _introduction(foundation: Foundation, theme: Theme, size: float, width: float, unit: LengthUnit) -> Drawing:
    front = draw_front(foundation, theme, _FRONT)
    beside = front.width + _BETWEEN
    how = words.how_lines(say_measure(foundation.graph.block.seam_allowance, unit))
    said = [words.FRONT, *words.count_lines(foundation), *words.join_lines(foundation), "", *how]
    texts, low = _written(theme.language.tell(said), (beside, 0.0), width - beside, size)
    shapes: tuple[Shape, ...] = (_placed(front, (0.0, 0.0)), *texts)
    return Drawing(width, max(front.height, low), shapes, theme.language.say(words.INTRODUCTION_SHOWN))


def _paper(foundation: Foundation, paper: int, theme: Theme, options: OutputOptions, page: PageWords) -> FullSize:
    """Return a paper as it lies in the block, or turned where only so it fits on a page."""
    section = foundation.sections[foundation.papers[paper].sections[0]]
    straight = lying_straight(section_outline(foundation.graph, section.patches))

    def draw(turn: float, within: tuple[Box, ...] = ()) -> Drawing:
        drawn = draw_section(foundation, paper, turn, page.size, theme.language, within)
        return _labelled(foundation, paper, drawn, theme, options.copies, page.size)

    name = words.section(section.letter)
    for turn in (straight, straight + math.pi / 2):
        drawing = draw(turn)
        if not tile_boxes(drawing, page, options.paper):
            return FullSize(name, drawing)
    return FullSize(name, draw(straight, tile_boxes(draw(straight), page, options.paper)))


def _labelled(foundation: Foundation, paper: int, drawn: Drawn, theme: Theme, copies: int, size: float) -> Drawing:
    """Return a section with a picture of its front below it, how often to print it, and a key to small patches."""
    sections = foundation.papers[paper].sections
    section = foundation.sections[sections[0]]
    front = draw_section_front(foundation, section.patches, theme, _THUMBNAIL, drawn.turn)
    top = drawn.drawing.height + _BETWEEN / 2
    width = max(drawn.drawing.width, _WORDS)
    said = [words.print_line(section.letter, len(sections) * copies), words.THIS_FRONT]
    if drawn.bare:
        said.append("; ".join(drawn.bare) + ".")
    texts, low = _written(
        theme.language.tell(said), (front.width + _BETWEEN / 2, top), _WORDS - front.width - _BETWEEN / 2 - 2, size
    )
    shapes = (*drawn.drawing.shapes, _placed(front, (0.0, top)), *texts)
    return Drawing(width, max(low, top + front.height) + 4, shapes, drawn.drawing.title)


def _written(said: Iterable[str], at: tuple[float, float], room: float, size: float) -> tuple[tuple[Text, ...], float]:
    """Return sentences set in a width, the first in bold, and how far down they reach."""
    x, y = at
    texts = []
    for place, sentence in enumerate(said):
        bold = place == 0
        for line in wrap_words(sentence, size, room, bold):
            y += size * _LEADING
            texts.append(Text((x, y), shorten(line, size, room, bold), size, "#000000", bold=bold))
        y += size * 0.25
    return tuple(texts), y + size * 0.4


def _placed(drawing: Drawing, at: tuple[float, float]) -> Window:
    return Window(at, drawing.width, drawing.height, (0.0, 0.0), drawing.shapes, drawing.title)
