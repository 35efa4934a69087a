"""Pages of PDF looked at from outside: rendered by pypdfium2, lines found by their ink."""

from io import BytesIO

import pypdfium2
from pypdf import PdfReader

POINTS = 72


def boxes(pdf: bytes):
    """Return the width and height of every page in points."""
    return [(float(page.mediabox.width), float(page.mediabox.height)) for page in PdfReader(BytesIO(pdf)).pages]


def texts(pdf: bytes):
    """Return the text of every page, its lines joined."""
    document = pypdfium2.PdfDocument(pdf)
    found = [" ".join(page.get_textpage().get_text_range().split()) for page in document]
    document.close()
    return found


def ink(pdf: bytes, page: int, dots_per_inch: float, box=None):
    """Return how dark a page is, 0 to 1, dot by dot; `box` is left, top, right, bottom in points."""
    document = pypdfium2.PdfDocument(pdf)
    sheet = document[page]
    width, height = sheet.get_size()
    left, top, right, low = box or (0, 0, width, height)
    crop = (left, height - low, width - right, top)
    image = sheet.render(scale=dots_per_inch / POINTS, crop=crop, grayscale=True).to_numpy()
    document.close()
    return 1 - image[:, :, 0] / 255 if image.ndim == 3 else 1 - image / 255


def lines(profile, share=0.6):
    """Return the centres of the dark runs in a row or column of averaged ink, in dots."""
    found, run, least = [], [], share * max(profile)
    for place, dark in enumerate([*profile, 0.0]):
        if dark > least:
            run.append((place + 0.5, dark))
        elif run:
            found.append(sum(at * weight for at, weight in run) / sum(weight for _, weight in run))
            run = []
    return found


def square_sides(pdf: bytes, page: int, dots_per_inch: float, box):
    """Return the width and height of the only square drawn in a box, in inches, between the middles of its lines."""
    dark = ink(pdf, page, dots_per_inch, box)
    across, down = lines(dark.mean(axis=0)), lines(dark.mean(axis=1))
    return (across[-1] - across[0]) / dots_per_inch, (down[-1] - down[0]) / dots_per_inch
