"""How the blocks of a quilt lie beside each other: which are turned, and which are mirrored."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from blocklang.wording import say


@dataclass(frozen=True, slots=True)
class Lie:
    """How one block lies: mirrored left to right if at all, then turned counterclockwise by quarter turns."""

    quarters: int = 0
    mirrored: bool = False


@dataclass(frozen=True, slots=True)
class Spot:
    """One place of a quilt, counted from its upper left corner, and how many rows and columns there are."""

    row: int
    column: int
    rows: int
    columns: int


@dataclass(frozen=True, slots=True)
class Arrangement:
    """A way to lay blocks: what it says of itself, how each lies, and whether it needs an even number each way."""

    sentence: str
    lie: Callable[[Spot], Lie]
    even: bool = False


def _every_other(spot: Spot) -> Lie:
    return Lie((spot.row + spot.column) % 2)


def _pinwheel(spot: Spot) -> Lie:
    around = {(0, 0): 0, (0, 1): 3, (1, 1): 2, (1, 0): 1}
    return Lie(around[spot.row % 2, spot.column % 2])


def _furrows(spot: Spot) -> Lie:
    return Lie((spot.row + spot.column) % 2 * 2)


def _barn_raising(spot: Spot) -> Lie:
    """Lay furrows in one quarter of the quilt, and turn it about the middle for the other three."""
    up, across = spot.rows // 2 - 1 - spot.row, spot.column - spot.columns // 2
    quarter = {(True, True): 0, (True, False): 1, (False, False): 2, (False, True): 3}[up >= 0, across >= 0]
    steps = (up if up >= 0 else -1 - up) + (across if across >= 0 else -1 - across)
    return Lie((steps % 2 * 2 + quarter) % 4)


def _rows_mirrored(spot: Spot) -> Lie:
    return Lie(2, mirrored=True) if spot.row % 2 else Lie()


def _columns_mirrored(spot: Spot) -> Lie:
    return Lie(mirrored=bool(spot.column % 2))


def _both_mirrored(spot: Spot) -> Lie:
    down, across = spot.row % 2, spot.column % 2
    return Lie(down * 2, mirrored=down != across)


ARRANGEMENTS: Final = {
    "alike": Arrangement(say("All blocks lie alike."), lambda spot: Lie()),
    "every-other": Arrangement(say("Every other block is turned a quarter."), _every_other),
    "pinwheel": Arrangement(say("Four blocks at a time are turned about their middle, like a pinwheel."), _pinwheel),
    "furrows": Arrangement(say("Every other block is turned upside down, in straight furrows."), _furrows),
    "barn-raising": Arrangement(
        say("The blocks are turned in rings about the middle, a barn raising."), _barn_raising, True
    ),
    "rows-mirrored": Arrangement(say("Every other row is a mirror image of the row above it."), _rows_mirrored),
    "columns-mirrored": Arrangement(
        say("Every other column is a mirror image of the one beside it."), _columns_mirrored
    ),
    "both-mirrored": Arrangement(say("Every block is a mirror image of each block beside it."), _both_mirrored),
}
