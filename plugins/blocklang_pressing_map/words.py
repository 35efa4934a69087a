"""Every sentence of the pressing map, in one place."""

from collections.abc import Set
from typing import Final

from blocklang.cutting.words import the
from blocklang.wording import joined, say, say_number

SUBJECT: Final = say("The back of the block")
BACK: Final = say("This is the back of the block, so left and right are changed over.")
WRONG_SIDE: Final = say("Fabrics are paler here than on the front, because you look at their wrong side.")
WRONG_SIDE_GREY: Final = say("A single layer is white; a seam allowance is grey.")
ENLARGED: Final = say("The next pages show it larger.")
BIAS: Final = say("Edges on the bias")
PRESSING: Final = say("Pressing")

PRESS: Final = say("Press the allowance the way the arrow points.")
OPEN: Final = say("Press this seam open, half of it to each side.")
RIGHT_SIDE: Final = say("Here an allowance is turned over, and its right side shows.")
SPUN: Final = say(
    "Spin this junction: undo the stitches in the allowance, and press all allowances round the same way."
)
STOP: Final = say("Seams stop here, at the match point. Keep the other allowances out of the way.")
OUTSIDE: Final = say("Seam line of the outside edge. Beyond it lies what is sewn to the next block.")

NO_BIAS: Final = say("No edge is on the bias.")
_PARTS: Final = {
    2: (
        (say("upper left"), say("upper right")),
        (say("lower left"), say("lower right")),
    ),
    3: (
        (say("upper left"), say("upper middle"), say("upper right")),
        (say("middle left"), say("middle"), say("middle right")),
        (say("lower left"), say("lower middle"), say("lower right")),
    ),
}


def locks(lockable: int, locked: int, spun: int) -> str:
    """Say how many junctions lock and how many are spun."""
    if not lockable:
        return say("No seams cross here, so nothing has to lock.")
    if lockable == locked == 1:
        return say("The junction locks and is spun.") if spun else say("The junction locks.")
    locking = say_number(
        "{count} of {lockable} junctions lock", "{count} of {lockable} junctions lock", locked, lockable=lockable
    )
    if not spun:
        return joined((locking, "."), "")
    return joined((locking, say_number("{count} is spun.", "{count} are spun.", spun)), "; ")


def part(row: int, column: int, count: int) -> str:
    """Name an enlarged part of the map, so many of them each way."""
    return say("{subject}, enlarged: {place}", subject=SUBJECT, place=_PARTS[count][row][column])


def key_title(sentence: str) -> str:
    """Say what a mark of the key stands for."""
    return say("The mark for: {sentence}", sentence=sentence)


def seam(first: str, second: str, toward: Set[str | None]) -> str:
    """Say which way the seams between two kinds of patches are pressed; None for open."""
    same = first == second
    between = (
        say("Between two of the kind {kind}", kind=first)
        if same
        else say("Between {first} and {second}", first=first, second=second)
    )
    if toward == {None}:
        return say("{between}: press open.", between=between)
    if same or len(toward) > 1:
        return say("{between}: as the picture shows.", between=between)
    return say("{between}: press toward {kind}.", between=between, kind=the(next(iter(toward)) or ""))
