"""The output `diagram`: a picture of the finished block."""

from blocklang.hooks import Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan

STYLE, FABRICS, LINES = "style", "fabrics", "lines"


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the diagram."""
    return (
        Output(
            name="diagram",
            formats=("svg", "png", "pdf"),
            default_format="svg",
            summary="A picture of the finished block: in its fabrics, or in lines with the names of the patches.",
            make=make_diagram,
            settings=(Setting(STYLE, "What the picture shows.", (FABRICS, LINES)),),
        ),
    )


def make_diagram(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the picture as one file."""
    from blocklang_drawing import draw_block, draw_lines, theme_for, to_pdf, to_png, to_svg

    theme = theme_for(plan.block.fabrics, options.black_and_white)
    draw = draw_lines if options.setting(STYLE, FABRICS) == LINES else draw_block
    drawing = draw(plan.block, theme, width=432.0, height=432.0)
    if options.format == "png":
        return (OutputFile("", to_png(drawing)),)
    if options.format == "pdf":
        return (OutputFile("", to_pdf(drawing)),)
    return (OutputFile("", to_svg(drawing).encode()),)
