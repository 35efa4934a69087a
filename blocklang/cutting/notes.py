"""What the person at the cutting table should know: rounding, trimming, the test strip, what does not fit."""

import math
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Final

from blocklang.block import LengthUnit
from blocklang.cutting.growth import most_growth
from blocklang.cutting.lengths import a_little, format_exact, format_measure, format_number
from blocklang.cutting.one_way import notes_on_print
from blocklang.cutting.pieces import Laid
from blocklang.cutting.rounding import SLACK
from blocklang.cutting.sides import sides_of
from blocklang.cutting.values import CuttingOptions, Piece, Rounding, StripSet
from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph import PatchGraph
from blocklang.wording import Message, Saying, joined, message, say, say_decimal

_ROUNDED_UP: Final[dict[Rounding, Message]] = {
    Rounding.EIGHTHS: message("Sizes are rounded up to the next eighth of an inch, so that nothing is cut too small."),
    Rounding.SIXTEENTHS: message(
        "Sizes are rounded up to the next sixteenth of an inch, so that nothing is cut too small."
    ),
    Rounding.MILLIMETRES: message("Sizes are rounded up to the next millimetre, so that nothing is cut too small."),
}
_ROUNDED: Final[dict[Rounding, Message]] = {
    Rounding.EIGHTHS: message(
        "Sizes are rounded to the nearest eighth of an inch; some pieces are cut a little small."
    ),
    Rounding.SIXTEENTHS: message(
        "Sizes are rounded to the nearest sixteenth of an inch; some pieces are cut a little small."
    ),
    Rounding.MILLIMETRES: message("Sizes are rounded to the nearest millimetre; some pieces are cut a little small."),
}

#: A sum of roundings below this (1/100 in) is not worth a sentence.
_WORTH_SAYING = 0.01

#: The test strips are this many seam allowances wide, up to an eighth of an inch or half a centimetre: 1 1/2 in at
#: 1/4 in, as is common practice.
_TEST_STRIP = 6


def notes_of(
    graph: PatchGraph, laid: Sequence[Laid], sets: Sequence[StripSet], options: CuttingOptions
) -> tuple[str, ...]:
    """Return the notes to a cutting list, plain sentences."""
    pieces = [item.piece for item in laid]
    unit = graph.block.unit
    return (
        *_about_rounding(graph, pieces, options),
        *_about_oversize(graph, pieces, options),
        *_about_prints(graph, pieces),
        *_about_shrinking(options),
        *_about_width(laid, sets, options, unit),
        describe_test_strip(Fraction(graph.block.seam_allowance, TICKS_PER_INCH), unit),
    )


def _about_rounding(graph: PatchGraph, pieces: Sequence[Piece], options: CuttingOptions) -> Iterator[Saying]:
    if options.round_up:
        yield _ROUNDED_UP[options.rounding].say()
    else:
        yield _ROUNDED[options.rounding].say()
        yield from _cut_small(pieces, graph.block.unit)
    most = most_growth(graph, pieces)
    if abs(most) >= _WORTH_SAYING:
        yield _grown(most, graph.block.unit)


def _grown(most: float, unit: LengthUnit) -> Saying:
    length = format_exact(abs(most), unit)
    if most > 0:
        return say(
            "Along the row where most of it comes together, rounding adds about {length} to the block; "
            "trim each unit to the size it must measure.",
            length=length,
        )
    return say(
        "Along the row where most of it comes together, rounding takes about {length} off the block; "
        "trim each unit to the size it must measure.",
        length=length,
    )


def _cut_small(pieces: Sequence[Piece], unit: LengthUnit) -> Iterator[Saying]:
    for piece in pieces:
        short = max((m.exact - float(m.shown) for m in piece.cut), default=0.0)
        if short > SLACK:
            length = format_exact(short, unit)
            yield say("{piece} is cut {length} smaller than it comes out.", piece=_called(piece), length=length)


