"""One section at full size, seen from the back: outline, allowance, seam lines, numbers and marks for joining."""

import math
from dataclasses import dataclass, replace

from blocklang_drawing import Drawing, Frame, clean_text, frame_for, text_width
from blocklang_drawing.full_size_inside import Box, place_box
from blocklang_drawing.shapes import Dot, Paint, Path, Place, Shape, Text, polygon

from blocklang.block import Block
from blocklang.foundation import Foundation, Section, section_outline
from blocklang.geometry import Edge, Outline
from blocklang.wording import ENGLISH, Language
from blocklang_foundation import words
from blocklang_foundation.matching import draw_marks

INK, QUIET = "#000000", "#555555"
_SEAM, _OUTLINE, _ALLOWANCE = 0.9, 1.3, 0.7
_DASH = (5.0, 3.0)
_NUMBER, _SMALL_NUMBER, _NUMBER_MORE = 12.0, 8.0, 3.0
_EDGE = 2.0
#: A mitred corner of the allowance reaches no further than so many allowances.
_LONGEST_MITRE = 3.0


@dataclass(frozen=True, slots=True)
class Drawn:
    """A section's drawing, how it is turned, and the patches in it that have room for no more than their number."""

    drawing: Drawing
    turn: float
    bare: tuple[str, ...]


def draw_section(
    foundation: Foundation,
    paper: int,
    turn: float,
    size: float = 9.0,
    language: Language = ENGLISH,
    within: tuple[Box, ...] = (),
) -> Drawn:
    """Return the first section of a paper, after a turn (radians), with its numbers and marks.

    `size` is that of the names of fabrics (points); numbers are larger. `within` are the parts that come on one page
    each, as `tile_boxes` gives them: words then lie on one of them.
    """
    section = foundation.sections[foundation.papers[paper].sections[0]]
    block = foundation.graph.block
    outline = section_outline(foundation.graph, section.patches)
    frame, ring = _framed(outline, block.seam_allowance, turn)
    numbers, bare = _numbers(block, section, frame, (size, within or (None,)), language)
    shapes: tuple[Shape, ...] = (
        Path((polygon(ring),), Paint(stroke=INK, width=_ALLOWANCE, dash=_DASH)),
        Path(tuple(map(frame.edge, _seams(foundation, section))), Paint(stroke=INK, width=_SEAM)),
        Path((frame.outline(outline),), Paint(stroke=INK, width=_OUTLINE)),
        *_stops(foundation, section, frame),
        *draw_marks(foundation, paper, frame, within),
        *numbers,
    )
    width, height = (max(place[axis] for place in ring) + _EDGE for axis in (0, 1))
    title = language.say(words.from_the_back(section.letter))
    return Drawn(Drawing(width, height, shapes, title), turn, bare)


def _framed(outline: Outline, allowance: int, turn: float) -> tuple[Frame, tuple[Place, ...]]:
    """Return the frame of a section, and the ring of its raw edge in it."""
    frame = replace(frame_for(outline, turn=turn, margin=0.0), mirrored=True)
    ring = _raw_edge(frame.ring(outline.chords()), allowance * frame.scale)
    left, top = (min(place[axis] for place in ring) - _EDGE for axis in (0, 1))
    return replace(frame, left=-left, top=-top), tuple((x - left, y - top) for x, y in ring)


def _raw_edge(ring: tuple[Place, ...], allowance: float) -> tuple[Place, ...]:
    from shapely import Polygon

    grown = Polygon(ring).buffer(allowance, join_style="mitre", mitre_limit=_LONGEST_MITRE)
    places: tuple[Place, ...] = tuple((x, y) for x, y in grown.exterior.coords[:-1])
    return places


def _seams(foundation: Foundation, section: Section) -> tuple[Edge, ...]:
    return tuple(foundation.graph.segments[index].edge for seam in section.seams for index in seam)


def _stops(foundation: Foundation, section: Section, frame: Frame) -> tuple[Dot, ...]:
    """Return a ring at each inner corner of the border where a seam ends: another section is set in there."""
    members = set(section.patches)
    found: dict[int, None] = {}
    for seam in section.seams:
        for index in seam:
            segment = foundation.graph.segments[index]
            found.update(dict.fromkeys((segment.start, segment.end)))
    notches = (j for j in found if _is_notch(foundation, j, members))
    return tuple(
        Dot(frame.at(foundation.graph.junctions[j].at), 3.5, Paint(fill="#ffffff", stroke=INK)) for j in notches
    )


def _is_notch(foundation: Foundation, junction: int, members: set[int]) -> bool:
    graph = foundation.graph
    ends = graph.junctions[junction].ends
    inside, others = 0.0, 0
    for end, following in zip(ends, ends[1:] + ends[:1], strict=True):
        segment = graph.segments[end.segment]
        patch = segment.left if end.at_start else segment.right
        if patch in members:
            inside += (following.heading - end.heading) % math.tau
        elif patch >= 0:
            others += 1
    return others > 0 and math.pi + 1e-3 < inside


def _numbers(
    block: Block,
    section: Section,
    frame: Frame,
    room: tuple[float, tuple[Box | None, ...]],
    language: Language,
) -> tuple[tuple[Text, ...], tuple[str, ...]]:
    size, within = room
    texts: list[Text] = []
    bare: list[str] = []
    for place, patch in enumerate(section.patches, 1):
        number, name = f"{section.letter}{place}", language.say(fabric_name(block, patch))
        ring = frame.ring(block.patches[patch].outline.chords())
        written = _number_and_name(ring, number, name, size, within)
        if not written:
            written = _number_alone(ring, number, within)
            bare.append(f"{number} {name}")
        texts.extend(written)
    return tuple(texts), tuple(bare)


def fabric_name(block: Block, patch: int) -> str:
    """Return what to call the fabric of a patch."""
    one = block.patches[patch]
    if one.stripes is not None:
        return words.STRIP_SET
    fabric = block.fabric(one.fabric)
    return clean_text(fabric.title or fabric.id.rpartition(".")[2])


def _place(ring: tuple[Place, ...], width: float, height: float, within: tuple[Box | None, ...]) -> Place | None:
    found = (place_box(ring, width, height, part) for part in within)
    return next((at for at in found if at is not None), None)


def _number_and_name(
    ring: tuple[Place, ...], number: str, name: str, size: float, within: tuple[Box | None, ...]
) -> tuple[Text, ...]:
    large = size + _NUMBER_MORE
    wide = max(text_width(number, large, bold=True), text_width(name, size))
    at = _place(ring, wide + 8, large + size + 8, within)
    if at is None:
        return ()
    middle = at[0] + wide / 2 + 4
    return (
        Text((middle, at[1] + large + 2), number, large, INK, anchor="middle", bold=True),
        Text((middle, at[1] + large + size + 4), name, size, INK, anchor="middle"),
    )


def _number_alone(ring: tuple[Place, ...], number: str, within: tuple[Box | None, ...]) -> tuple[Text, ...]:
    for size in (_NUMBER, 10.0, _SMALL_NUMBER):
        wide = text_width(number, size, bold=True)
        at = _place(ring, wide + 2, size + 1, within)
        if at is not None:
            return (Text((at[0] + wide / 2 + 1, at[1] + size * 0.9), number, size, INK, anchor="middle", bold=True),)
    x, y = _place(ring, 1.0, 1.0, within) or place_box(ring, 1.0, 1.0) or ring[0]
    return (Text((x, y + size * 0.35), number, size, INK, anchor="middle", bold=True, halo="#ffffff"),)
