"""What is on the bias, as frozen values."""

from collections.abc import Collection
from dataclasses import dataclass
from enum import StrEnum


class BiasKind(StrEnum):
    """Where an edge that is on the bias ends up."""

    SEAM = "seam"
    OUTSIDE = "outside"


@dataclass(frozen=True, slots=True)
class BiasWarning:
    """One sentence about equal patches: `segments` are their edges that are on the bias, in a seam or outside."""

    kind: BiasKind
    patches: tuple[int, ...]
    segments: tuple[int, ...]
    sentence: str


@dataclass(frozen=True, slots=True)
class Bias:
    """All that is on the bias in a block.

    `grain` has for each patch the heading of its straight grain as it lies in the block (radians), None where the
    way of cutting does not say. `sides` are (segment, patch) pairs: the edge of that patch is on the bias there.
    """

    grain: tuple[float | None, ...]
    sides: tuple[tuple[int, int], ...]
    warnings: tuple[BiasWarning, ...]

    def about(self, segments: Collection[int]) -> tuple[BiasWarning, ...]:
        """Return the warnings about seams among some segments: what to say at the step that sews them."""
        wanted = frozenset(segments)
        seams = (warning for warning in self.warnings if warning.kind is BiasKind.SEAM)
        return tuple(warning for warning in seams if wanted & frozenset(warning.segments))

    @property
    def outside(self) -> tuple[BiasWarning, ...]:
        """The warnings about the outside of the block: what to say before sewing begins."""
        return tuple(warning for warning in self.warnings if warning.kind is BiasKind.OUTSIDE)
