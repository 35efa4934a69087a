"""Drawings as pages of PDF, each as large as its drawing, set by typst so that an inch is 72.00 points."""

from collections.abc import Sequence

from blocklang.wording import ENGLISH, Language
from blocklang_drawing.shapes import Drawing
from blocklang_drawing.svg import to_svg
from blocklang_drawing.type_widths import clean_text
from blocklang_drawing.typesetting import set_pages


def to_pages(pages: Sequence[Drawing], language: Language = ENGLISH) -> bytes:
    """Return the pages, and name their language to screen readers; words go in as data, never as typst markup."""
    data = {"pages": _data(pages), "language": language.code}
    return set_pages("blocklang_drawing", "full_size_pages.typ", "given", data, instead="svg")


def _data(pages: Sequence[Drawing]) -> list[dict[str, object]]:
    return [
        {
            "svg": to_svg(page, declaration=False),
            "width": page.width,
            "height": page.height,
            "title": clean_text(page.title),
        }
        for page in pages
    ]
