"""The cutting list as one self-contained page of HTML."""

from blocklang_drawing import draw_swatch, pages_of, theme_for, to_svg

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_list.listing import list_cutting


def write_html(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the page; every text of the plan is escaped, only our own drawings go in as they are."""
    from markupsafe import Markup

    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    swatches = {
        fabric.id: Markup(to_svg(draw_swatch(fabric, theme), declaration=False))  # noqa: S704 - to_svg escapes
        for fabric in plan.block.fabrics
    }
    return (
        pages_of("blocklang_cutting_list", options.language)
        .get_template("list.html.j2")
        .render(
            listing=list_cutting(plan, options),
            swatches=swatches,
            language=options.language.code,
            paper=options.paper.value,
            large=options.large_print,
        )
    )
