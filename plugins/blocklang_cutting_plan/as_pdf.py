"""The cutting plan as pages of PDF, set by typst with the faces that it carries."""

from dataclasses import asdict

from blocklang_drawing import PAPER_NAMES, Drawing, cleaned, draw_swatch, set_pages, theme_for, to_svg

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_plan.contents import cloth_of, letters_of, write_words
from blocklang_cutting_plan.stock_picture import draw_stock
from blocklang_cutting_plan.strip_picture import draw_strip
from blocklang_cutting_plan.whole_picture import draw_whole


def write_pdf(plan: SewingPlan, options: OutputOptions) -> bytes:
    """Return the pages; the words go in as data, never as typst markup."""
    return set_pages("blocklang_cutting_plan", "templates/plan.typ", "sheet", _data(plan, options), instead="svg")


def _data(plan: SewingPlan, options: OutputOptions) -> dict[str, object]:
    cloth = cloth_of(plan, options)
    sheet = write_words(plan, cloth, options)
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    pictures = [
        {
            "swatch": _picture(draw_swatch(plan.block.fabric(fabric.fabric), theme)),
            "whole": _picture(draw_whole(cloth, fabric, theme)) if fabric.strips else None,
            "stock": [
                _picture(draw_stock(cloth, piece, said, letters_of(fabric), theme))
                for piece, said in zip(fabric.cut_stock, spoken.stock, strict=True)
            ],
            "strips": [
                _picture(draw_strip(cloth, strip, said, letters_of(fabric), theme))
                for strip, said in zip(fabric.strips, spoken.strips, strict=True)
            ],
        }
        for fabric, spoken in zip(cloth.fabrics, sheet.fabrics, strict=True)
    ]
    return {
        "sheet": cleaned(asdict(sheet)),
        "pictures": pictures,
        "paper": PAPER_NAMES[options.paper],
        "large": options.large_print,
        "language": options.language.code,
    }


def _picture(drawing: Drawing) -> dict[str, object]:
    return {"svg": to_svg(drawing), "width": drawing.width}
