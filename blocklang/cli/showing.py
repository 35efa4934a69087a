"""Showing diagnostics: to people on standard error, to programs as JSON."""

import os
import sys
from collections.abc import Iterable

from blocklang.cli.failing import FILE_FAULT, FINE, say
from blocklang.diagnostics import Diagnostic, Severity


def show(diagnostics: Iterable[Diagnostic], short: bool = False) -> int:
    """Show diagnostics, each one once, and return the exit code that they call for."""
    unique = tuple(dict.fromkeys(diagnostics))
    if unique:
        from blocklang.diagnostics import render_long, render_short

        say((render_short(unique) if short else render_long(unique, _in_colour())).rstrip("\n"))
    return exit_code(unique)


def exit_code(diagnostics: Iterable[Diagnostic]) -> int:
    """Return 1 when one of them is an error."""
    return FILE_FAULT if any(one.severity is Severity.ERROR for one in diagnostics) else FINE


def _in_colour() -> bool:
    return sys.stderr.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
