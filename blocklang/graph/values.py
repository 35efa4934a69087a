"""The patch graph as frozen values."""

from dataclasses import dataclass
from enum import StrEnum

from blocklang.block import Block
from blocklang.geometry import Edge, Point

OUTSIDE = -1


class JunctionKind(StrEnum):
    """What meets at a junction."""

    CROSS = "cross"  # four seams, two straight lines
    TEE = "tee"  # three seams, one straight line
    Y = "y"  # three or more seams, no two of them in line
    CORNER = "corner"  # the inner corner of an L-shaped patch: two seams that bend
    MANY = "many"  # more seams, at least one straight line
    EDGE = "edge"  # on the outline of the block


@dataclass(frozen=True, slots=True)
class Segment:
    """A seam segment, or a piece of the outline (then one side is `OUTSIDE`).

    `left` and `right` are patch indices as seen travelling `edge` from junction `start` to junction `end`.
    """

    index: int
    edge: Edge
    start: int
    end: int
    left: int
    right: int

    @property
    def is_seam(self) -> bool:
        """Whether there is a patch on both sides."""
        return self.left != OUTSIDE and self.right != OUTSIDE

    @property
    def patches(self) -> tuple[int, int]:
        """The two sides."""
        return self.left, self.right

    def other_end(self, junction: int) -> int:
        """Return the junction at the other end."""
        return self.end if junction == self.start else self.start


@dataclass(frozen=True, slots=True)
class SegmentEnd:
    """One end of a segment at a junction: the heading in which it leaves, and the end it runs straight on into."""

    segment: int
    at_start: bool
    heading: float
    straight_on: int | None  # the segment in line with this one on the other side of the junction


@dataclass(frozen=True, slots=True)
class Junction:
    """A point where seams meet; `ends` go round counterclockwise."""

    index: int
    at: Point
    kind: JunctionKind
    ends: tuple[SegmentEnd, ...]

    @property
    def is_inner(self) -> bool:
        """Whether patches surround the junction completely."""
        return self.kind is not JunctionKind.EDGE

    @property
    def always_pivots(self) -> bool:
        """Whether no seam runs straight through, so that closing it costs one pivot in every order."""
        return self.kind in (JunctionKind.Y, JunctionKind.CORNER)


@dataclass(frozen=True, slots=True)
class PatchGraph:
    """A block as a planar subdivision; indices point into the tuples.

    `sides[p]` lists the segments round patch p counterclockwise, each with True when the patch is on its left.
    """

    block: Block
    junctions: tuple[Junction, ...]
    segments: tuple[Segment, ...]
    sides: tuple[tuple[tuple[int, bool], ...], ...]

    @property
    def seams(self) -> tuple[Segment, ...]:
        """The segments with a patch on both sides."""
        return tuple(segment for segment in self.segments if segment.is_seam)
