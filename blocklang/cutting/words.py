"""The cutting list in sentences that a quilter would say."""

from collections.abc import Sequence

from blocklang.block import LengthUnit
from blocklang.cutting.lengths import a_little, format_exact, format_measure, format_number
from blocklang.cutting.one_way import FALLING, RISING
from blocklang.cutting.values import Lay, Piece, StripLayout, StripSet

__all__ = [
    "describe_layout",
    "describe_piece",
    "describe_strip",
    "describe_strip_set",
    "format_exact",
    "format_measure",
    "format_number",
]

_INCH = LengthUnit.INCH


def describe_piece(piece: Piece, unit: LengthUnit = LengthUnit.INCH) -> str:
    """Return one sentence that says how the patches of a line are cut."""
    if piece.strip_set is not None:
        return f"Cut {piece.count} from the strip set{_turned_over(piece)}."
    if piece.how:
        return f"Cut {piece.count}: {piece.how}{_turned_over(piece)}."
    if piece.lay is Lay.TEMPLATE or not piece.cut:
        return f"Cut {piece.count} with the template, {piece.grain}{_turned_over(piece)}."
    if piece.lay is Lay.UPRIGHT and piece.angle is None:
        return _from_squares(piece, unit)
    return _from_strips(piece, unit)


def describe_strip(piece: Piece, unit: LengthUnit = LengthUnit.INCH) -> str:
    """Return one sentence about the strips that a line needs when it is cut alone, "" when there are none."""
    if piece.strip is None:
        return ""
    strips = _counted(piece.strip.count, "strip")
    return f"Cut {strips} {format_measure(piece.strip.width, unit)} wide; a strip holds {piece.strip.holds}."


def describe_layout(strips: StripLayout, pieces: Sequence[Piece], unit: LengthUnit = LengthUnit.INCH) -> str:
    """Return one sentence that says what is cut from strips that are all alike; `pieces` are those of the cutting."""
    width = f"{_counted(strips.count, 'strip')} {format_measure(strips.width, unit)} wide"
    if strips.strip_set is not None:
        return f"Cut {width} for the strip set."
    shapes = [f"{number} for {pieces[index].name}" for index, number in strips.pieces]
    each = " each" if strips.count > 1 else ""
    return f"Cut {width}: {_listed(tuple(shapes))}{each}."


def describe_strip_set(made: StripSet, unit: LengthUnit = LengthUnit.INCH) -> str:
    """Return the sentences that say how a strip set is sewn, trimmed and cut."""
    sets = "a strip set" if made.sets == 1 else f"{made.sets} strip sets"
    first = f"Sew {sets}: strips {format_measure(made.strip, unit)} wide, side by side, {_listed(made.fabrics)}."
    measures = f"Pressed, it measures {format_measure(made.sewn.shown, unit)}"
    trimmed = format_measure(made.trimmed, unit)
    each = (made.sewn.shown - made.trimmed.shown) / 2
    trim = f"; trim {a_little(each, unit)} off each long side, to {trimmed}" if each > 0 else ""
    angle = "straight across" if made.angle == 90 else f"at {_degrees(made.angle)} degrees"
    cuts = f"Cut it {angle}, {format_measure(made.sub_cut, unit)} apart; a set holds {made.holds}."
    return f"{first} {measures}{trim}. {cuts}"


def _from_squares(piece: Piece, unit: LengthUnit) -> str:
    square = len(piece.cut) == 1
    size = (
        format_measure(piece.cut[0], unit)
        if square
        else f"{format_number(piece.cut[0], unit)} x {format_measure(piece.cut[1], unit)}"
    )
    shapes = _counted(piece.shapes, "square" if square else "rectangle")
    size += _as_it_lies(piece, unit)
    if piece.marks:
        return f"Cut {shapes} {size}; {_marked(piece, format_measure(piece.marks[0], unit))}."
    if piece.yields == 1:
        return f"Cut {shapes} {size}."
    each = "each " if piece.shapes > 1 else "it "
    triangles = _counted(piece.count, "triangle")
    return f"Cut {shapes} {size}; cut {each}{_divided(piece)}, for {triangles}{_left_over(piece)}."


def _marked(piece: Piece, mark: str) -> str:
    if len(piece.cut) == 1:
        return f"on each side mark the middle {mark}, and cut the corners off from mark to mark"
    return (
        f"mark the middle of both short sides, and on both long sides {mark} from the same end; "
        "cut from mark to mark, four cuts"
    )


def _as_it_lies(piece: Piece, unit: LengthUnit) -> str:
    if not piece.pose:
        return ""
    return (
        ", the print upright"
        if len(piece.cut) == 1
        else f", the print upright and {format_measure(piece.cut[0], unit)} high"
    )


#: From which corner to which a square is cut across whose print must stand upright.
_CORNERS = {
    RISING: "from the lower left corner to the upper right",
    FALLING: "from the upper left corner to the lower right",
}


def _divided(piece: Piece) -> str:
    if piece.pose in _CORNERS:
        return f"once across, {_CORNERS[piece.pose]}"
    if piece.yields == 4:
        return "twice across, corner to corner"
    if not piece.reversed or piece.reversed == piece.count:
        return "once across, corner to corner"
    other = -(-piece.reversed // 2)
    return f"once across, corner to corner, {other} of them from the other corner"


def _left_over(piece: Piece) -> str:
    over = piece.shapes * piece.yields - piece.count
    return f" ({over} left over)" if over else ""


def _from_strips(piece: Piece, unit: LengthUnit) -> str:
    angle, second = _degrees(piece.angle or 90.0), format_measure(piece.cut[-1], unit)
    trapezoids = f"{_counted(piece.count, 'trapezoid')}, the long side {second}, {{}} at {angle} degrees"
    ways = {
        Lay.SLANTED: f"{piece.count} at {angle} degrees, {second} apart",
        Lay.POINTED: f"{_counted(piece.count, 'triangle')} at {angle} degrees, to and fro{_base(piece, second)}",
        Lay.BOTH_ENDS: trapezoids.format("both ends") + ", every second one turned round",
        Lay.ONE_END: trapezoids.format("one end") + ", every second one turned round",
        Lay.UPRIGHT: f"{_counted(piece.count, 'hexagon')}, {second} from point to point",
    }
    width = format_measure(piece.cut[0], unit)
    return f"From strips {width} wide cut {ways[piece.lay]}{_turned_over(piece)}."


def _base(piece: Piece, base: str) -> str:
    return "" if piece.method == "equilateral-triangle" else f", each {base} along its base"


def _turned_over(piece: Piece) -> str:
    if not piece.reversed:
        return ""
    return f", {piece.reversed} of them reversed" if piece.reversed < piece.count else ", reversed"


def _counted(count: int, noun: str) -> str:
    return f"{count} {noun}" if count == 1 else f"{count} {noun}s"


def _listed(names: tuple[str, ...]) -> str:
    return ", ".join(names[:-1]) + f" and {names[-1]}" if len(names) > 1 else names[0]


def _degrees(angle: float) -> str:
    return f"{angle:.1f}".removesuffix(".0")
