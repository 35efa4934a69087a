"""The cutting list as pages of PDF, set by typst with the faces that it carries."""

from dataclasses import asdict

from blocklang_drawing import PAPER_NAMES, cleaned, draw_swatch, set_pages, theme_for, to_svg

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_list.listing import list_cutting


def write_pdf(plan: SewingPlan, options: OutputOptions) -> bytes:
    """Return the pages; the words go in as data, never as typst markup."""
    return set_pages("blocklang_cutting_list", "templates/list.typ", "list", _data(plan, options), instead="html")


def _data(plan: SewingPlan, options: OutputOptions) -> dict[str, object]:
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    listing = list_cutting(plan, options)
    swatches = [draw_swatch(plan.block.fabric(entry.id), theme) for entry in listing.entries]
    return {
        "list": cleaned(asdict(listing)),
        "swatches": [{"svg": to_svg(drawing), "width": drawing.width} for drawing in swatches],
        "paper": PAPER_NAMES[options.paper],
        "large": options.large_print,
        "language": options.language.code,
    }
