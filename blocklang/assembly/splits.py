"""The ways to take a unit apart into what it is sewn from."""

from dataclasses import dataclass
from enum import Enum

from blocklang.assembly.preferences import Why
from blocklang.assembly.regions import Region


class SplitKind(Enum):
    """How the parts of a unit come together."""

    ROW = "row"  # side by side, each sewn to the one before
    AROUND = "around"  # the first part is the body; the others are equal and sewn to it, one after another
    CLOSING = "closing"  # one part: the same unit with a seam still half open
    RING = "ring"  # one part: the same unit with a seam across a ring still open from edge to edge


@dataclass(frozen=True, slots=True)
class Split:
    """A unit's last joins: the parts in order, the segments closed last in one unit, and where that begins."""

    kind: SplitKind
    parts: tuple[Region, ...]
    why: Why
    closing: tuple[int, ...] = ()
    begins: int = -1
