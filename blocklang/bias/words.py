"""What is said about edges on the bias: which they are, and how to handle them."""

import re

from blocklang.bias.values import BiasKind
from blocklang.geometry import Outline

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six")
_NOUNS = ("patch", "triangle", "square", "rectangle", "parallelogram", "trapezoid", "hexagon")
#: What tells lines of the cutting list apart whose patches have one name.
_LETTER = re.compile(r"(.*?)( [A-Z]+)")
_HALVES = ("half-square-triangle", "half-rectangle-triangle")


def which_edges(outline: Outline, edges: tuple[int, ...], method: str) -> str:
    """Name the edges of a patch: "the long side", "two sides", "the curved edge"."""
    curved = [edge for edge in edges if outline.edges[edge].arc is not None]
    if curved and len(curved) == len(edges):
        return "the curved edge" if len(curved) == 1 else "the curved edges"
    if method in _HALVES and len(edges) == 1:
        return "the long side"
    if method == "quarter-square-triangle":
        return "the two short sides" if len(edges) == 2 else "a short side"
    if len(edges) == len(outline.edges):
        return "all sides"
    number = _NUMBERS[len(edges)] if len(edges) < len(_NUMBERS) else str(len(edges))
    return f"{number} side" if len(edges) == 1 else f"{number} sides"


def say(kind: BiasKind, name: str, which: str, count: int) -> str:
    """Say in one or two sentences which patches have edges on the bias, and what to do."""
    subject = f"{_first_large(which)} of {counted(name, count)}"
    verb = "is" if _is_one(which) else "are"
    if kind is BiasKind.OUTSIDE:
        edge = "edge" if _is_one(which) and count == 1 else "edges"
        return (
            f"{subject} {verb} on the bias, on the outside of the block. "
            f"Stay-stitch the {edge} inside the seam allowance before you sew, and do not stretch the block."
        )
    return f"{subject} {verb} on the bias. Press there, do not slide the iron."


def counted(name: str, count: int) -> str:
    """Name equal patches: "the roof", "each of the 8 diamond patches", "each of the 4 half-square triangles B"."""
    marked = _LETTER.fullmatch(name)
    said, letter = marked.groups() if marked else (name, "")
    noun = said if said.endswith(_NOUNS) else f"{said} patch"
    if count == 1:
        return f"the {noun}{letter}"
    many = f"{noun}es" if noun.endswith("patch") else f"{noun}s"
    return f"each of the {count} {many}{letter}"


def _is_one(which: str) -> bool:
    return which.endswith((" side", " edge"))


def _first_large(text: str) -> str:
    return text[:1].upper() + text[1:]
