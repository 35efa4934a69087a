"""The block in lines with the names of its patches, or, where they do not fit, with numbers and a key to them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from blocklang_drawing import Drawing, Frame, Shape, Text, Theme, text_width
from blocklang_drawing.line_picture import MARGIN, seam_paths
from blocklang_drawing.room_for_words import room_for_words

from blocklang.block import Block
from blocklang.plan import SewingPlan
from blocklang_diagram import words
from blocklang_diagram.key import Entry, draw_key

SIZES = (11.0, 10.0, 9.0, 8.0)
#: Where even numbers do not fit, the picture grows to this width (points): Letter paper with an inch to spare.
WIDEST = 540.0
#: Kept free between words and the lines round them; how far letters and figures reach above their line, and below.
CLEAR, ABOVE, BELOW = 1.4, 0.76, 0.22


@dataclass(frozen=True, slots=True)
class _Label:
    patch: int
    words: str


def draw_numbered(plan: SewingPlan, theme: Theme, side: float) -> Drawing:
    """Return the block with names when every name fits, else with the numbers of the cutting list's lines."""
    named = tuple(_Label(index, patch.id) for index, patch in enumerate(plan.block.patches))
    frame = _frame(plan.block, side)
    texts = _all_that_fit(frame, plan.block, named, theme)
    if len(texts) == len(named):
        return _drawing(frame, plan.block, theme, texts)
    return _with_key(plan, theme, side)


def _with_key(plan: SewingPlan, theme: Theme, side: float) -> Drawing:
    pieces = enumerate(plan.cutting.pieces, 1)
    numbers = tuple(_Label(patch, str(number)) for number, piece in pieces for patch in piece.patches)
    texts: tuple[Text, ...] = ()
    for wide in (side, WIDEST):
        frame = _frame(plan.block, wide)
        texts = _all_that_fit(frame, plan.block, numbers, theme)
        if len(texts) == len(numbers):
            break
    bare = len(numbers) - len(texts)
    notes = (words.left_out(bare),) if bare else ()
    top = frame.height + 2 * MARGIN + 10
    key = draw_key(
        theme.language.tell(tuple(_entries(plan))), theme.language.tell(notes), theme, frame.width, (MARGIN, top)
    )
    return _drawing(frame, plan.block, theme, (*texts, *key.shapes), key.width, top + key.height)


def _entries(plan: SewingPlan) -> Iterator[Entry]:
    for number, piece in enumerate(plan.cutting.pieces, 1):
        stripes = plan.block.patches[piece.patches[0]].stripes
        cloth = _said(plan.block, piece.fabric)
        if stripes is not None:
            cloth = words.strip_set([_said(plan.block, fabric) for fabric in stripes.fabrics])
        fabrics = (piece.fabric,) if stripes is None else stripes.fabrics
        yield Entry(str(number), fabrics, words.counted(piece.name, cloth, len(piece.patches)))


def _said(block: Block, fabric: str) -> str:
    return block.fabric(fabric).title or fabric.rpartition(".")[2]


def _all_that_fit(frame: Frame, block: Block, labels: Sequence[_Label], theme: Theme) -> tuple[Text, ...]:
    """Return the labels in the largest type in which all of them fit, else those that fit in the smallest."""
    texts: list[Text] = []
    for size in SIZES:
        texts = []
        for label in labels:
            text = _text(frame, block, label, size, theme)
            if text is None and size != SIZES[-1]:
                break
            texts += [text] if text is not None else []
        if len(texts) == len(labels):
            break
    return tuple(texts)


def _text(frame: Frame, block: Block, label: _Label, size: float, theme: Theme) -> Text | None:
    outline = block.patches[label.patch].outline
    below = 0.0 if label.words.isdigit() else BELOW
    wide, high = text_width(label.words, size) + 2 * CLEAR, size * (ABOVE + below) + 2 * CLEAR
    if outline.area() * frame.scale**2 < wide * high:
        return None
    ring = frame.ring(outline.chords())
    at = room_for_words(ring, wide, high, frame.at(outline.centroid()))
    if at is None:
        return None
    return Text((at[0], at[1] + size * (ABOVE - below) / 2), label.words, size, theme.ink, anchor="middle")


def _frame(block: Block, side: float) -> Frame:
    room = side - 2 * MARGIN
    return Frame.fit(block.outline.bounds(), room, room, left=MARGIN, top=MARGIN)


def _drawing(
    frame: Frame, block: Block, theme: Theme, shapes: Sequence[Shape], width: float = 0.0, height: float = 0.0
) -> Drawing:
    wide, high = max(width, frame.width + 2 * MARGIN), max(height, frame.height + 2 * MARGIN)
    lines = seam_paths(frame, block, theme.ink, theme.line)
    return Drawing(wide, high, (*lines, *shapes), theme.language.say(words.names_shown(block.name)), theme.font)
