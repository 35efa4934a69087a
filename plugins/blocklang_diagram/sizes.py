"""One block at several finished sizes side by side, all to one scale."""

from dataclasses import dataclass, replace
from fractions import Fraction

from blocklang_drawing import Drawing, Frame, Shape, Text, Theme, clean_text, lines_of, say_measure, text_width
from blocklang_drawing.painting import Painted, paint_patches
from blocklang_drawing.shapes import Paint, Path

from blocklang.block import Block, LengthUnit
from blocklang.geometry import TICKS_PER_INCH
from blocklang.wording import Language
from blocklang_diagram import words

WIDTH, MARGIN, GAP, LABEL, LEADING = 540.0, 4.0, 16.0, 9.0, 12.5
#: Finished sizes that blocks are usually made in, along the longer side.
INCHES = (4, 6, 9, 12)
CENTIMETRES = (10, 15, 20, 30)


@dataclass(frozen=True, slots=True)
class _Size:
    """The block at one size: its width and height in ticks, and the lines of its label."""

    size: tuple[float, float]
    label: tuple[str, ...]

    @property
    def words(self) -> float:
        """How wide the label is (points)."""
        return max(text_width(line, LABEL) for line in self.label)


def draw_sizes(block: Block, theme: Theme, shown_in: LengthUnit) -> Drawing:
    """Return the strip, no wider than fits on paper; sizes are inches, or centimetres where the block is metric."""
    each = [_sized(block, longest, shown_in, theme.language) for longest in _sizes(shown_in)]
    scale = _scale(each)
    columns = [max(size.size[0] * scale, size.words) for size in each]
    foot = MARGIN + max(size.size[1] for size in each) * scale
    left, shapes = MARGIN, list[Shape]()
    for size, column in zip(each, columns, strict=True):
        wide, high = (length * scale for length in size.size)
        frame = Frame.fit(block.outline.bounds(), wide, high, left=left + (column - wide) / 2, top=foot - high)
        shapes += _picture(block, frame, theme)
        shapes += _label(size, left + column / 2, foot, theme)
        left += column + GAP
    return _drawing(block, theme, shapes, left - GAP, foot + LEADING * max(len(size.label) for size in each) + 6)


def _drawing(block: Block, theme: Theme, shapes: list[Shape], right: float, foot: float) -> Drawing:
    for line in lines_of(theme.language.say(words.sizes(clean_text(block.name))), LABEL, right - MARGIN):
        foot += LEADING
        shapes.append(Text((MARGIN, foot), line, LABEL, theme.quiet))
    return Drawing(
        right + MARGIN, foot + 4, tuple(shapes), theme.language.say(words.sizes_shown(block.name)), theme.font
    )


def _sizes(shown_in: LengthUnit) -> tuple[Fraction, ...]:
    if shown_in is LengthUnit.INCH:
        return tuple(map(Fraction, INCHES))
    return tuple(Fraction(length * 50, 127) for length in CENTIMETRES)


def _sized(block: Block, longest: Fraction, shown_in: LengthUnit, language: Language) -> _Size:
    wide, high = block.size
    by = longest * TICKS_PER_INCH / max(wide, high)
    measures = [say_measure(round(length * by), shown_in) for length in (wide, high)]
    label = (measures[0],) if wide == high else (measures[0], words.times_high(measures[1]))
    return _Size((float(wide * by), float(high * by)), language.tell(label))


def _scale(each: list[_Size]) -> float:
    """Return points to the tick at which the whole strip is as wide as the paper allows."""
    room = WIDTH - 2 * MARGIN - GAP * (len(each) - 1)
    scale = room / sum(size.size[0] for size in each)
    for _ in each:  # a picture narrower than its label leaves less room for the others
        narrow = [size for size in each if size.size[0] * scale < size.words]
        wide = sum(size.size[0] for size in each if size not in narrow)
        if not wide:
            break
        scale = min(scale, (room - sum(size.words for size in narrow)) / wide)
    return min(scale, WIDTH / 2 / max(size.size[1] for size in each))


def _picture(block: Block, frame: Frame, theme: Theme) -> list[Shape]:
    painted = (Painted(p, p.outline.chords(), frame.outline(p.outline)) for p in block.patches)
    border = Path((frame.outline(block.outline),), Paint(stroke=theme.ink, width=theme.line * 1.5))
    return [*paint_patches(frame, painted, replace(theme, line=theme.line * 0.7)), border]


def _label(size: _Size, middle: float, foot: float, theme: Theme) -> list[Shape]:
    lines = enumerate(size.label, 1)
    return [
        Text((middle, foot + number * LEADING + 2), line, LABEL, theme.ink, anchor="middle") for number, line in lines
    ]
