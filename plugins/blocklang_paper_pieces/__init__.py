"""The output `paper-pieces`: papers at full size to piece over by hand, and the order in which they are whip-stitched."""

from blocklang.hooks import Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan

PAPERS, ONCE, EVERY = "papers", "once", "every"


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the papers."""
    return (
        Output(
            name="paper-pieces",
            formats=("pdf", "text"),
            default_format="pdf",
            summary="Piecing over papers by hand: the papers at full size and the order of whip-stitching.",
            make=make_paper_pieces,
            settings=(Setting(PAPERS, "Each paper once, or as many as one block takes.", (ONCE, EVERY)),),
        ),
    )


def make_paper_pieces(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the order and the papers as one file."""
    from blocklang_paper_pieces.contents import write_contents

    contents = write_contents(plan, options.language)
    if options.format == "text":
        from blocklang_paper_pieces.as_text import write_text

        return (OutputFile("", write_text(contents).encode()),)
    from blocklang_paper_pieces.as_pdf import write_pdf

    return (OutputFile("", write_pdf(plan, contents, options, every=options.setting(PAPERS, ONCE) == EVERY)),)
