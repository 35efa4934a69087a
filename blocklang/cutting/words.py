"""The cutting list in sentences that a quilter would say."""

from collections.abc import Sequence

from blocklang.block import LengthUnit
from blocklang.cutting.called import each_of, several, the, the_patch, two_patches
from blocklang.cutting.lengths import a_little, format_exact, format_measure, format_number, with_unit
from blocklang.cutting.piece_words import degrees, describe_piece
from blocklang.cutting.values import Piece, StripLayout, StripSet
from blocklang.wording import Saying, joined, listed, say, say_number

__all__ = [
    "degrees",
    "describe_layout",
    "describe_piece",
    "describe_strip",
    "describe_strip_set",
    "each_of",
    "format_exact",
    "format_measure",
    "format_number",
    "several",
    "the",
    "the_patch",
    "two_patches",
    "with_unit",
]


def describe_strip(piece: Piece, unit: LengthUnit = LengthUnit.INCH) -> str:
    """Return one sentence about the strips that a line needs when it is cut alone, "" when there are none."""
    if piece.strip is None:
        return ""
    return say_number(
        "Cut {count} strip {width} wide; a strip holds {holds}.",
        "Cut {count} strips {width} wide; a strip holds {holds}.",
        piece.strip.count,
        width=format_measure(piece.strip.width, unit),
        holds=piece.strip.holds,
    )


def describe_layout(strips: StripLayout, pieces: Sequence[Piece], unit: LengthUnit = LengthUnit.INCH) -> Saying:
    """Return one sentence that says what is cut from strips that are all alike; `pieces` are those of the cutting."""
    width = format_measure(strips.width, unit)
    if strips.strip_set is not None:
        return say_number(
            "Cut {count} strip {width} wide for the strip set.",
            "Cut {count} strips {width} wide for the strip set.",
            strips.count,
            width=width,
        )
    shapes = (say("{number} for {name}", number=number, name=pieces[index].name) for index, number in strips.pieces)
    return say_number(
        "Cut {count} strip {width} wide: {pieces}.",
        "Cut {count} strips {width} wide: {pieces} each.",
        strips.count,
        width=width,
        pieces=listed(shapes),
    )


def describe_strip_set(made: StripSet, unit: LengthUnit = LengthUnit.INCH) -> Saying:
    """Return the sentences that say how a strip set is sewn, trimmed and cut."""
    return joined((_sewn(made, unit), _trimmed(made, unit), _cut_apart(made, unit)))


def _sewn(made: StripSet, unit: LengthUnit) -> Saying:
    return say_number(
        "Sew a strip set: strips {width} wide, side by side, {fabrics}.",
        "Sew {count} strip sets: strips {width} wide, side by side, {fabrics}.",
        made.sets,
        width=format_measure(made.strip, unit),
        fabrics=listed(made.fabrics),
    )


def _trimmed(made: StripSet, unit: LengthUnit) -> Saying:
    measure, each = format_measure(made.sewn.shown, unit), (made.sewn.shown - made.trimmed.shown) / 2
    if each <= 0:
        return say("Pressed, it measures {length}.", length=measure)
    return say(
        "Pressed, it measures {length}; trim {little} off each long side, to {trimmed}.",
        length=measure,
        little=a_little(each, unit),
        trimmed=format_measure(made.trimmed, unit),
    )


def _cut_apart(made: StripSet, unit: LengthUnit) -> Saying:
    apart = format_measure(made.sub_cut, unit)
    if made.angle == 90:
        return say("Cut it straight across, {length} apart; a set holds {holds}.", length=apart, holds=made.holds)
    return say(
        "Cut it at {angle} degrees, {length} apart; a set holds {holds}.",
        angle=degrees(made.angle),
        length=apart,
        holds=made.holds,
    )
