"""Striped patches: along which edge the stripes lie, and the strip sets that the patches are cut from."""

import math
from collections.abc import Hashable
from fractions import Fraction

from blocklang.block import Stripes
from blocklang.cutting.claims import Claim
from blocklang.cutting.rounding import measure
from blocklang.cutting.strips import extent, spacing
from blocklang.cutting.values import CuttingOptions, Lay, Measure, StripSet
from blocklang.geometry import TICKS_PER_INCH, Outline
from blocklang.geometry.points import heading
from blocklang.geometry.tolerance import SAME_POINT, STRAIGHT_ANGLE


def striped_edge(outline: Outline, stripes: Stripes) -> int | None:
    """Return the edge of a patch that the first stripe lies along."""
    for index, edge in enumerate(outline.edges):
        if edge.arc is None and all(
            abs(edge.offset_of(point)[1]) <= 4 * SAME_POINT for point in (stripes.start, stripes.end)
        ):
            return index
    return None


def stripe_labels(outline: Outline, stripes: Stripes) -> tuple[Hashable, ...]:
    """Return labels for the edges that the stripes lie along, so that patches striped another way are told apart."""
    first = striped_edge(outline, stripes)
    if first is None:
        return ((stripes.fabrics, round(_direction(stripes), 3)),) * len(outline.edges)
    direction = outline.edges[first].departs()
    labels: list[Hashable] = []
    for index, edge in enumerate(outline.edges):
        apart = abs(math.remainder(edge.departs() - direction, math.pi))
        lies_along = edge.arc is None and apart <= 2 * STRAIGHT_ANGLE
        labels.append((stripes.fabrics if index == first else stripes.fabrics[::-1]) if lies_along else ())
    return tuple(labels)


def strip_set(
    claim: Claim,
    stripes: Stripes,
    outlines: tuple[Outline, Outline],
    lots: tuple[int, ...],
    allowance: Fraction,
    options: CuttingOptions,
) -> StripSet:
    """Return the strip set for equal striped patches, given one finished and its raw outline, for lots that do not mix.

    Each strip is the finished stripe with two seam allowances; what the set is too wide comes off both sides equally.
    """
    finished, raw = outlines
    count = len(stripes.fabrics)
    stripe = extent(finished, _direction(stripes))[1] / count
    strip = measure(stripe + 2 * float(allowance), options)
    shown = strip.shown * count - 2 * allowance * (count - 1)
    sewn = Measure(stripe * count + 2 * float(allowance), shown)
    trimmed, sub_cut, angle = _cut_from_set(claim, finished, raw, _direction(stripes), float(allowance), options)
    trimmed = Measure(trimmed.exact, min(trimmed.shown, sewn.shown))
    lay = Lay.UPRIGHT if angle == 90 else Lay.SLANTED
    holds = spacing(lay, (trimmed, sub_cut), angle).holds(float(options.usable_width))
    sets = sum(-(-lot // holds) for lot in lots) if holds else 0
    return StripSet(stripes.fabrics, strip, sewn, trimmed, angle, sub_cut, holds, sets)


def set_area(made: StripSet) -> float:
    """Return the area of one shape of a strip set's strip, in square inches: what one stripe of one patch takes."""
    return float(made.strip.shown * made.sub_cut.shown) / math.sin(math.radians(made.angle))


def _cut_from_set(
    claim: Claim, finished: Outline, raw: Outline, along: float, allowance: float, options: CuttingOptions
) -> tuple[Measure, Measure, float]:
    if claim.lay is Lay.SLANTED and claim.angle is not None:
        return measure(claim.cut[0], options), measure(claim.cut[1], options), claim.angle
    if claim.lay is Lay.UPRIGHT and claim.yields == 1 and claim.angle is None:
        long, high = (size + 2 * allowance for size in extent(finished, along))
    else:
        long, high = extent(raw, along)
    return measure(high, options), measure(long, options), 90.0


def _direction(stripes: Stripes) -> float:
    return heading(stripes.start, stripes.end)


def ticks(allowance: int) -> Fraction:
    """Return a length in ticks as inches."""
    return Fraction(allowance, TICKS_PER_INCH)
