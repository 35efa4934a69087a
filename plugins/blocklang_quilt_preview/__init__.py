"""The output `quilt-preview`: the block repeated in rows, as the top of a quilt."""

from blocklang.hooks import Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan
from blocklang_quilt_preview.arrangements import ARRANGEMENTS


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the preview."""
    return (
        Output(
            name="quilt-preview",
            formats=("svg", "png", "pdf"),
            default_format="svg",
            summary="The block repeated in rows as a quilt top, turned or mirrored, with its size.",
            make=make_preview,
            settings=(
                Setting("rows", "How many rows of blocks; 4 if not said."),
                Setting("columns", "How many blocks in a row; 4 if not said."),
                Setting("turning", "How the blocks lie beside each other.", tuple(ARRANGEMENTS)),
            ),
        ),
    )


def make_preview(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the picture as one file."""
    from blocklang_drawing import theme_for, to_pdf, to_png, to_svg

    from blocklang_quilt_preview.asking import quilt_asked_for
    from blocklang_quilt_preview.picture import draw_quilt

    quilt = quilt_asked_for(plan.block, options)
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    drawing = draw_quilt(plan.block, quilt, theme, options.unit)
    if options.format == "png":
        return (OutputFile("", to_png(drawing)),)
    if options.format == "pdf":
        return (OutputFile("", to_pdf(drawing)),)
    return (OutputFile("", to_svg(drawing).encode()),)
