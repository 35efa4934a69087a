"""Pressing as frozen values."""

from dataclasses import dataclass

from blocklang.block import SpinSense
from blocklang.diagnostics import Diagnostic


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
class Version:
    """One way in which equal placed copies of a block are pressed: its letter, and the copies by their groups."""

    letter: str
    copies: tuple[tuple[str, ...], ...]


@dataclass(frozen=True, slots=True)
class PlacedVersions:
    """How the equal copies of a placed block are pressed, so that as many seams as can lock where copies meet.

    `block` is the block's name as its file gives it. `fewest` is True only when it is proven that fewer versions
    lock less. `turned` are the copies that could be turned a quarter instead, with no change of the picture, so that
    one version is enough; it is empty where that does not help. `text` says all this in a sentence or two.
    """

    block: str
    versions: tuple[Version, ...]
    fewest: bool
    turned: tuple[tuple[str, ...], ...]
    text: str

    def letter_of(self, group: tuple[str, ...]) -> str | None:
        """Return the letter of the version that a patch of that group belongs to; None when it is in no copy."""
        found = (v.letter for v in self.versions if any(group[: len(copy)] == copy for copy in v.copies))
        return next(found, None)


@dataclass(frozen=True, slots=True)
class Pressing:
    """All directions at once.

    `directions` has one entry for every seam segment of the graph, by segment index. `proven` is True only when the
    solver proved that no other choice is better; `gap` is what it could not rule out, in cost, 0.0 when proven.
    `versions` has an entry for each block that is placed more than once in equal copies; `techniques` are those that
    the person asked for; `diagnostics` warn of lines of the author that contradict each other.
    """

    directions: tuple[Pressed, ...]
    lockable: tuple[int, ...]
    locked: tuple[int, ...]
    spins: tuple[Spun, ...]
    proven: bool
    gap: float
    reasons: tuple[Reason, ...]
    versions: tuple[PlacedVersions, ...] = ()
    techniques: tuple[str, ...] = ()
    diagnostics: tuple[Diagnostic, ...] = ()

    def version_of(self, group: tuple[str, ...]) -> str | None:
        """Return the letter of the version that a patch of that group is pressed in; None when there is only one."""
        several = (placed for placed in self.versions if len(placed.versions) > 1)
        return next((letter for placed in several if (letter := placed.letter_of(group))), None)
