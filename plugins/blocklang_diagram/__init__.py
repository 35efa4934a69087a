"""The output `diagram`: a picture of the finished block, in several views."""

from blocklang.hooks import CannotMakeError, Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan

FABRICS, LINES, NUMBERED, LAID_APART, SIZES = VIEWS = ("fabrics", "lines", "numbered", "laid-apart", "sizes")


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the diagram."""
    return (
        Output(
            name="diagram",
            formats=("svg", "png", "pdf"),
            default_format="svg",
            summary="A picture of the block: in its fabrics, in lines, with names, taken apart, or in several sizes.",
            make=make_diagram,
            settings=(
                Setting("view", "What the picture shows.", VIEWS),
                Setting("steps", "How many of the last steps are undone when the block is laid apart."),
            ),
        ),
    )


def make_diagram(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the picture as one file."""
    from blocklang_drawing import to_pdf, to_png, to_svg

    from blocklang_diagram.views import draw_view

    drawing = draw_view(plan, options.setting("view", FABRICS), _steps(options), options)
    if options.format == "png":
        return (OutputFile("", to_png(drawing)),)
    if options.format == "pdf":
        return (OutputFile("", to_pdf(drawing)),)
    return (OutputFile("", to_svg(drawing).encode()),)


def _steps(options: OutputOptions) -> int | None:
    written = options.setting("steps")
    if not written:
        return None
    if not (written.isascii() and written.isdigit() and 0 < int(written[:9]) < 1000):
        raise CannotMakeError("The number of steps to undo is a whole number from 1 up: write --set steps=2.")
    if options.setting("view", FABRICS) != LAID_APART:
        raise CannotMakeError("Steps are undone where the block is laid apart: add --set view=laid-apart.")
    return int(written)
