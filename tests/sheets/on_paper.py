"""Pages of PDF read back from outside: every run of letters with its box and size, and the faces in the file."""

import ctypes
from collections.abc import Iterator
from dataclasses import dataclass
from io import BytesIO
from itertools import combinations

import pypdfium2
from pypdf import PdfReader
from pypdfium2 import raw

Box = tuple[float, float, float, float]  # left, low, right, top


@dataclass(frozen=True)
class Run:
    """Letters that follow each other on one line; `size` is that of the type on paper (points)."""

    text: str
    box: Box
    size: float
    line: float


def runs_on(page: pypdfium2.PdfPage) -> list[Run]:
    runs: list[Run] = []
    for letter in _letters(page):
        if runs and _goes_on(runs[-1], letter):
            box = _around(runs[-1].box, letter.box)
            letter = Run(runs.pop().text + letter.text, box, letter.size, letter.line)
        runs.append(letter)
    return runs


def _letters(page: pypdfium2.PdfPage) -> Iterator[Run]:
    text = page.get_textpage()
    left, right, low, top, x, y = (ctypes.c_double() for _ in range(6))
    matrix = raw.FS_MATRIX()
    for index in range(raw.FPDFText_CountChars(text)):
        letter = chr(raw.FPDFText_GetUnicode(text, index))
        if letter.isspace():
            continue
        raw.FPDFText_GetCharBox(text, index, left, right, low, top)
        raw.FPDFText_GetCharOrigin(text, index, x, y)
        raw.FPDFText_GetMatrix(text, index, matrix)
        size = raw.FPDFText_GetFontSize(text, index) * (matrix.c**2 + matrix.d**2) ** 0.5
        yield Run(letter, (left.value, low.value, right.value, top.value), size, y.value)


def _goes_on(run: Run, letter: Run) -> bool:
    """Letters of one ligature share a box; a space is less than half of the size wide, and tails reach back under."""
    gap = letter.box[0] - run.box[2]
    alike = abs(run.line - letter.line) < 0.5 and abs(run.size - letter.size) < 0.2
    return alike and -run.size < gap < run.size * 0.5 and letter.box[2] >= run.box[2] - 0.5


def _around(a: Box, b: Box) -> Box:
    return min(a[0], b[0]), min(a[1], b[1]), max(a[2], b[2]), max(a[3], b[3])


def overlapping(runs: list[Run]) -> list[tuple[str, str]]:
    """Return the runs that lie on each other, but for a run drawn twice in one place (a light edge, then the ink)."""
    once = list({(run.text, *(round(each, 1) for each in run.box)): run for run in runs}.values())
    return [(a.text, b.text) for a, b in combinations(once, 2) if _meet(a.box, b.box)]


def _meet(a: Box, b: Box) -> bool:
    slack = 0.3
    return a[0] < b[2] - slack and b[0] < a[2] - slack and a[1] < b[3] - slack and b[1] < a[3] - slack


def faces_of(pdf: bytes) -> dict[str, bool]:
    """Return the names of all faces that pages use, and whether each is in the file."""
    found: dict[str, bool] = {}
    seen: set[int] = set()
    for page in PdfReader(BytesIO(pdf)).pages:
        _collect(page.get("/Resources"), found, seen)
    return found


def _collect(resources: object, found: dict[str, bool], seen: set[int]) -> None:
    resources = resources.get_object() if hasattr(resources, "get_object") else resources
    if not isinstance(resources, dict) or id(resources) in seen:
        return
    seen.add(id(resources))
    for font in (resources.get("/Font") or {}).values():
        font = font.get_object()
        for inner in font.get("/DescendantFonts", [font]):
            describing = inner.get_object().get("/FontDescriptor", {}).get_object()
            found[str(font["/BaseFont"])] = any(f"/FontFile{kind}" in describing for kind in ("", "2", "3"))
    for drawn in (resources.get("/XObject") or {}).values():
        _collect(drawn.get_object().get("/Resources"), found, seen)
