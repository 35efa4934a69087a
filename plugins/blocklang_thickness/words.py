"""Every sentence about thickness, in one place."""

from collections.abc import Sequence
from typing import Final

SUBJECT: Final = "How many layers lie where"
FRONT: Final = "This is the block from the front, its raw edges all round."
NUMBERS: Final = "The number at a junction is the most layers within a seam allowance of it; black is the highest pile."
MORE_NUMBERS: Final = "Where there is no room for every number, some are left out."
SHARES: Final = "The scale says how much of the block is so thick."
LEVELS: Final = "Layers, and how much of the block is so thick"
PILES: Final = "Junctions"
_MOST_NAMES: Final = 4


def layers(count: int) -> str:
    """Say how many layers."""
    return "1 layer" if count == 1 else f"{count} layers"


def highest(count: int, places: Sequence[tuple[str, ...]]) -> str:
    """Say how high the highest pile is and where: for each place the patches that meet, or one name."""
    first = _place(places[0])
    if len(places) == 1:
        return f"The highest pile is {layers(count)}, {first}."
    return f"The highest pile is {layers(count)}, at {len(places)} junctions; one of them is {first}."


def mean(value: float) -> str:
    """Say how many layers lie at a place on average."""
    return f"On average {value:.2f} layers lie at a place."


def level(count: int, share: float) -> str:
    """Say how much of the block is so thick."""
    percent = "under 0.1" if share < 0.001 else f"{share * 100:.1f}"
    return f"{layers(count)}: {percent} %"


def piles(count: int, number: int) -> str:
    """Say how many junctions are so thick."""
    return f"{layers(count)}: {number} {'junction' if number == 1 else 'junctions'}"


def _place(names: tuple[str, ...]) -> str:
    if len(names) == 1:
        return f"at {names[0]}"
    if len(names) > _MOST_NAMES:
        return f"where {', '.join(names[: _MOST_NAMES - 1])} and {len(names) - _MOST_NAMES + 1} more meet"
    return f"where {', '.join(names[:-1])} and {names[-1]} meet"
