"""Pressing as frozen values."""

from dataclasses import dataclass

from blocklang.block import SpinSense


@dataclass(frozen=True, slots=True)
class Pressed:
    """One seam segment and the patch its allowance lies under; `toward` is None when it is pressed open."""

    segment: int
    toward: int | None


@dataclass(frozen=True, slots=True)
class Spun:
    """A junction whose allowances all lie the same way round, seen from the front of the block."""

    junction: int
    sense: SpinSense


@dataclass(frozen=True, slots=True)
class Reason:
    """Why a junction that could lock does not, or what an author's line costs, in one sentence."""

    junction: int | None
    text: str


@dataclass(frozen=True, slots=True)
class Pressing:
    """All directions at once.

    `directions` has one entry for every seam segment of the graph, by segment index. `proven` is True only when the
    solver proved that no other choice is better; `gap` is what it could not rule out, in cost, 0.0 when proven.
    """

    directions: tuple[Pressed, ...]
    lockable: tuple[int, ...]
    locked: tuple[int, ...]
    spins: tuple[Spun, ...]
    proven: bool
    gap: float
    reasons: tuple[Reason, ...]
