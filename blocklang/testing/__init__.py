"""For those who write plugins: holds what a plugin offers against the blocks of the library.

The package `blocklang_pytest` gives tests a `Workbench`; this is what it is made of, and it works without pytest too.
May import everything but the commands; nothing imports it.
"""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from blocklang.testing.holding import NotHeldError
    from blocklang.testing.workbench import Workbench

__all__ = ["NotHeldError", "Workbench"]

_HOME = {"NotHeldError": "holding", "Workbench": "workbench"}


def __getattr__(name: str) -> Any:
    """Load a public name from its module."""
    if name not in _HOME:
        raise AttributeError(name)
    from importlib import import_module

    return getattr(import_module(f"blocklang.testing.{_HOME[name]}"), name)
