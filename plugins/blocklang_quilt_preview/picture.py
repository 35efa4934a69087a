"""The picture of a quilt: every block in its place, and what it comes to in words."""

from collections.abc import Iterator
from dataclasses import replace

from blocklang_drawing import Drawing, Frame, Place, Shape, Text, Theme, clean_text, lines_of, say_measure
from blocklang_drawing.painting import Painted, paint_patches
from blocklang_drawing.shapes import Paint, Path, Trail, polygon
from blocklang_drawing.stripes import stripe_rings
from blocklang_drawing.turned_block import turn_patches

from blocklang.block import Block, LengthUnit, Patch
from blocklang_quilt_preview import words
from blocklang_quilt_preview.arrangements import Lie
from blocklang_quilt_preview.asking import Quilt

WIDTH, HEIGHT, MARGIN, SIZE, LEADING = 540.0, 620.0, 4.0, 10.0, 14.5
#: Narrower pictures leave this much room for the words below them.
NARROWEST = 280.0
#: Patches with less room than this (square points) on average are painted without lines between them, which would
#: make one dark smear; the paint runs a little over the sides, so that no paper shines through.
TINY, OVER = 14.0, 0.2


def draw_quilt(block: Block, quilt: Quilt, theme: Theme, shown_in: LengthUnit) -> Drawing:
    """Return the quilt with its words below, as large as fits on paper."""
    wide, high = block.size[0] * quilt.columns, block.size[1] * quilt.rows
    frame = Frame.fit((0, 0, wide, high), WIDTH - 2 * MARGIN, HEIGHT - 2 * MARGIN, left=MARGIN, top=MARGIN)
    patches = len(block.patches) * len(quilt.lies)
    paint = _paint_tiny if frame.width * frame.height < TINY * patches else paint_patches
    around = ((frame.left, frame.top), (frame.left + frame.width, frame.top + frame.height))
    shapes: list[Shape] = [*paint(frame, _painted(block, quilt, frame), theme), _border(around, theme)]
    room, down = max(NARROWEST, frame.width), frame.height + 2 * MARGIN + 2
    said = map(theme.language.say, _said(block, quilt, shown_in))
    for line in (line for sentence in said for line in lines_of(sentence, SIZE, room)):
        down += LEADING
        shapes.append(Text((MARGIN, down), line, SIZE, theme.ink))
    return Drawing(room + 2 * MARGIN, down + 5, tuple(shapes), theme.language.say(words.title(block.name)), theme.font)


def _said(block: Block, quilt: Quilt, shown_in: LengthUnit) -> Iterator[str]:
    wide, high = block.size
    yield words.counted(clean_text(block.name), quilt.rows, quilt.columns)
    yield words.measured(say_measure(wide * quilt.columns, shown_in), say_measure(high * quilt.rows, shown_in))
    if len(quilt.lies) > 1:
        yield quilt.arrangement.sentence
    if any(lie.mirrored for lie in quilt.lies):
        yield words.MIRRORED


def _painted(block: Block, quilt: Quilt, frame: Frame) -> Iterator[Painted]:
    wide, high = block.size
    home = replace(frame, bounds=(0.0, 0.0, float(wide), float(high)))
    turned: dict[Lie, list[Painted]] = {}
    for place, lie in enumerate(quilt.lies):
        if lie not in turned:
            turned[lie] = [_at_home(patch, home) for patch in turn_patches(block, lie.quarters, lie.mirrored)]
        row, column = divmod(place, quilt.columns)
        for painted in turned[lie]:
            by = (column * wide * frame.scale, row * high * frame.scale)
            move = (column * wide, (quilt.rows - 1 - row) * high)
            yield Painted(painted.patch, painted.ring, _moved(painted.trail, by), move)


def _at_home(patch: Patch, frame: Frame) -> Painted:
    return Painted(patch, patch.outline.chords(), frame.outline(patch.outline))


def _moved(trail: Trail, by: Place) -> Trail:
    stretches = tuple(replace(stretch, end=_shifted(stretch.end, by)) for stretch in trail.stretches)
    return replace(trail, start=_shifted(trail.start, by), stretches=stretches)


def _shifted(place: Place, by: Place) -> Place:
    return place[0] + by[0], place[1] + by[1]


def _border(corners: tuple[Place, Place], theme: Theme) -> Path:
    (left, top), (right, low) = corners
    ring = ((left, top), (right, top), (right, low), (left, low))
    return Path((polygon(ring),), Paint(stroke=theme.ink, width=theme.line * 1.5))


def _paint_tiny(frame: Frame, painted: Iterator[Painted], theme: Theme) -> tuple[Path, ...]:
    cloth: dict[str, list[Trail]] = {}
    for item in painted:
        if item.patch.stripes is None:
            cloth.setdefault(item.patch.fabric, []).append(item.trail)
            continue
        for fabric, ring in stripe_rings(item.patch, item.ring):
            cloth.setdefault(fabric, []).append(polygon(frame.ring(item.moved(ring))))
    tones = {fabric: theme.fill(fabric).tone for fabric in cloth}
    return tuple(Path(tuple(t), Paint(tones[fabric], tones[fabric], OVER)) for fabric, t in cloth.items())
