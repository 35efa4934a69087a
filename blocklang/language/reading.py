"""Read a block file from disk, or say why it cannot be read."""

from typing import TYPE_CHECKING

from blocklang.diagnostics import Diagnostic, Severity, SourceText, Span
from blocklang.limits import MOST_BYTES

if TYPE_CHECKING:
    from pathlib import Path


def read_source(path: "Path") -> SourceText | tuple[Diagnostic, ...]:
    """Return the text of a file with plain line ends, or what keeps it from being read."""
    name = str(path)
    try:
        if path.is_dir():
            return _refused("is-a-folder", f"`{name}` is a folder", "A block is one file, and this is a folder.")
        with path.open("rb") as file:
            content = file.read(MOST_BYTES + 1)
    except FileNotFoundError:
        return _refused("no-such-file", f"There is no file `{name}`", "Nothing of that name was found.")
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or "the name cannot be used"
        return _refused("cannot-read", f"`{name}` cannot be read", f"The system says: {reason}.")
    return decode_source(name, content)


def decode_source(name: str, content: bytes) -> SourceText | tuple[Diagnostic, ...]:
    """Return file content as text, or the place where it stops being text; more than MOST_BYTES are refused."""
    if len(content) > MOST_BYTES:
        return _refused(
            "file-too-large",
            f"`{name}` is too large",
            f"A block file holds at most {MOST_BYTES:,} bytes.",
            "Split it into smaller blocks and place them.",
        )
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        good = SourceText(name, plain_line_ends(problem.object[: problem.start].decode("utf-8-sig", "replace")))
        return _not_text(good, f"The byte {content[problem.start]:#04x} here is not UTF-8 text.")
    if "\0" in text:
        good = SourceText(name, plain_line_ends(text.partition("\0")[0]))
        return _not_text(good, "There is a zero byte here, which no text holds.")
    return SourceText(name, plain_line_ends(text))


def plain_line_ends(text: str) -> str:
    """Return text whose lines end in one newline, whichever system wrote it."""
    return text.replace("\r\n", "\n").replace("\r", "\n") if "\r" in text else text


def _not_text(good: SourceText, found: str) -> tuple[Diagnostic, ...]:
    end = len(good.text)
    advice = "Save the file again as plain text in UTF-8."
    title = f"`{good.name}` is not a text file"
    return (Diagnostic("not-text", Severity.ERROR, title, found, advice, Span(good, end, end)),)


def _refused(code: str, title: str, found: str, advice: str = "") -> tuple[Diagnostic, ...]:
    return (Diagnostic(code, Severity.ERROR, title, found, advice),)
