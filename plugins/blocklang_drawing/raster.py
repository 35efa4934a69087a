"""One drawing as PNG or PDF, through cairo."""

from types import ModuleType
from typing import cast

from blocklang.hooks import CannotMakeError
from blocklang_drawing.shapes import Drawing
from blocklang_drawing.svg import to_svg

NO_CAIRO = "PNG and PDF drawings need the cairo graphics library: install your system's cairo package, or ask for svg."
POINTS_PER_INCH = 72


def to_png(drawing: Drawing, *, dots_per_inch: float = 192.0) -> bytes:
    """Return the drawing as PNG on white paper."""
    png: bytes = _cairosvg().svg2png(
        bytestring=to_svg(drawing).encode(),
        output_width=round(drawing.width * dots_per_inch / POINTS_PER_INCH),
        output_height=round(drawing.height * dots_per_inch / POINTS_PER_INCH),
        background_color="#ffffff",
    )
    return png


def to_pdf(drawing: Drawing) -> bytes:
    """Return the drawing as a PDF of its own size, without the date it was made."""
    pdf: bytes = _cairosvg().svg2pdf(bytestring=to_svg(drawing).encode())
    return without_date(pdf)


def without_date(pdf: bytes) -> bytes:
    """Return a PDF from cairo with its creation date blanked out, byte for byte as long, so that its bytes repeat."""
    start = pdf.find(b"/CreationDate (")
    if start < 0:
        return pdf
    end = pdf.index(b")", start) + 1
    return pdf[:start] + b" " * (end - start) + pdf[end:]


def _cairosvg() -> ModuleType:
    try:
        import cairosvg
    except OSError as missing:
        raise CannotMakeError(NO_CAIRO) from missing
    return cast("ModuleType", cairosvg)
