"""Every sentence of the pressing map, in one place."""

from collections.abc import Set
from typing import Final

SUBJECT: Final = "The back of the block"
BACK: Final = "This is the back of the block, so left and right are changed over."
WRONG_SIDE: Final = "Fabrics are paler here than on the front, because you look at their wrong side."
WRONG_SIDE_GREY: Final = "A single layer is white; a seam allowance is grey."
ENLARGED: Final = "The next pages show it larger."
BIAS: Final = "Edges on the bias"
PRESSING: Final = "Pressing"

PRESS: Final = "Press the allowance the way the arrow points."
OPEN: Final = "Press this seam open, half of it to each side."
RIGHT_SIDE: Final = "Here an allowance is turned over, and its right side shows."
SPUN: Final = "Spin this junction: undo the stitches in the allowance, and press all allowances round the same way."
STOP: Final = "Seams stop here, at the match point. Keep the other allowances out of the way."
OUTSIDE: Final = "Seam line of the outside edge. Beyond it lies what is sewn to the next block."

NO_BIAS: Final = "No edge is on the bias."
_LEVELS: Final = {1: ("",), 2: ("upper", "lower"), 3: ("upper", "middle", "lower")}
_SIDES: Final = {1: ("",), 2: ("left", "right"), 3: ("left", "middle", "right")}


def locks(lockable: int, locked: int, spun: int) -> str:
    """Say how many junctions lock and how many are spun."""
    if not lockable:
        return "No seams cross here, so nothing has to lock."
    if lockable == locked == 1:
        return "The junction locks and is spun." if spun else "The junction locks."
    said = f"{locked} of {lockable} junctions lock"
    return f"{said}; {spun} {'is' if spun == 1 else 'are'} spun." if spun else f"{said}."


def part(row: int, column: int, count: int) -> str:
    """Name an enlarged part of the map, so many of them each way."""
    where = [word for word in (_LEVELS[count][row], _SIDES[count][column]) if word]
    place = "middle" if where == ["middle", "middle"] else " ".join(where)
    return f"{SUBJECT}, enlarged: {place}"


def seam(first: str, second: str, toward: Set[str | None]) -> str:
    """Say which way the seams between two kinds of patches are pressed; None for open."""
    between = f"Between two of the kind {first}" if first == second else f"Between {first} and {second}"
    if toward == {None}:
        return f"{between}: press open."
    if first == second or len(toward) > 1:
        return f"{between}: as the picture shows."
    return f"{between}: press toward the {next(iter(toward))}."
