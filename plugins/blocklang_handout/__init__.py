"""The output `handout`: several blocks in one document, with contents."""

from blocklang.hooks import Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the handout."""
    return (
        Output(
            name="handout",
            formats=("pdf", "svg"),
            default_format="pdf",
            summary="Several blocks in one document with contents: what to cut, and the sewing order in short.",
            make=lambda plan, options: make_handout((plan,), options),
            settings=(Setting("title", "What stands on the first page, such as the name of the class."),),
            make_several=make_handout,
        ),
    )


def make_handout(plans: tuple[SewingPlan, ...], options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the pages as one PDF, or as one SVG a page."""
    from blocklang_drawing import as_files

    from blocklang_handout.pages import draw_pages

    return as_files(draw_pages(plans, options), options)
