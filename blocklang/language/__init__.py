"""The language of block files: text to syntax tree to block, and back to well laid out text.

What lives here may import geometry, diagnostics, block and limits. The public names are loaded when they are first
used, because a command that only reads a file should not wait for the formatter.
"""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from blocklang.language.cells import BUILT_IN_CELLS, Cell, CellArc, CellPatch
    from blocklang.language.evaluation import Evaluated, Overrides, evaluate
    from blocklang.language.formatting import format_text
    from blocklang.language.parsing import Parsed, parse
    from blocklang.language.placing import Finder
    from blocklang.language.reading import decode_source, read_source

__all__ = [
    "BUILT_IN_CELLS",
    "Cell",
    "CellArc",
    "CellPatch",
    "Evaluated",
    "Finder",
    "Overrides",
    "Parsed",
    "decode_source",
    "evaluate",
    "format_text",
    "parse",
    "read_source",
]

_HOME = {
    "BUILT_IN_CELLS": "cells",
    "Cell": "cells",
    "CellArc": "cells",
    "CellPatch": "cells",
    "Evaluated": "evaluation",
    "Finder": "placing",
    "Overrides": "evaluation",
    "Parsed": "parsing",
    "decode_source": "reading",
    "evaluate": "evaluation",
    "format_text": "formatting",
    "parse": "parsing",
    "read_source": "reading",
}


def __getattr__(name: str) -> Any:
    """Load a public name from its module."""
    if name not in _HOME:
        raise AttributeError(name)
    from importlib import import_module

    value = getattr(import_module(f"blocklang.language.{_HOME[name]}"), name)
    globals()[name] = value
    return value
