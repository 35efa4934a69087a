"""From the runs of a cutting list to kinds of shapes and the ways they may lie."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from blocklang.cloth.plan import ClothOptions, Turning
from blocklang.cutting import Cutting, Lay, Piece, Run

#: Slanted shapes are laid out in eighths of a mark, so that rounding never costs a strip a shape.
_FINER = 8
_NOTHING = 1e-6
#: What rounding to those may take of a strip, in inches: two eighths of the coarsest mark.
_ROUNDED = 1 / 32


@dataclass(frozen=True, slots=True)
class Lie:
    """A way for shapes to lie: `width` across the strip, n of them take `lean + n * step` along it (inches)."""

    width: Fraction
    step: Fraction | float
    lean: float = 0.0
    turned: bool = False

    def fits(self, usable: Fraction) -> bool:
        """Tell whether one shape is no longer than cloth is wide."""
        if isinstance(self.step, Fraction):
            return self.step <= usable
        return self.step + self.lean <= float(usable) - _ROUNDED

    def takes(self, count: int, unit: Fraction) -> int:
        """Return the length that some shapes take, in units, rounded up."""
        if isinstance(self.step, Fraction):
            return int(self.step * count / unit)
        return math.ceil((self.lean + self.step * count) / float(unit) - _NOTHING)


@dataclass(frozen=True, slots=True)
class Kind:
    """Shapes that are all alike: `piece` indexes the cutting list, `lies` are the ways they may lie in a strip."""

    piece: int
    wanted: int
    mirrored: bool
    lies: tuple[Lie, ...]


def kinds_of(cutting: Cutting, options: ClothOptions) -> tuple[Kind, ...]:
    """Return the kinds of shapes that are cut from strips, in the order of the cutting list."""
    return tuple(kind for run in cutting.runs for kind in _kinds(cutting, options, run))


def unit_of(kinds: Sequence[Kind], mark: Fraction) -> Fraction:
    """Return the largest length that all straight cuts are multiples of; finer than a mark when cuts slant."""
    lies = [lie for kind in kinds for lie in kind.lies]
    if any(isinstance(lie.step, float) for lie in lies):
        return mark / _FINER
    unit = Fraction(0)
    for lie in lies:
        unit = _common(_common(unit, lie.width), Fraction(lie.step))
    return unit or mark


def _kinds(cutting: Cutting, options: ClothOptions, run: Run) -> Iterator[Kind]:
    piece = cutting.pieces[run.piece]
    turns = options.turning is not Turning.NEVER and not piece.pose
    for place, wanted in enumerate(run.lots):
        if wanted:
            yield Kind(run.piece, wanted, place == 1, _lies(piece, run, turns))


def _lies(piece: Piece, run: Run, turns: bool) -> tuple[Lie, ...]:
    if run.length is None:
        return (Lie(run.width, run.step, run.lean),)
    as_listed = Lie(run.width, run.length)
    if not turns or run.width == run.length or not (piece.lay is Lay.TEMPLATE or _is_box(piece)):
        return (as_listed,)
    return as_listed, Lie(run.length, run.width, turned=True)


def _is_box(piece: Piece) -> bool:
    return piece.lay is Lay.UPRIGHT and piece.angle is None


def _common(first: Fraction, second: Fraction) -> Fraction:
    """Return the largest fraction that both are multiples of."""
    while second:
        first, second = second, first % second
    return first
