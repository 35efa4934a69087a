"""The sheet as pages of PDF, set by typst with the faces that it carries."""

import json
from dataclasses import asdict
from importlib import resources

from blocklang_drawing import clean_text

from blocklang.hooks import CannotMakeError, OutputOptions
from blocklang.plan import SewingPlan
from blocklang_sewing_sheet import words
from blocklang_sewing_sheet.contents import write_sheet
from blocklang_sewing_sheet.marks import used_marks
from blocklang_sewing_sheet.pictures import draw_pictures

PAPERS = {"letter": "us-letter", "a4": "a4"}


def write_pdf(plan: SewingPlan, options: OutputOptions) -> bytes:
    """Return the pages; the words go in as data, never as typst markup."""
    try:
        import typst
    except ImportError as missing:
        raise CannotMakeError("PDF sheets need the Python package typst: install it, or ask for html.") from missing

    template = resources.files("blocklang_sewing_sheet").joinpath("templates/sheet.typ").read_bytes()
    pages: bytes = typst.compile(
        template, format="pdf", ignore_system_fonts=True, sys_inputs={"sheet": _data(plan, options)}, pdf_tags=True
    )
    return pages


def _data(plan: SewingPlan, options: OutputOptions) -> str:
    sheet = write_sheet(plan, options)
    pictures = draw_pictures(plan, options, sheet)
    data = {
        "sheet": _cleaned(asdict(sheet)),
        "pictures": asdict(pictures),
        "headings": words.CONTENTS,
        "marks": [words.MARKS[mark.value] for mark in used_marks(plan)],
        "pictures_show": words.PICTURES_SHOW,
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
