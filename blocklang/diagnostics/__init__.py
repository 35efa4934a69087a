"""What is wrong with a file, as values, and the one renderer that words them; any stage may import it."""

from blocklang.diagnostics.values import Diagnostic, Related, Severity, SourceText, Span

__all__ = ["Diagnostic", "Related", "Severity", "SourceText", "Span"]
