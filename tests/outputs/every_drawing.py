"""Every drawing that an output makes on its way to a file, caught where it becomes SVG."""

import importlib
import pkgutil
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache

import pytest
from blocklang_drawing import Drawing
from blocklang_drawing.svg import to_svg
from blocklang_drawing.typesetting import set_pages

from blocklang.hooks import CannotMakeError, Output, OutputOptions
from blocklang.plan import SewingPlan


def drawings_of(output: Output, plan: SewingPlan, options: OutputOptions) -> list[Drawing]:
    """Return all drawings of an output, small and large, in the order in which they are made."""
    _load_plugins()
    with _caught() as drawings:
        try:
            output.make(plan, options)
        except CannotMakeError:
            return []
    return drawings


@cache
def _load_plugins() -> None:
    """Import every module of the plugins, so that each has the name that is to be caught."""
    for package in (found.name for found in pkgutil.iter_modules() if found.name.startswith("blocklang_")):
        for inner in pkgutil.iter_modules(importlib.import_module(package).__path__):
            importlib.import_module(f"{package}.{inner.name}")


@contextmanager
def _caught() -> Iterator[list[Drawing]]:
    found: list[Drawing] = []

    def catch(drawing: Drawing, **options: bool) -> str:
        found.append(drawing)
        return to_svg(drawing, **options)

    with pytest.MonkeyPatch.context() as patches:
        for name, module in sorted(sys.modules.items()):
            if name.startswith("blocklang_") and getattr(module, "to_svg", None) is to_svg:
                patches.setattr(module, "to_svg", catch)
            if name.startswith("blocklang_") and getattr(module, "set_pages", None) is set_pages:
                patches.setattr(module, "set_pages", lambda *_, **__: b"")
        yield found
