"""Cells of three equal strips, as a rail fence is made of: lying and standing."""

from fractions import Fraction

from blocklang.language import Cell, CellPatch

LINES: tuple[Fraction | int, ...] = (0, Fraction(1, 3), Fraction(2, 3), 1)


def _upright(_: Fraction) -> tuple[CellPatch, ...]:
    return tuple(
        CellPatch(fabric, ((left, 0), (right, 0), (right, 1), (left, 1)))
        for fabric, (left, right) in enumerate(zip(LINES, LINES[1:], strict=False))
    )


def _across(_: Fraction) -> tuple[CellPatch, ...]:
    """Return the strips from the top down."""
    return tuple(
        CellPatch(2 - strip, ((0, low), (1, low), (1, high), (0, high)))
        for strip, (low, high) in reversed(tuple(enumerate(zip(LINES, LINES[1:], strict=False))))
    )


RAILS_ACROSS = Cell("rails-across", "three strips, one above the other", ("top", "middle", "bottom"), _across)
RAILS_UPRIGHT = Cell("rails-upright", "three strips side by side", ("left", "middle", "right"), _upright)
