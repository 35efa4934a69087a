"""What stands on a page with words: frozen values that are set on paper by `write_page`."""

from collections.abc import Callable
from dataclasses import dataclass

from blocklang_drawing.shapes import Drawing


@dataclass(frozen=True, slots=True)
class KeyEntry:
    """A small drawing and what it means."""

    drawing: Drawing
    sentence: str


@dataclass(frozen=True, slots=True)
class Section:
    """Sentences under a heading."""

    heading: str
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Written:
    """What stands on a page; `draw` returns the drawing as large as fits in a width and height (points)."""

    name: str
    subject: str
    sentences: tuple[str, ...]
    draw: Callable[[float, float], Drawing]
    key: tuple[KeyEntry, ...] = ()
    sections: tuple[Section, ...] = ()
