"""Small pictures of the front: the whole block with its sections, and one section in its fabrics."""

from dataclasses import replace

from blocklang_drawing import Drawing, Frame, Theme, frame_for, text_width
from blocklang_drawing.full_size_inside import place_box
from blocklang_drawing.painting import Painted, paint_patches
from blocklang_drawing.shapes import Dot, Paint, Path, Shape, Text

from blocklang.block import Block
from blocklang.foundation import Foundation, section_outline
from blocklang_foundation import words

_MARGIN = 2.0
_LETTER, _SMALLEST = 12.0, 8.0


def draw_front(foundation: Foundation, theme: Theme, side: float) -> Drawing:
    """Return the block from the front, its sections in heavy lines with their letters."""
    block = foundation.graph.block
    frame = Frame.fit(block.outline.bounds(), side - 2 * _MARGIN, side - 2 * _MARGIN, left=_MARGIN, top=_MARGIN)
    outlines = [section_outline(foundation.graph, section.patches) for section in foundation.sections]
    heavy = Path(tuple(map(frame.outline, outlines)), Paint(stroke=theme.ink, width=1.8))
    letters = (
        shape
        for section, outline in zip(foundation.sections, outlines, strict=True)
        for shape in _letter(frame.ring(outline.chords()), section.letter, theme)
    )
    shapes = (*_painted(block, tuple(range(len(block.patches))), frame, theme), heavy, *letters)
    return Drawing(
        frame.width + 2 * _MARGIN,
        frame.height + 2 * _MARGIN,
        shapes,
        theme.language.say(words.from_the_front(block.name)),
    )


def draw_section_front(
    foundation: Foundation, patches: tuple[int, ...], theme: Theme, side: float, turn: float
) -> Drawing:
    """Return one section from the front in its fabrics, turned as its drawing from the back is."""
    bounds = frame_for(section_outline(foundation.graph, patches), turn=turn).bounds
    frame = Frame.fit(bounds, side - 2 * _MARGIN, side - 2 * _MARGIN, left=_MARGIN, top=_MARGIN)
    shapes = _painted(foundation.graph.block, patches, replace(frame, turn=turn), theme)
    return Drawing(
        frame.width + 2 * _MARGIN, frame.height + 2 * _MARGIN, shapes, theme.language.say(words.SECTION_FRONT)
    )


def _painted(block: Block, patches: tuple[int, ...], frame: Frame, theme: Theme) -> tuple[Path, ...]:
    chosen = (block.patches[patch] for patch in patches)
    return paint_patches(frame, (Painted(p, p.outline.chords(), frame.outline(p.outline)) for p in chosen), theme)


def _letter(ring: tuple[tuple[float, float], ...], letter: str, theme: Theme) -> tuple[Shape, ...]:
    """Return a letter on a light disc, so that it reads on any fabric; nothing where there is no room for it."""
    for size in (_LETTER, 10.0, _SMALLEST):
        across = max(text_width(letter, size, bold=True), size) + 4
        at = place_box(ring, across, across)
        if at is not None:
            middle = at[0] + across / 2, at[1] + across / 2
            disc = Dot(middle, across / 2, Paint(fill=theme.paper, stroke=theme.ink, width=0.6))
            place = (middle[0], middle[1] + size * 0.36)
            return disc, Text(place, letter, size, theme.ink, anchor="middle", bold=True)
    return ()
