"""Drawings as pages of PDF, each as large as its drawing, set by typst so that an inch is 72.00 points."""

import json
from collections.abc import Sequence
from importlib import resources

from blocklang.hooks import CannotMakeError
from blocklang_drawing.shapes import Drawing
from blocklang_drawing.svg import to_svg
from blocklang_drawing.type_widths import clean_text


def to_pages(pages: Sequence[Drawing]) -> bytes:
    """Return the pages; drawings and words go in as data, never as typst markup."""
    try:
        import typst
    except ImportError as missing:
        raise CannotMakeError("PDF pages need the Python package typst: install it, or ask for svg.") from missing

    template = resources.files("blocklang_drawing").joinpath("full_size_pages.typ").read_bytes()
    pdf: bytes = typst.compile(
        template, format="pdf", ignore_system_fonts=True, sys_inputs={"pages": _data(pages)}, pdf_tags=True
    )
    return pdf


def _data(pages: Sequence[Drawing]) -> str:
    drawn = [
        {
            "svg": to_svg(page, declaration=False),
            "width": page.width,
            "height": page.height,
            "title": clean_text(page.title),
        }
        for page in pages
    ]
    return json.dumps(drawn, ensure_ascii=False)
