"""The pictures of the sheet, as SVG text with their size in points."""

from dataclasses import dataclass

from blocklang_drawing import (
    Drawing,
    draw_block,
    draw_mark,
    draw_pressing_map,
    draw_step,
    draw_swatch,
    theme_for,
    to_svg,
)

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_sewing_sheet.marks import used_marks

#: What is free across the paper, less the step's own margins (points).
STEP_WIDTH, STEP_HEIGHT = 460.0, 172.0


@dataclass(frozen=True, slots=True)
class Picture:
    """A picture as SVG text; width and height in points."""

    svg: str
    width: float
    height: float


@dataclass(frozen=True, slots=True)
class Pictures:
    """All pictures of a sheet; swatches and steps in the order of their words."""

    block: Picture
    finished: Picture
    swatches: tuple[Picture, ...]
    marks: tuple[Picture, ...]
    steps: tuple[Picture, ...]
    pressing: Picture


def draw_pictures(plan: SewingPlan, options: OutputOptions, fabrics: tuple[str, ...]) -> Pictures:
    """Return the pictures of a plan's sheet, with swatches of these fabrics."""
    block, theme = plan.block, theme_for(plan.block.fabrics, options.black_and_white)
    steps = (
        draw_step(plan, step, theme, width=STEP_WIDTH, height=STEP_HEIGHT, shown_in=options.unit) for step in plan.steps
    )
    return Pictures(
        block=_picture(draw_block(block, theme, width=200.0, height=200.0)),
        finished=_picture(draw_block(block, theme, width=170.0, height=170.0)),
        swatches=tuple(_picture(draw_swatch(block.fabric(fabric), theme)) for fabric in fabrics),
        marks=tuple(_picture(draw_mark(mark, theme)) for mark in used_marks(plan)),
        steps=tuple(map(_picture, steps)),
        pressing=_picture(draw_pressing_map(plan, theme, width=290.0, height=290.0)),
    )


def _picture(drawing: Drawing) -> Picture:
    return Picture(to_svg(drawing, declaration=False), drawing.width, drawing.height)
