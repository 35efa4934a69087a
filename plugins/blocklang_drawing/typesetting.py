"""Pages of PDF set by typst with the faces that it carries: the one place that calls it."""

import json
from importlib import resources
from typing import Final

from blocklang.hooks import CannotMakeError, Paper
from blocklang_drawing.type_widths import clean_text

#: What typst calls the papers.
PAPER_NAMES: Final = {Paper.LETTER: "us-letter", Paper.A4: "a4"}


def set_pages(package: str, template: str, name: str, data: object, instead: str) -> bytes:
    """Return the pages that a template in a package makes of plain values, the same bytes every time.

    The values go in as data under a name, never as typst markup. Raises `CannotMakeError` where typst is missing;
    `instead` is the format to ask for then.
    """
    try:
        import typst
    except ImportError as missing:
        said = f"PDF pages need the Python package typst: install it, or ask for {instead}."
        raise CannotMakeError(said) from missing

    source = resources.files(package).joinpath(template).read_bytes()
    inputs = {name: json.dumps(data, ensure_ascii=False)}
    pages: bytes = typst.compile(source, format="pdf", ignore_system_fonts=True, sys_inputs=inputs, pdf_tags=True)
    return pages


def cleaned(value: object) -> object:
    """Return plain values with every text cleaned of what no page can hold."""
    if isinstance(value, str):
        return clean_text(value)
    if isinstance(value, dict):
        return {key: cleaned(inner) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [cleaned(inner) for inner in value]
    return value
