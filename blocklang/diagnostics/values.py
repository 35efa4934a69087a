"""Diagnostics as frozen values: where, what is wrong, and what to write instead."""

from dataclasses import dataclass
from enum import StrEnum


class Severity(StrEnum):
    """How bad it is: an error stops the plan, a warning does not, a note explains."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


@dataclass(frozen=True, slots=True)
class SourceText:
    """A block file as it was read: the name shown to people, and its text."""

    name: str
    text: str


@dataclass(frozen=True, slots=True)
class Span:
    """A stretch of a source text, as character offsets; lines and columns are worked out when shown."""

    source: SourceText
    start: int
    end: int

    def position(self) -> tuple[int, int]:
        """Return the line and the column of the start, both counted from 1."""
        line = self.source.text.count("\n", 0, self.start) + 1
        return line, self.start - (self.source.text.rfind("\n", 0, self.start) + 1) + 1


@dataclass(frozen=True, slots=True)
class Related:
    """A second place that belongs to a diagnostic, and what it has to do with it."""

    span: Span
    text: str


@dataclass(frozen=True, slots=True)
class Diagnostic:
    """One thing to tell the author.

    `code` is a short stable name in hyphens, `title` what is wrong in a few words, `found` one sentence of what was
    found, `advice` one sentence of what to write instead ("" when there is nothing to advise).
    """

    code: str
    severity: Severity
    title: str
    found: str
    advice: str = ""
    span: Span | None = None
    related: tuple[Related, ...] = ()
