"""What is said about edges on the bias: which they are, and how to handle them."""

from dataclasses import dataclass
from typing import Final

from blocklang.bias.values import BiasKind
from blocklang.cutting.called import each_of as counted
from blocklang.geometry import Outline
from blocklang.wording import Saying, message, say, say_number

__all__ = ["Edges", "counted", "say_warning", "which_edges"]

_HALVES = ("half-square-triangle", "half-rectangle-triangle")


@dataclass(frozen=True, slots=True)
class Edges:
    """Which edges of a patch: the words that a sentence begins with, and whether they are of one edge."""

    said: Saying
    is_one: bool


_CURVED: Final = Edges(say("The curved edge"), True)
_ALL_CURVED: Final = Edges(say("The curved edges"), False)
_LONG: Final = Edges(say("The long side"), True)
_SHORT: Final = Edges(say("A short side"), True)
_BOTH_SHORT: Final = Edges(say("The two short sides"), False)
_ALL: Final = Edges(say("All sides"), False)
_NUMBERS: Final = (
    say("No sides"),
    say("One side"),
    say("Two sides"),
    say("Three sides"),
    say("Four sides"),
    say("Five sides"),
    say("Six sides"),
)

_IN_SEAM: Final = message("{edge} of {patches} is on the bias. Press there, do not slide the iron.")
_IN_SEAMS: Final = message("{edges} of {patches} are on the bias. Press there, do not slide the iron.")
_OUTSIDE_ONCE: Final = message(
    "{edge} of {patches} is on the bias, on the outside of the block. "
    "Stay-stitch the edge inside the seam allowance before you sew, and do not stretch the block."
)
_OUTSIDE_OF_EACH: Final = message(
    "{edge} of {patches} is on the bias, on the outside of the block. "
    "Stay-stitch the edges inside the seam allowance before you sew, and do not stretch the block."
)
_OUTSIDE: Final = message(
    "{edges} of {patches} are on the bias, on the outside of the block. "
    "Stay-stitch the edges inside the seam allowance before you sew, and do not stretch the block."
)


def which_edges(outline: Outline, edges: tuple[int, ...], method: str) -> Edges:
    """Name the edges of a patch: "The long side", "Two sides", "The curved edge"."""
    curved = [edge for edge in edges if outline.edges[edge].arc is not None]
    if curved and len(curved) == len(edges):
        return _CURVED if len(curved) == 1 else _ALL_CURVED
    if method in _HALVES and len(edges) == 1:
        return _LONG
    if method == "quarter-square-triangle":
        return _BOTH_SHORT if len(edges) == 2 else _SHORT
    if len(edges) == len(outline.edges):
        return _ALL
    if len(edges) < len(_NUMBERS):
        return Edges(_NUMBERS[len(edges)], len(edges) == 1)
    return Edges(say_number("{count} side", "{count} sides", len(edges)), False)


def say_warning(kind: BiasKind, name: str, which: Edges, count: int) -> Saying:
    """Say in one or two sentences which patches have edges on the bias, and what to do."""
    patches = counted(name, count)
    if not which.is_one:
        told = _OUTSIDE if kind is BiasKind.OUTSIDE else _IN_SEAMS
        return told.say(edges=which.said, patches=patches)
    if kind is BiasKind.OUTSIDE:
        return (_OUTSIDE_ONCE if count == 1 else _OUTSIDE_OF_EACH).say(edge=which.said, patches=patches)
    return _IN_SEAM.say(edge=which.said, patches=patches)
