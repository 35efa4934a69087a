"""One view of a block by its name."""

from collections.abc import Callable

from blocklang_drawing import Drawing, draw_block, theme_for
from blocklang_drawing.line_picture import draw_in_lines

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_diagram.laid_apart import draw_laid_apart
from blocklang_diagram.numbered import draw_numbered
from blocklang_diagram.sizes import draw_sizes

#: A picture is six inches wide, and with words beside it never wider or higher than what fits on Letter and on A4.
SIDE = 432.0


def draw_view(plan: SewingPlan, view: str, steps: int | None, options: OutputOptions) -> Drawing:
    """Return the view; `steps` are undone where the block is laid apart."""
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    views: dict[str, Callable[[], Drawing]] = {
        "fabrics": lambda: draw_block(plan.block, theme, width=SIDE, height=SIDE),
        "lines": lambda: draw_in_lines(plan.block, theme.ink, width=SIDE, height=SIDE, language=options.language),
        "numbered": lambda: draw_numbered(plan, theme, SIDE),
        "laid-apart": lambda: draw_laid_apart(plan, theme, steps),
        "sizes": lambda: draw_sizes(plan.block, theme, options.unit),
    }
    return views[view]()