def _about_oversize(graph: PatchGraph, pieces: Sequence[Piece], options: CuttingOptions) -> Iterator[Saying]:
    if not options.oversize:
        return
    unit, outside = graph.block.unit, _on_the_outside(graph)
    named = [_called(p) for p in pieces if p.strip_set is None and not outside.isdisjoint(p.patches)]
    if not named:
        return
    more = format_measure(options.oversize, unit)
    larger = say("Cut {more} larger on the outside of the block: {pieces}.", more=more, pieces=joined(named, ", "))
    yield joined((larger, _at_the_end(graph)))


def _at_the_end(graph: PatchGraph) -> Saying:
    unit, allowance = graph.block.unit, graph.block.seam_allowance
    ring = sides_of(graph.block.outline, 4)
    if ring is None or not ring.is_equiangular:
        by = format_measure(Fraction(allowance, TICKS_PER_INCH), unit)
        return say("When the block is sewn, trim it {length} outside the points on its edge.", length=by)
    width, height = (
        Fraction(ticks + 2 * allowance, TICKS_PER_INCH).limit_denominator(1600) for ticks in graph.block.size
    )
    return say(
        "When the block is sewn, square it up to {width} x {height}.",
        width=format_number(width, unit),
        height=format_measure(height, unit),
    )


def _about_shrinking(options: CuttingOptions) -> Iterator[Saying]:
    if options.shrinkage:
        share = say_decimal(f"{float(options.shrinkage * 100):g}")
        yield say(
            "What to buy allows for {share} per cent of shrinking: wash and iron the fabric before you cut it.",
            share=share,
        )


def _about_prints(graph: PatchGraph, pieces: Sequence[Piece]) -> Iterator[Saying]:
    for fabric in graph.block.fabrics:
        cut = [piece for piece in pieces if piece.fabric == fabric.id and piece.pose]
        if cut:
            spare = [piece.shapes * piece.yields - piece.count for piece in cut]
            wasted = sum(n for n, piece in zip(spare, cut, strict=True) if n >= piece.yields)
            yield from notes_on_print(fabric.id, fabric.printed, wasted, sum(piece.count for piece in cut))


def _about_width(
    laid: Sequence[Laid], sets: Sequence[StripSet], options: CuttingOptions, unit: LengthUnit
) -> Iterator[Saying]:
    usable = format_measure(options.usable_width, unit)
    for item in laid:
        piece = item.piece
        fits = sets[piece.strip_set].holds > 0 if piece.strip_set is not None else piece.strip is not None
        if not fits:
            yield _too_long(piece, usable)


def _too_long(piece: Piece, usable: str) -> Saying:
    if piece.strip_set is not None:
        return say(
            "{piece} is longer than the strip set is wide ({width}); "
            "use a wider fabric. It is not counted in what to buy.",
            piece=_called(piece),
            width=usable,
        )
    return say(
        "{piece} is longer than the fabric is wide ({width}); use a wider fabric. It is not counted in what to buy.",
        piece=_called(piece),
        width=usable,
    )


def describe_test_strip(allowance: Fraction, unit: LengthUnit = LengthUnit.INCH) -> Saying:
    """Return the sentences about the strips that are sewn to test a seam allowance, before the first real seam."""
    mark = Fraction(1, 8) if unit is LengthUnit.INCH else Fraction(50, 254)
    width = math.ceil(_TEST_STRIP * allowance / mark) * mark
    sewn, middle = (a_little(length, unit) for length in (3 * width - 4 * allowance, width - 2 * allowance))
    return say(
        "Test the seam allowance first: sew three strips {width} wide side by side and press. "
        "They must measure {sewn} across, and the middle one {middle}.",
        width=format_measure(width, unit),
        sewn=sewn,
        middle=middle,
    )


def _on_the_outside(graph: PatchGraph) -> frozenset[int]:
    return frozenset(patch for s in graph.segments if not s.is_seam for patch in s.patches if patch >= 0)


def _called(piece: Piece) -> Saying:
    return say("{piece} ({fabric})", piece=piece.name, fabric=piece.fabric)
