"""What meets at one junction, apart from where it lies in its block."""

from dataclasses import dataclass

from blocklang.assembly.values import JoinKind


@dataclass(frozen=True, slots=True)
class LocalJoin:
    """What a join does at a junction: seam ends by place, `on` where it arrives first, and the wedges of its units."""

    kind: JoinKind
    first: int | None
    last: int | None
    stops: bool
    units: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class Meeting:
    """What meets at a junction: seam ends by heading, counterclockwise, and the joins there in order.

    Wedge w lies between end w and the next; at the edge of the block the last wedge lies outside. `straight` pairs
    ends in line.
    """

    headings: tuple[float, ...]
    straight: tuple[int | None, ...]
    at_edge: bool
    joins: tuple[LocalJoin, ...]
