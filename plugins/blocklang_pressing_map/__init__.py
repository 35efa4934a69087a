"""The output `pressing-map`: the back of the block, every allowance drawn as it lies."""

from blocklang.hooks import Output, OutputFile, OutputOptions, hookimpl
from blocklang.plan import SewingPlan


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the map."""
    return (
        Output(
            name="pressing-map",
            formats=("pdf", "svg", "png", "text"),
            default_format="pdf",
            summary="The back of the block with every seam allowance as it lies, and what is on the bias.",
            make=make_pressing_map,
        ),
    )


def make_pressing_map(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the map as one PDF, as one picture a page, or what it says as text."""
    if options.format == "text":
        from blocklang_pressing_map.as_text import write_text

        return (OutputFile("", write_text(plan, options).encode()),)
    from blocklang_drawing import as_files

    from blocklang_pressing_map.pages import draw_pages

    return as_files(draw_pages(plan, options), options)
