"""The output `thickness`: how many layers of cloth lie where, as a map and in words."""

from blocklang.hooks import Output, OutputFile, OutputOptions, hookimpl
from blocklang.plan import SewingPlan


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the map."""
    return (
        Output(
            name="thickness",
            formats=("pdf", "svg", "png", "text"),
            default_format="pdf",
            summary="How many layers of cloth lie where, and the highest pile.",
            make=make_thickness,
        ),
    )


def make_thickness(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the map as one PDF, as one picture a page, or what it says as text."""
    if options.format == "text":
        from blocklang_thickness.as_text import write_text

        return (OutputFile("", write_text(plan, options).encode()),)
    from blocklang_drawing import as_files

    from blocklang_thickness.pages import draw_pages

    return as_files(draw_pages(plan, options), options)
