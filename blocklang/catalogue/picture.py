"""A small picture of a block: which fabric shows in each cell of a coarse grid."""

from blocklang.block import Block
from blocklang.geometry import Point

Picture = tuple[tuple[str, ...], ...]


def small_picture(block: Block, columns: int, rows: int) -> Picture:
    """Return the fabric's id in each cell, row by row from the top; "" where the block does not reach."""
    width, height = block.size
    cells = [[""] * columns for _ in range(rows)]
    for patch in block.patches:
        ring = patch.outline.chords()
        for row in range(rows):
            y = height * (2 * (rows - row) - 1) / (2 * rows)
            for start, end in _stretches(ring, y):
                for column in range(_cell(start, width, columns), _cell(end, width, columns)):
                    cells[row][column] = patch.fabric
    return tuple(tuple(row) for row in cells)


def _stretches(ring: tuple[Point, ...], y: float) -> list[tuple[float, float]]:
    """Return where a level line runs inside a ring."""
    crossings = sorted(
        a.x + (b.x - a.x) * (y - a.y) / (b.y - a.y)
        for a, b in zip(ring, ring[1:] + ring[:1], strict=True)
        if (a.y <= y) != (b.y <= y)
    )
    return list(zip(crossings[::2], crossings[1::2], strict=True))


def _cell(x: float, width: int, columns: int) -> int:
    """Return the first column whose centre lies at x or right of it."""
    return max(0, min(columns, -int(-(x * columns / width - 0.5) // 1)))
