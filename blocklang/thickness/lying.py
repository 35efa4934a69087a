"""Which way allowances lie, as plain values that any stage can give."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Protocol


class Direction(Protocol):
    """A seam segment and the patch that its allowance lies under, None when it is pressed open."""

    @property
    def segment(self) -> int:
        """The seam segment."""

    @property
    def toward(self) -> int | None:
        """The patch."""


@dataclass(frozen=True, slots=True)
class Lies:
    """Where the allowance of each seam segment lies, and the junctions that are spun."""

    toward: Mapping[int, int | None]
    spun: frozenset[int]

    @staticmethod
    def of(directions: Iterable[Direction], spun: Iterable[int] = ()) -> "Lies":
        """Gather directions, one for each seam segment."""
        return Lies({each.segment: each.toward for each in directions}, frozenset(spun))
