"""The output `sewing-sheet`: everything needed to sew a block, step by step, with a picture for each step."""

from blocklang.hooks import Output, OutputFile, OutputOptions, hookimpl
from blocklang.plan import SewingPlan


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the sewing sheet."""
    return (
        Output(
            name="sewing-sheet",
            formats=("html", "pdf", "text"),
            default_format="html",
            summary="The sewing order with a picture for each step, the cutting list and the pressing map.",
            make=make_sewing_sheet,
        ),
    )


def make_sewing_sheet(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the sheet as one file."""
    if options.format == "text":
        from blocklang_sewing_sheet.as_text import write_text

        return (OutputFile("", write_text(plan, options).encode()),)
    if options.format == "pdf":
        from blocklang_sewing_sheet.as_pdf import write_pdf

        return (OutputFile("", write_pdf(plan, options)),)
    from blocklang_sewing_sheet.as_html import write_html

    return (OutputFile("", write_html(plan, options).encode()),)
