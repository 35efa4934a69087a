"""The output `colouring-page`: the block in lines, once large and several times small, to colour in."""

from blocklang.hooks import CannotMakeError, Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan

COUNTS = ("0", "2", "4", "6", "9", "12")
LARGE, SMALL, NO = "large", "small", "no"
NOTHING = (
    "There is nothing left to colour: leave out --set large=no, or ask for some small pictures, as in --set small=6."
)


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the pages."""
    return (
        Output(
            name="colouring-page",
            formats=("pdf", "svg"),
            default_format="pdf",
            summary="The block in lines to colour in: a page with one large picture, and a page with several small ones.",
            make=make_colouring_page,
            settings=(
                Setting(
                    SMALL,
                    "How many small pictures there are on the second page; 6 if not said, fewer where patches are tiny.",
                    COUNTS,
                ),
                Setting(LARGE, "Whether there is a page with one large picture.", ("yes", NO)),
            ),
        ),
    )


def make_colouring_page(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the pages as one PDF, or as one SVG a page."""
    from blocklang_drawing import as_files

    from blocklang_colouring_page.pages import draw_pages, usual_count

    large = () if options.setting(LARGE) == NO else (1,)
    small = int(options.setting(SMALL) or usual_count(plan.block, options))
    counts = (*large, small) if small else large
    if not counts:
        raise CannotMakeError(NOTHING)
    return as_files(draw_pages(plan, counts, options), options)
