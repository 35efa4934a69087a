"""The cutting plan as pages of PDF, set by typst with the faces that it carries."""

import json
from dataclasses import asdict
from importlib import resources

from blocklang_drawing import Drawing, clean_text, draw_swatch, theme_for, to_svg

from blocklang.hooks import CannotMakeError, OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_plan import words
from blocklang_cutting_plan.contents import cloth_of, letters_of, write_words
from blocklang_cutting_plan.stock_picture import draw_stock
from blocklang_cutting_plan.strip_picture import draw_strip
from blocklang_cutting_plan.whole_picture import draw_whole

PAPERS = {"letter": "us-letter", "a4": "a4"}


def write_pdf(plan: SewingPlan, options: OutputOptions) -> bytes:
    """Return the pages; the words go in as data, never as typst markup."""
    try:
        import typst
    except ImportError as missing:
        raise CannotMakeError("PDF sheets need the Python package typst: install it, or ask for svg.") from missing

    template = resources.files("blocklang_cutting_plan").joinpath("templates/plan.typ").read_bytes()
    pages: bytes = typst.compile(
        template, format="pdf", ignore_system_fonts=True, sys_inputs={"sheet": _data(plan, options)}, pdf_tags=True
    )
    return pages


def _data(plan: SewingPlan, options: OutputOptions) -> str:
    cloth = cloth_of(plan, options)
    sheet = write_words(plan, cloth, options)
    theme = theme_for(plan.block.fabrics, options.black_and_white)
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
    data = {
        "sheet": _cleaned(asdict(sheet)),
        "pictures": pictures,
        "headings": {
            "title": words.TITLE,
            "pieces": words.PIECES,
            "strips": words.STRIPS,
            "stock": words.STOCK,
            "notes": words.NOTES,
            "whole": words.WHOLE,
        },
        "paper": PAPERS[options.paper.value],
        "large": options.large_print,
    }
    return json.dumps(data, ensure_ascii=False)


def _picture(drawing: Drawing) -> dict[str, object]:
    return {"svg": to_svg(drawing), "width": drawing.width}


def _cleaned(value: object) -> object:
    if isinstance(value, str):
        return clean_text(value)
    if isinstance(value, dict):
        return {key: _cleaned(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_cleaned(inner) for inner in value]
    return value
