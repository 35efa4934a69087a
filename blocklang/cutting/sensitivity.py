"""What seams that are a little off do to a unit: each that is crossed takes twice as much off its size."""

import math
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from blocklang.assembly.values import Assembly
from blocklang.block import LengthUnit
from blocklang.cutting.lengths import format_measure, with_unit
from blocklang.cutting.rectangles import rectangle_of
from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph import PatchGraph
from blocklang.wording import Saying, say, say_decimal

#: How far off a seam is taken to be: a needle's breadth, what goes unnoticed on one seam.
A_LITTLE_OFF = Fraction(1, 32)
A_MILLIMETRE = Fraction(10, 254)
#: A unit that comes out so much off no longer meets its neighbours.
TOO_MUCH = Fraction(1, 8)

#: Corners nearer to each other than this have no line between them.
_APART = TICKS_PER_INCH // 100
#: No more lines than this are tried each way; large units are sampled evenly.
_LINES = 120

Chord = tuple[float, float, float, float]


@dataclass(frozen=True, slots=True)
class Sensitivity:
    """How many seams a unit crosses, along the first side of its outline and square to it, where it crosses most.

    A seam that is crossed aslant counts less: as much as its normal lies along the line.
    """

    unit: int
    crossed: tuple[float, float]

    def change(self, off: Fraction = A_LITTLE_OFF) -> tuple[float, float]:
        """Return by how much the unit comes out small, in inches, when every seam is too wide by `off`: 2kd."""
        return 2 * self.crossed[0] * float(off), 2 * self.crossed[1] * float(off)

    def is_sensitive(self, off: Fraction = A_LITTLE_OFF) -> bool:
        """Tell whether so small a slip already leaves the unit too small for its neighbours."""
        return max(self.change(off)) >= float(TOO_MUCH) - 1e-9


def sensitivities(assembly: Assembly) -> tuple[Sensitivity | None, ...]:
    """Return for each step what a slip does to the unit that it makes; None for units that are no rectangles."""
    graph = assembly.graph
    made = (step.makes[0] for step in assembly.steps)
    return tuple(_of_unit(graph, unit, assembly.unit_patches[unit]) for unit in made)


def sensitive_steps(assembly: Assembly, off: Fraction = A_LITTLE_OFF) -> tuple[int, ...]:
    """Return the indices of the steps after which a unit must be measured: a slip so small leaves it too small."""
    found = enumerate(sensitivities(assembly))
    return tuple(index for index, one in found if one is not None and one.is_sensitive(off))


def describe_sensitivity(
    sensitivity: Sensitivity, unit: LengthUnit = LengthUnit.INCH, off: Fraction | None = None
) -> Saying:
    """Return one sentence: what seams that are a little too wide (1/32 in, or 1 mm) do to this unit."""
    off = off or (A_LITTLE_OFF if unit is LengthUnit.INCH else A_MILLIMETRE)
    small = max(sensitivity.change(off))
    much, little = _said(float(off), unit), _said(small, unit)
    return say("Seams {much} too wide leave this unit {little} small.", much=much, little=little)


def _said(inches: float, unit: LengthUnit) -> Saying:
    """Return a small length to the nearest thirty-second of an inch, or half millimetre, but not as nothing."""
    if unit is LengthUnit.INCH:
        return format_measure(Fraction(max(1, round(inches * 32)), 32))
    halves = max(1, round(inches * 25.4 * 2))
    parts = 2 if unit is LengthUnit.MILLIMETRE else 20
    return with_unit(say_decimal(f"{halves / parts:g}"), unit)


def _of_unit(graph: PatchGraph, unit: int, patches: Sequence[int]) -> Sensitivity | None:
    around = rectangle_of([graph.block.patches[patch].outline for patch in patches])
    if around is None:
        return None
    heading = around.edges[0].departs()
    inside = frozenset(patches)
    seams = [s.edge.chords() for s in graph.segments if s.left in inside and s.right in inside]
    along = _turned(seams, -heading)
    return Sensitivity(unit, (_most(along), _most(_turned(seams, math.pi / 2 - heading))))


def _turned(seams: Iterable[Sequence[tuple[int, int]]], turn: float) -> list[Chord]:
    c, s = math.cos(turn), math.sin(turn)
    rings = [[(x * c - y * s, x * s + y * c) for x, y in points] for points in seams]
    return [(*a, *b) for points in rings for a, b in zip(points, points[1:], strict=False)]


def _most(chords: Sequence[Chord]) -> float:
    """Return how many chords a level line crosses, each as much as it stands upright, where that adds up to most."""
    levels = _levels(y for _, low, _, high in chords for y in (low, high))
    crossed = [0.0] * len(levels)
    for ax, ay, bx, by in chords:
        upright = abs(by - ay) / (math.hypot(bx - ax, by - ay) or 1.0)
        for index in range(bisect_right(levels, min(ay, by)), bisect_left(levels, max(ay, by))):
            crossed[index] += upright
    return round(max(crossed, default=0.0), 6)


def _levels(heights: Iterable[float]) -> list[float]:
    ordered = sorted(heights)
    between = [(a + b) / 2 for a, b in zip(ordered, ordered[1:], strict=False) if b - a > _APART]
    return between[:: -(-len(between) // _LINES)] if between else []
