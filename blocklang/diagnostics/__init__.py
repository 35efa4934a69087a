"""What is wrong with a file, as values, and the one renderer that words them; any stage may import it."""

from typing import TYPE_CHECKING, Any

from blocklang.diagnostics.values import Diagnostic, Related, Severity, SourceText, Span

if TYPE_CHECKING:
    from blocklang.diagnostics.rendering import render_json, render_long, render_short

__all__ = [
    "Diagnostic",
    "Related",
    "Severity",
    "SourceText",
    "Span",
    "render_json",
    "render_long",
    "render_short",
]


def __getattr__(name: str) -> Any:
    """Load the renderer when there is something to render."""
    if not name.startswith("render_"):
        raise AttributeError(name)
    from blocklang.diagnostics import rendering

    return getattr(rendering, name)
