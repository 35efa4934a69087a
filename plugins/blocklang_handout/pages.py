"""The pages of a handout: the blocks side by side with their contents, then each block."""

from collections.abc import Iterator

from blocklang_drawing import (
    Drawing,
    KeyEntry,
    Section,
    Theme,
    Written,
    clean_text,
    draw_block,
    draw_swatch,
    say_measure,
    theme_for,
    write_all,
    write_page,
)

from blocklang.block import LengthUnit
from blocklang.cutting import describe_piece, describe_strip_set
from blocklang.hooks import OutputOptions
from blocklang.plan import PlanStep, SewingPlan
from blocklang_handout import words
from blocklang_handout.side_by_side import draw_side_by_side

#: Shares of the room that a block's picture may take, the usual first; a smaller one that saves a page is better.
PICTURE = (0.62, 0.5, 0.4)


def draw_pages(plans: tuple[SewingPlan, ...], options: OutputOptions) -> tuple[Drawing, ...]:
    """Return the pages, as large as the paper, numbered through."""
    theme = theme_for((), options.black_and_white, options.language)
    written = [_block(plan, options) for plan in plans]
    lengths = [_length(one, theme, options) for one in written]
    first = _contents(plans, [0] * len(plans), options)
    before = _length(first, theme, options)
    starts = [1 + before + sum(lengths[:place]) for place in range(len(plans))]
    contents = _contents(plans, starts, options)
    return write_all((contents, *written), options.paper, theme, large_print=options.large_print)


def _length(written: Written, theme: Theme, options: OutputOptions) -> int:
    return len(write_page(written, options.paper, theme, large_print=options.large_print))


def _contents(plans: tuple[SewingPlan, ...], starts: list[int], options: OutputOptions) -> Written:
    named = zip(plans, starts, strict=True)
    lines = tuple(words.entry(plan.block.name, _size(plan), start) for plan, start in named)
    title = clean_text(options.setting("title")) or words.TITLE

    def draw(width: float, height: float) -> Drawing:
        return draw_side_by_side(plans, options, width, height)

    return Written(title, words.blocks(len(plans)), (), draw, sections=(Section(words.CONTENTS, lines),))


def _block(plan: SewingPlan, options: OutputOptions) -> Written:
    """Return a block with the largest picture that leaves it on one page, or with the usual one where none does."""
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    tried = [_with_picture(plan, theme, share) for share in PICTURE]
    return next((one for one in tried if _length(one, theme, options) == 1), tried[0])


def _with_picture(plan: SewingPlan, theme: Theme, share: float) -> Written:
    unit = plan.block.unit
    sets = tuple(describe_strip_set(made, unit) for made in plan.cutting.strip_sets)
    cut = tuple(
        words.piece(piece.name, piece.fabric.rpartition(".")[2], describe_piece(piece, unit))
        for piece in plan.cutting.pieces
    )
    return Written(
        plan.block.name,
        _size(plan),
        (*map(words.credit, plan.block.credits), *plan.block.notes),
        lambda width, height: draw_block(plan.block, theme, width=width * share, height=height * share),
        tuple(_key(plan, theme)),
        (Section(words.CUTTING, sets + cut), Section(words.SEWING, tuple(_step(step, unit) for step in plan.steps))),
    )


def _key(plan: SewingPlan, theme: Theme) -> Iterator[KeyEntry]:
    patches = plan.block.patches
    used = {fabric for patch in patches for fabric in (patch.stripes.fabrics if patch.stripes else (patch.fabric,))}
    for fabric in plan.block.fabrics:
        if fabric.id in used:
            swatch = draw_swatch(fabric, theme, width=30.0, height=16.0)
            yield KeyEntry(swatch, fabric.title or fabric.id.rpartition(".")[2])


def _step(step: PlanStep, unit: LengthUnit) -> str:
    measures = words.measures([say_measure(length, unit) for length in step.measures]) if step.measures else ""
    return words.step(step.number, step.title, step.times, measures)


def _size(plan: SewingPlan) -> str:
    return words.size(*(say_measure(length, plan.block.unit) for length in plan.block.size))
