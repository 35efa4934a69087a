"""Whether the bytes of a file are what its ending says: well formed, and opened where a reader is installed."""

import csv
import io
import json
import struct
import zlib
from collections.abc import Callable
from html.parser import HTMLParser

_PNG = b"\x89PNG\r\n\x1a\n"
#: Elements of HTML that have no end tag (HTML Living Standard, void elements).
_VOID = frozenset("area base br col embed hr img input link meta source track wbr".split())


def fault_of_bytes(data: bytes, ending: str) -> str:
    """Return what is wrong with a file of that ending, "" when nothing is; an ending we do not know has some bytes."""
    if not data:
        return "it is empty"
    reader = _READERS.get(ending)
    if reader is None:
        return ""
    try:
        return reader(data)
    except UnicodeDecodeError as fault:
        return f"it is not UTF-8 text ({fault})"


def _text(data: bytes) -> str:
    text = data.decode("utf-8")
    return "" if text.endswith("\n") else "its last line has no end"


def _json(data: bytes) -> str:
    def refuse(word: str) -> None:
        raise ValueError(f"{word} is not JSON")

    try:
        json.loads(data.decode("utf-8"), parse_constant=refuse)
    except UnicodeDecodeError:
        raise
    except ValueError as fault:
        return f"it is not JSON: {fault}"
    return ""


def _csv(data: bytes) -> str:
    rows = list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline=""), strict=True))
    widths = {len(row) for row in rows}
    return "" if len(widths) == 1 else f"its rows have different numbers of fields: {sorted(widths)}"


def _xml(data: bytes) -> str:
    from xml.etree import ElementTree

    if b"<!ENTITY" in data:
        return "it declares entities, which readers refuse"
    try:
        ElementTree.fromstring(data)  # noqa: S314 - made by the plugin that is tested, and without entities
    except ElementTree.ParseError as fault:
        return f"it is not well-formed XML: {fault}"
    return ""


class _Tags(HTMLParser):
    """Follows which elements are open."""

    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.fault = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag not in _VOID:
            self.open.append(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Leave an element that is closed where it begins, as those of SVG are."""

    def handle_endtag(self, tag: str) -> None:
        if not self.open or self.open[-1] != tag:
            self.fault = self.fault or f"</{tag}> closes nothing at line {self.getpos()[0]}"
        else:
            self.open.pop()


def _html(data: bytes) -> str:
    tags = _Tags()
    tags.feed(data.decode("utf-8"))
    tags.close()
    return tags.fault or (f"<{tags.open[-1]}> is never closed" if tags.open else "")


def _png(data: bytes) -> str:
    if not data.startswith(_PNG):
        return "it does not begin as a PNG does"
    at, kinds = len(_PNG), []
    while at + 12 <= len(data):
        (size,) = struct.unpack(">I", data[at : at + 4])
        body, check = data[at + 4 : at + 8 + size], data[at + 8 + size : at + 12 + size]
        if struct.pack(">I", zlib.crc32(body)) != check:
            return "a part of the picture is damaged"
        kinds.append(body[:4])
        at += 12 + size
    return "" if kinds[:1] == [b"IHDR"] and kinds[-1:] == [b"IEND"] and at == len(data) else "the picture is cut off"


def _pdf(data: bytes) -> str:
    if not data.startswith(b"%PDF-") or b"%%EOF" not in data[-1024:]:
        return "it does not begin and end as a PDF does"
    try:
        import pypdf
    except ImportError:
        return ""
    try:
        pages = len(pypdf.PdfReader(io.BytesIO(data), strict=True).pages)
    except pypdf.errors.PyPdfError as fault:
        return f"it cannot be opened: {fault}"
    return "" if pages else "it has no pages"


_READERS: dict[str, Callable[[bytes], str]] = {
    "txt": _text,
    "text": _text,
    "json": _json,
    "csv": _csv,
    "svg": _xml,
    "xml": _xml,
    "html": _html,
    "png": _png,
    "pdf": _pdf,
}
