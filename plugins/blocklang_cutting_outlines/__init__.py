"""The output `cutting-outlines`: what is cut, as DXF for cutting machines and drawing programs."""

from blocklang.hooks import CannotMakeError, Output, OutputFile, OutputOptions, Setting, hookimpl
from blocklang.plan import SewingPlan

APART, BLOCK = LAYS = ("apart", "block")


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the outlines."""
    return (
        Output(
            name="cutting-outlines",
            formats=("dxf",),
            default_format="dxf",
            summary="What is cut, to size, for a cutting machine: cutting and sewing lines on layers, a layer a fabric.",
            make=make_outlines,
            settings=(
                Setting(
                    "lay", "Every piece for itself, with the grain upright, or all as they lie in the block.", LAYS
                ),
                Setting("fabric", "Only the pieces of this fabric."),
                Setting("width", "How wide the cutting mat is, in the unit of the file: 12 in when nothing is said."),
            ),
        ),
    )


def make_outlines(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return the outlines as one file."""
    from blocklang_cutting_outlines.as_dxf import write_dxf
    from blocklang_cutting_outlines.laying import lay_apart, lay_in_block

    fabric = _fabric(plan, options)
    in_block = options.setting("lay", APART) == BLOCK
    drawn = lay_in_block(plan, fabric) if in_block else lay_apart(plan, fabric, _width(options))
    if not drawn.pieces:
        raise CannotMakeError(f"Nothing is cut from `{fabric}` alone: it is in strip sets only.")
    return (OutputFile("", write_dxf(options.language.tell(drawn), options.unit)),)


def _fabric(plan: SewingPlan, options: OutputOptions) -> str:
    wanted = options.setting("fabric")
    known = [fabric.id for fabric in plan.block.fabrics]
    if wanted and wanted not in known:
        raise CannotMakeError(f"The block has no fabric `{wanted}`: it has {', '.join(known)}.")
    return wanted


def _width(options: OutputOptions) -> float:
    """Read the width of the mat and return it in inches."""
    text = options.setting("width", f"{12 * options.unit.per_inch:g}").strip()
    plain = len(text) <= 8 and text.isascii() and text.replace(".", "", 1).isdigit()
    if not plain or float(text) < options.unit.per_inch:
        raise CannotMakeError(f"Write how wide the mat is in {options.unit}, such as --set width=24.")
    return float(text) / options.unit.per_inch
