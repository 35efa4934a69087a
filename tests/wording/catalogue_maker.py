"""The program that makes the catalogues, for the tests: `python3 dev.py words`."""

import sys
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path
from types import ModuleType

from babel.messages.catalog import Catalog

ROOT = Path(__file__).resolve().parents[2]


def load() -> ModuleType:
    """Return the program as a module."""
    known = sys.modules.get("catalogue_maker")
    if known is not None:
        return known
    spec = spec_from_file_location("catalogue_maker", ROOT / ".ci" / "words.py")
    assert spec is not None
    assert spec.loader is not None
    module = sys.modules["catalogue_maker"] = module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def packed(texts: dict[str, str], many: str, plural: str) -> bytes:
    """Return a compiled Spanish catalogue of sentences that all have the same plural."""
    catalogue = Catalog(locale="es")
    for text, translation in texts.items():
        catalogue.add((text, many), (translation, plural))
    made: bytes = load().as_mo(catalogue, "es")
    return made
