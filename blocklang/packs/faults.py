"""Wording what is wrong with a pack."""

from blocklang.diagnostics import Diagnostic, Severity

FRESH_COPY = "Ask whoever gave it to you for a fresh copy."


def broken(name: str, code: str, found: str, advice: str = FRESH_COPY) -> Diagnostic:
    """Return the error of a pack that must not be used."""
    return Diagnostic(code, Severity.ERROR, f"`{name}` is not a sound pack", found, advice)


def refused(code: str, title: str, found: str, advice: str = "") -> Diagnostic:
    """Return an error."""
    return Diagnostic(code, Severity.ERROR, title, found, advice)


def distrusted(name: str, code: str, found: str, advice: str = FRESH_COPY) -> Diagnostic:
    """Return the error of a pack that is not signed as it must be."""
    return Diagnostic(code, Severity.ERROR, f"`{name}` is not used, because its signature was asked for", found, advice)
