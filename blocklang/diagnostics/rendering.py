"""Word diagnostics for people, at length or in one line each, and for programs as JSON."""

from collections.abc import Iterable
from typing import Any

from blocklang.diagnostics.snippets import printable, snippet
from blocklang.diagnostics.values import Diagnostic, Severity, Span

SCHEMA = "blocklang.diagnostics/1"
COLOURS = {Severity.ERROR: "31", Severity.WARNING: "33", Severity.NOTE: "36"}


def render_long(diagnostics: Iterable[Diagnostic], colour: bool = False) -> str:
    """Return each diagnostic with its title, its place underlined, what was found and what to write instead."""
    return "\n".join(_long(diagnostic, colour) for diagnostic in diagnostics)


def _long(diagnostic: Diagnostic, colour: bool) -> str:
    paint = COLOURS[diagnostic.severity] if colour else ""
    lines = [_painted(f"{diagnostic.severity.value}: {printable(diagnostic.title)}", paint and "1;" + paint)]
    if diagnostic.span is not None:
        lines += _place(diagnostic.span, paint)
    lines.append(_sentences(diagnostic))
    for related in diagnostic.related:
        lines.append(printable(related.text))
        lines += _place(related.span, "36" if colour else "")
    return "\n".join(lines) + "\n"


def _place(span: Span, paint: str) -> list[str]:
    line, column = span.position()
    shown = snippet(span)
    number = str(shown.line_number)
    return [
        f"  {printable(span.source.name)}, line {line}, column {column}",
        f"  {number} | {shown.line}".rstrip(),
        f"  {' ' * len(number)} | {' ' * shown.before}" + _painted("^" * shown.marked, paint),
    ]


def _painted(text: str, paint: str) -> str:
    return f"\x1b[{paint}m{text}\x1b[0m" if paint else text


def _sentences(diagnostic: Diagnostic) -> str:
    return printable(" ".join(part for part in (diagnostic.found, diagnostic.advice) if part))


def render_short(diagnostics: Iterable[Diagnostic]) -> str:
    """Return one line for each diagnostic, beginning with file, line and column."""
    return "".join(f"{_short(diagnostic)}\n" for diagnostic in diagnostics)


def _short(diagnostic: Diagnostic) -> str:
    where = ""
    if diagnostic.span is not None:
        line, column = diagnostic.span.position()
        where = f"{printable(diagnostic.span.source.name)}:{line}:{column}: "
    return f"{where}{diagnostic.severity.value}: {printable(diagnostic.title)}. {_sentences(diagnostic)}"


def render_json(diagnostics: Iterable[Diagnostic]) -> str:
    """Return the diagnostics as one JSON document."""
    from json import dumps

    found = [_record(diagnostic) for diagnostic in diagnostics]
    return dumps({"schema": SCHEMA, "diagnostics": found}, indent=2, ensure_ascii=False) + "\n"


def _record(diagnostic: Diagnostic) -> dict[str, Any]:
    return {
        "code": diagnostic.code,
        "severity": diagnostic.severity.value,
        "title": diagnostic.title,
        "found": diagnostic.found,
        "advice": diagnostic.advice,
        "place": None if diagnostic.span is None else _place_record(diagnostic.span),
        "related": [{"text": related.text, "place": _place_record(related.span)} for related in diagnostic.related],
    }


def _place_record(span: Span) -> dict[str, Any]:
    (line, column), (end_line, end_column) = span.position(), Span(span.source, span.end, span.end).position()
    return {
        "file": span.source.name,
        "line": line,
        "column": column,
        "end_line": end_line,
        "end_column": end_column,
    }
