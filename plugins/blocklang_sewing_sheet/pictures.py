"""The pictures of the sheet, as SVG text with their size in points."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from blocklang_drawing import (
    Drawing,
    LaidStep,
    Theme,
    clean_text,
    draw_block,
    draw_corner,
    draw_cut,
    draw_mark,
    draw_pressing_map,
    draw_step,
    draw_strip_set,
    draw_swatch,
    lay_step,
    theme_for,
    to_svg,
)

from blocklang.cutting import describe_piece
from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_sewing_sheet import picture_words
from blocklang_sewing_sheet.contents import Sheet
from blocklang_sewing_sheet.marks import used_marks

#: What is free across the paper, less the step's own margins (points).
STEP_WIDTH, STEP_HEIGHT = 460.0, 172.0
#: What is free across a telephone of 360 pixels, and how high a picture may be there (points).
NARROW_WIDTH, NARROW_HEIGHT = 222.0, 300.0
#: What the picture of a corner takes of that, with the gap beside it (points).
CORNER_WIDTH = 150.0
#: How much larger the pictures of the steps are in large print, with the figures in them.
ENLARGED = 1.3
#: A block of more patches is drawn once: two pictures of each step would make the page slow to open.
MOST_DRAWN_TWICE = 1000


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture as SVG text; width and height (points) as it is to be shown, `alt` what it shows."""

    svg: str
    width: float
    height: float
    alt: str


@dataclass(frozen=True, slots=True)
class CutPicture:
    """How a line of the cutting list is cut, with the name of the line."""

    name: str
    picture: Picture


@dataclass(frozen=True, slots=True)
class Pictures:
    """All pictures of a sheet; swatches, strip sets and steps in the order of their words."""

    block: Picture
    finished: Picture
    swatches: tuple[Picture, ...]
    cuts: tuple[tuple[CutPicture, ...], ...]  # of each fabric
    strip_sets: tuple[Picture, ...]
    marks: tuple[Picture, ...]
    steps: tuple[Picture, ...]
    corners: tuple[Picture | None, ...]  # of each step, None where its seams do not turn
    pressing: Picture


def lay_steps(plan: SewingPlan) -> tuple[LaidStep, ...]:
    """Lay out all steps, to be drawn in more than one size."""
    return tuple(lay_step(plan, step) for step in plan.steps)


def draw_pictures(plan: SewingPlan, options: OutputOptions, sheet: Sheet, laid: Sequence[LaidStep]) -> Pictures:
    """Return the pictures that go with the words of a plan's sheet, its steps as they have been laid out."""
    block, theme = plan.block, theme_for(plan.block.fabrics, options.black_and_white, options.language)
    whole = _picture(
        theme, draw_block(block, theme, width=200.0, height=200.0), picture_words.tell_block(plan, sheet.fabrics)
    )
    return Pictures(
        block=whole,
        finished=replace(whole, width=whole.width * 0.85, height=whole.height * 0.85),
        swatches=tuple(
            _picture(theme, draw_swatch(block.fabric(entry.id), theme), picture_words.tell_swatch(entry))
            for entry in sheet.fabrics
        ),
        cuts=tuple(tuple(_cuts(plan, entry.id, theme, options)) for entry in sheet.fabrics),
        strip_sets=tuple(_strip_sets(plan, sheet, theme, options)),
        marks=tuple(_picture(theme, draw_mark(mark, theme), picture_words.MARKS[mark]) for mark in used_marks(plan)),
        steps=tuple(_steps(plan, options, sheet, theme, laid, (STEP_WIDTH, STEP_HEIGHT), CORNER_WIDTH)),
        corners=tuple(_corners(plan, options, theme, laid)),
        pressing=_picture(
            theme, draw_pressing_map(plan, theme, width=290.0, height=290.0), picture_words.tell_pressing(plan)
        ),
    )


def _cuts(plan: SewingPlan, fabric: str, theme: Theme, options: OutputOptions) -> Iterator[CutPicture]:
    for piece in plan.cutting.pieces:
        drawing = draw_cut(piece, theme, options.unit) if piece.fabric == fabric else None
        if drawing is not None:
            drawn = _picture(theme, drawing, describe_piece(piece, options.unit))
            yield CutPicture(theme.language.say(piece.name), _enlarged(drawn, options))


def _strip_sets(plan: SewingPlan, sheet: Sheet, theme: Theme, options: OutputOptions) -> Iterator[Picture]:
    allowance = plan.cutting.seam_allowance
    for made, said in zip(plan.cutting.strip_sets, sheet.strip_sets, strict=True):
        drawing = draw_strip_set(made, allowance, theme, options.unit)
        yield _enlarged(_picture(theme, drawing, said), options)


def draw_narrow_steps(
    plan: SewingPlan, options: OutputOptions, sheet: Sheet, laid: Sequence[LaidStep]
) -> tuple[Picture | None, ...]:
    """Return the pictures of the steps for a narrow screen; None where the wide one does."""
    if len(plan.block.patches) > MOST_DRAWN_TWICE:
        return (None,) * len(plan.steps)
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    return tuple(_steps(plan, options, sheet, theme, laid, (NARROW_WIDTH, NARROW_HEIGHT)))


def _steps(
    plan: SewingPlan,
    options: OutputOptions,
    sheet: Sheet,
    theme: Theme,
    laid: Sequence[LaidStep],
    room: tuple[float, float],
    for_corner: float = 0.0,
) -> Iterator[Picture]:
    scale = ENLARGED if options.large_print else 1.0
    for step, entry, out in zip(plan.steps, sheet.steps, laid, strict=True):
        width = room[0] / scale - (for_corner if any(join.pivots for join in step.joins) else 0.0)
        drawing = draw_step(plan, step, theme, width=width, height=room[1], shown_in=options.unit, laid_out=out)
        drawn = _picture(theme, drawing, picture_words.tell_step(plan, step, entry))
        yield _enlarged(drawn, options)


def _corners(
    plan: SewingPlan, options: OutputOptions, theme: Theme, laid: Sequence[LaidStep]
) -> Iterator[Picture | None]:
    for step, out in zip(plan.steps, laid, strict=True):
        drawing = draw_corner(plan, step, theme, out)
        yield _enlarged(_picture(theme, drawing, picture_words.CORNER), options) if drawing is not None else None


def _enlarged(picture: Picture, options: OutputOptions) -> Picture:
    """Return a picture so much larger, in large print, that the figures in it are."""
    scale = ENLARGED if options.large_print else 1.0
    return replace(picture, width=picture.width * scale, height=picture.height * scale)


def _picture(theme: Theme, drawing: Drawing, alt: str) -> Picture:
    told = replace(drawing, title=clean_text(theme.language.say(alt)))
    return Picture(to_svg(told, declaration=False), drawing.width, drawing.height, told.title)
