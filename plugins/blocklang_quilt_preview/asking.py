"""What was asked for, held against what the block allows."""

from dataclasses import dataclass

from blocklang.block import Block
from blocklang.geometry import TICKS_PER_INCH
from blocklang.hooks import CannotMakeError, OutputOptions
from blocklang_quilt_preview import words
from blocklang_quilt_preview.arrangements import ARRANGEMENTS, Arrangement, Lie, Spot

USUAL, MOST = 4, 40
#: More patches than this make a picture too large to send to anyone.
MOST_PATCHES = 25_000
#: Sides and areas that differ by less than this (ticks, and a share) are equal.
EQUAL, SHARE = TICKS_PER_INCH // 1000, 1e-6


@dataclass(frozen=True, slots=True)
class Quilt:
    """How many rows and columns, the arrangement, and how the block of each place lies, row after row from the top."""

    rows: int
    columns: int
    arrangement: Arrangement
    lies: tuple[Lie, ...]


def quilt_asked_for(block: Block, options: OutputOptions) -> Quilt:
    """Return the quilt; a CannotMakeError says why there is none."""
    if not is_rectangle(block):
        raise CannotMakeError(words.NO_RECTANGLE)
    rows, columns = (_count(options, name) for name in ("rows", "columns"))
    arrangement = ARRANGEMENTS[options.setting("turning", "alike")]
    if arrangement.even and (rows % 2 or columns % 2):
        raise CannotMakeError(words.NOT_EVEN)
    if rows * columns * len(block.patches) > MOST_PATCHES:
        raise CannotMakeError(words.TOO_MANY)
    spots = (Spot(row, column, rows, columns) for row in range(rows) for column in range(columns))
    lies = tuple(map(arrangement.lie, spots))
    if any(lie.quarters % 2 for lie in lies) and abs(block.size[0] - block.size[1]) > EQUAL:
        raise CannotMakeError(words.NOT_SQUARE)
    return Quilt(rows, columns, arrangement, lies)


def is_rectangle(block: Block) -> bool:
    """Tell whether the block's outline is a rectangle that lies straight."""
    wide, high = block.size
    return bool(abs(block.outline.area() - wide * high) <= SHARE * wide * high)


def _count(options: OutputOptions, name: str) -> int:
    written = options.setting(name, str(USUAL))
    if not (written.isascii() and written.isdigit() and len(written) < 4 and 1 <= int(written) <= MOST):
        raise CannotMakeError(words.not_a_count(name, MOST))
    return int(written)
