"""The output `foundation`: numbered paper foundations at full size, seen from the back, the side that is sewn on."""

from blocklang.hooks import CannotMakeError, Output, OutputFile, OutputOptions, hookimpl
from blocklang.plan import SewingPlan


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the foundations."""
    return (
        Output(
            name="foundation",
            formats=("pdf", "svg"),
            default_format="pdf",
            summary="Foundation piecing: the fewest paper sections at full size, mirrored, numbered in sewing order.",
            make=make_foundation,
        ),
    )


def make_foundation(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the pages."""
    from blocklang_drawing import write_pages

    from blocklang.foundation import sections
    from blocklang_foundation.pages import draw_pages
    from blocklang_foundation.words import NOT_SENSIBLE

    foundation = sections(plan.graph)
    if not foundation.is_sensible:
        raise CannotMakeError(NOT_SENSIBLE)
    return write_pages(draw_pages(plan.block, foundation, options), options)
