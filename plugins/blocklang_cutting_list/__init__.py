"""The output `cutting-list`: what to buy and what to cut, fabric by fabric."""

from blocklang.hooks import Output, OutputFile, OutputOptions, hookimpl
from blocklang.plan import SewingPlan


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the cutting list."""
    return (
        Output(
            name="cutting-list",
            formats=("text", "html", "pdf", "csv", "json"),
            default_format="text",
            summary="What to buy and what to cut: strips, sub-cuts and strip sets, fabric by fabric.",
            make=make_cutting_list,
        ),
    )


def make_cutting_list(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the list as one file."""
    if options.format == "json":
        from blocklang_cutting_list.as_json import write_json

        return (OutputFile("", write_json(plan).encode()),)
    if options.format == "csv":
        from blocklang_cutting_list.as_csv import write_csv

        return (OutputFile("", write_csv(plan, options).encode()),)
    if options.format == "pdf":
        from blocklang_cutting_list.as_pdf import write_pdf

        return (OutputFile("", write_pdf(plan, options)),)
    if options.format == "html":
        from blocklang_cutting_list.as_html import write_html

        return (OutputFile("", write_html(plan, options).encode()),)
    from blocklang_cutting_list.as_text import write_text

    return (OutputFile("", write_text(plan, options).encode()),)
