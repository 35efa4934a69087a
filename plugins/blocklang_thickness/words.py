"""Every sentence about thickness, in one place."""

from collections.abc import Sequence
from typing import Final

from blocklang.wording import joined, listed, say, say_decimal, say_number

SUBJECT: Final = say("How many layers lie where")
FRONT: Final = say("This is the block from the front, its raw edges all round.")
NUMBERS: Final = say(
    "The number at a junction is the most layers within a seam allowance of it; black is the highest pile."
)
MORE_NUMBERS: Final = say("Where there is no room for every number, some are left out.")
SHARES: Final = say("The scale says how much of the block is so thick.")
LEVELS: Final = say("Layers, and how much of the block is so thick")
PILES: Final = say("Junctions")
_MOST_NAMES: Final = 4


def title(name: str) -> str:
    """Say what the picture is."""
    return say("{name}: how many layers lie where", name=name)


def layers(count: int) -> str:
    """Say how many layers."""
    return say_number("{count} layer", "{count} layers", count)


def highest(count: int, places: Sequence[tuple[str, ...]]) -> str:
    """Say how high the highest pile is and where: for each place the patches that meet, or one name."""
    first = _place(places[0])
    if len(places) == 1:
        return say("The highest pile is {layers}, {where}.", layers=layers(count), where=first)
    return say(
        "The highest pile is {layers}, at {junctions} junctions; one of them is {where}.",
        layers=layers(count),
        junctions=len(places),
        where=first,
    )


def mean(value: float) -> str:
    """Say how many layers lie at a place on average."""
    return say("On average {layers} layers lie at a place.", layers=say_decimal(f"{value:.2f}"))


def level(count: int, share: float) -> str:
    """Say how much of the block is so thick."""
    tenth = say_decimal("0.1" if share < 0.001 else f"{share * 100:.1f}")
    percent = say("under {percent} %", percent=tenth) if share < 0.001 else say("{percent} %", percent=tenth)
    return joined((layers(count), percent), ": ")


def piles(count: int, number: int) -> str:
    """Say how many junctions are so thick."""
    return joined((layers(count), say_number("{count} junction", "{count} junctions", number)), ": ")


def quoted(name: str) -> str:
    """Return the name that the file gives a junction, as it is quoted."""
    return say("“{name}”", name=name)


def _place(names: tuple[str, ...]) -> str:
    if len(names) == 1:
        return say("at {junction}", junction=names[0])
    if len(names) > _MOST_NAMES:
        named = names[: _MOST_NAMES - 1]
        return say("where {names} and {count} more meet", names=joined(named, ", "), count=len(names) - len(named))
    return say("where {names} meet", names=listed(names))
