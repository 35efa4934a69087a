"""The cutting list as pages of PDF, set by typst with the faces that it carries."""

import json
from dataclasses import asdict
from importlib import resources

from blocklang_drawing import clean_text, draw_swatch, theme_for, to_svg

from blocklang.hooks import CannotMakeError, OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_list import words
from blocklang_cutting_list.listing import list_cutting

PAPERS = {"letter": "us-letter", "a4": "a4"}


def write_pdf(plan: SewingPlan, options: OutputOptions) -> bytes:
    """Return the pages; the words go in as data, never as typst markup."""
    try:
        import typst
    except ImportError as missing:
        raise CannotMakeError("PDF lists need the Python package typst: install it, or ask for html.") from missing

    template = resources.files("blocklang_cutting_list").joinpath("templates/list.typ").read_bytes()
    pages: bytes = typst.compile(
        template, format="pdf", ignore_system_fonts=True, sys_inputs={"list": _data(plan, options)}, pdf_tags=True
    )
    return pages


def _data(plan: SewingPlan, options: OutputOptions) -> str:
    theme = theme_for(plan.block.fabrics, options.black_and_white)
    listing = list_cutting(plan, options)
    swatches = [draw_swatch(plan.block.fabric(entry.id), theme) for entry in listing.entries]
    data = {
        "list": _cleaned(asdict(listing)),
        "swatches": [{"svg": to_svg(drawing), "width": drawing.width} for drawing in swatches],
        "title": words.TITLE,
        "strip_sets": words.STRIP_SETS,
        "notes": words.NOTES,
        "other_ways": words.OTHER_WAYS,
        "other_ways_are": words.OTHER_WAYS_ARE,
        "blade": words.BLADE,
        "paper": PAPERS[options.paper.value],
        "large": options.large_print,
    }
    return json.dumps(data, ensure_ascii=False)


def _cleaned(value: object) -> object:
    if isinstance(value, str):
        return clean_text(value)
    if isinstance(value, dict):
        return {key: _cleaned(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_cleaned(inner) for inner in value]
    return value
