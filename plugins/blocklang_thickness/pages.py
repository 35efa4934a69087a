"""The page of the map: what it says, the map, and its scale."""

from blocklang_drawing import Drawing, Written, theme_for, write_page

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang.wording import joined
from blocklang_thickness import words
from blocklang_thickness.facts import facts_of
from blocklang_thickness.picture import draw_thickness, numbers_left_out, scale_of


def draw_pages(plan: SewingPlan, options: OutputOptions) -> tuple[Drawing, ...]:
    """Return the pages, as large as the paper."""
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    facts = facts_of(plan)
    first = draw_thickness(plan, facts.thickness, theme, width=500.0, height=500.0)
    more = (words.MORE_NUMBERS,) if numbers_left_out(first, facts.thickness) else ()
    written = Written(
        plan.block.name,
        words.SUBJECT,
        (*facts.sentences, joined((words.FRONT, words.NUMBERS, *more, words.SHARES))),
        lambda width, height: draw_thickness(plan, facts.thickness, theme, width=width, height=height),
        scale_of(facts.thickness, facts.levels, theme),
    )
    return write_page(written, options.paper, theme, large_print=options.large_print)
