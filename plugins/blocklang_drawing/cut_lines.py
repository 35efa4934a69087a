"""Where the cuts run inside a strip: across it, at a slant, to and fro, and the later cuts from corner to corner."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from blocklang.cutting import FALLING, Lay, Piece
from blocklang_drawing.shapes import Place


@dataclass(frozen=True, slots=True)
class CutLine:
    """One cut, in inches from the lower left corner of its run; `later` for cuts made after the shape is off."""

    start: Place
    end: Place
    later: bool = False


def cut_lines(piece: Piece, count: int, high: float, length: float, *, mirrored: bool = False) -> Iterator[CutLine]:
    """Yield the cuts inside a run of equal shapes, its two ends too; `high` and `length` of the run are inches."""
    if piece.lay in (Lay.UPRIGHT, Lay.TEMPLATE):
        yield from _straight(piece, count, high, length)
        return
    angle = piece.angle or 90.0
    lean = high / math.tan(math.radians(angle))
    for bottom, top in _slants(piece.lay, count, float(piece.cut[-1].shown), lean, angle):
        ends = (length - bottom, length - top) if mirrored else (bottom, top)
        yield CutLine((ends[0], 0.0), (ends[1], high))


def _straight(piece: Piece, count: int, high: float, length: float) -> Iterator[CutLine]:
    step = length / count
    for number in range(count + 1):
        yield CutLine((number * step, 0.0), (number * step, high))
    for number in range(count if piece.yields > 1 else 0):
        left, right = number * step, (number + 1) * step
        if piece.pose != FALLING:
            yield CutLine((left, 0.0), (right, high), later=True)
        if piece.pose == FALLING or piece.yields == 4:
            yield CutLine((left, high), (right, 0.0), later=True)


def _slants(lay: Lay, count: int, second: float, lean: float, angle: float) -> Iterator[Place]:
    """Yield for every cut how far along its lower and its upper end lie."""
    if lay is Lay.SLANTED:
        step = second / math.sin(math.radians(angle))
        yield from ((number * step, number * step + lean) for number in range(count + 1))
        return
    if lay is Lay.POINTED:
        second = 2 * lean
    at = 0.0
    for number in range(count + 1):
        if lay is Lay.ONE_END and number % 2 == 0:
            yield at, at
            at += second
        elif number % 2 == 0:
            yield at, at + lean
            at += second
        else:
            yield at, at - lean
            at += second - 2 * lean if lay is not Lay.ONE_END else second - lean
