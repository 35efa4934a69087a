"""How many shapes a strip holds."""

import math
from dataclasses import dataclass
from fractions import Fraction

from blocklang.cutting.rounding import measure
from blocklang.cutting.values import CuttingOptions, Lay, Measure, Strip
from blocklang.geometry import TICKS_PER_INCH, Outline

#: Rulers and cloth are not exact to a ten-millionth of an inch; sums of marks, as floats, are.
_NOTHING = 1e-7


@dataclass(frozen=True, slots=True)
class Spacing:
    """How shapes lie along a strip: each takes `step` inches, and all together `lean` more; `area` is that of one.

    `length` is the step as an exact number, for shapes that are cut straight across.
    """

    width: Measure
    step: float
    lean: float
    area: float
    length: Fraction | None = None

    def holds(self, length: float) -> int:
        """Return how many shapes a length of strip holds."""
        return max(0, math.floor((length - self.lean + _NOTHING) / self.step))

    def takes(self, count: int) -> float:
        """Return the length that so many shapes take."""
        return self.lean + self.step * count if count else 0.0


def spacing(lay: Lay, cut: tuple[Measure, ...], angle: float | None) -> Spacing:
    """Return how shapes cut in a given lay follow each other, by the marks that they are cut at.

    Along a strip of usable length U there are floor(U/c) upright shapes c long, and
    floor((U - w/tan t)/(p/sin t)) slanted ones of strip width w and cut distance p at angle t.
    """
    width, second = float(cut[0].shown), float(cut[-1].shown)
    turn = math.radians(90.0 if angle is None else angle)
    lean = width / math.tan(turn)
    if lay is Lay.SLANTED:
        step = second / math.sin(turn)
        return Spacing(cut[0], step, lean, width * step)
    if lay is Lay.POINTED:
        return Spacing(cut[0], lean, lean, width * lean)
    if lay in (Lay.BOTH_ENDS, Lay.ONE_END):
        step = second - lean * (1.0 if lay is Lay.BOTH_ENDS else 0.5)
        return Spacing(cut[0], step, lean, width * step)
    return Spacing(cut[0], second, 0.0, width * second, cut[-1].shown)


def upright(cut: tuple[Measure, ...], count: int, usable: float) -> Spacing:
    """Return how squares or rectangles follow each other, lying the way that takes the less fabric."""
    ways = [
        Spacing(width, float(length.shown), 0.0, float(width.shown * length.shown), length.shown)
        for width, length in ((cut[0], cut[-1]), (cut[-1], cut[0]))
    ]
    return min(ways, key=lambda way: (_fabric(way, count, usable), way.width.shown))


def around_template(raw: Outline, heading: float, options: CuttingOptions) -> Spacing:
    """Return how templates follow each other, each in a box of its own with the grain along the strip."""
    long, high = extent(raw, heading)
    width, step = measure(high, options), measure(long, options)
    return Spacing(width, float(step.shown), 0.0, raw.area() / TICKS_PER_INCH**2, step.shown)


def strips_for(space: Spacing, counts: tuple[int, ...], usable: float) -> Strip | None:
    """Return the strips for several lots of shapes that do not mix; None when a shape is longer than a strip."""
    holds = space.holds(usable)
    if not holds:
        return None
    return Strip(space.width, holds, sum(-(-count // holds) for count in counts))


def extent(outline: Outline, heading: float) -> tuple[float, float]:
    """Return how long and how high an outline is along and across a heading, in inches."""
    ux, uy = math.cos(heading), math.sin(heading)
    points = outline.chords()
    along = [p.x * ux + p.y * uy for p in points]
    over = [p.y * ux - p.x * uy for p in points]
    return (max(along) - min(along)) / TICKS_PER_INCH, (max(over) - min(over)) / TICKS_PER_INCH


def _fabric(way: Spacing, count: int, usable: float) -> float:
    holds = way.holds(usable)
    return float(way.width.shown) * -(-count // holds) if holds else math.inf
