"""Where the cuts run inside a strip: across it, at a slant, to and fro, and the second cuts corner to corner."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from blocklang_drawing import Place

from blocklang.cloth import SubCuts
from blocklang.cutting import Lay, Piece


@dataclass(frozen=True, slots=True)
class Line:
    """One cut, in inches from the lower left corner of its run; `later` for cuts made after the shape is off."""

    start: Place
    end: Place
    later: bool = False


def cut_lines(piece: Piece, cut: SubCuts) -> Iterator[Line]:
    """Yield the cuts inside a run of equal shapes, its two ends too."""
    high, length = float(cut.width), float(cut.length)
    if piece.lay in (Lay.UPRIGHT, Lay.TEMPLATE):
        yield from _straight(piece, cut.count, high, length)
        return
    lean = high / math.tan(math.radians(piece.angle or 90.0))
    for bottom, top in _slants(piece.lay, cut.count, float(piece.cut[-1].shown), lean, piece.angle or 90.0):
        ends = (length - bottom, length - top) if cut.mirrored else (bottom, top)
        yield Line((ends[0], 0.0), (ends[1], high))


def _straight(piece: Piece, count: int, high: float, length: float) -> Iterator[Line]:
    step = length / count
    for number in range(count + 1):
        yield Line((number * step, 0.0), (number * step, high))
    for number in range(count if piece.yields > 1 else 0):
        left, right = number * step, (number + 1) * step
        yield Line((left, 0.0), (right, high), later=True)
        if piece.yields == 4:
            yield Line((left, high), (right, 0.0), later=True)


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
