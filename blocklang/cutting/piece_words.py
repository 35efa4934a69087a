"""How the patches of a line are cut, in one sentence: from squares and rectangles, or from strips."""

from typing import Final

from blocklang.block import LengthUnit
from blocklang.cutting.lengths import format_measure, format_number
from blocklang.cutting.one_way import FALLING, RISING
from blocklang.cutting.values import Lay, Piece
from blocklang.wording import Saying, say, say_decimal, say_number

#: From which corner to which a square is cut across whose print must stand upright.
_CORNERS: Final = {
    RISING: say("once across, from the lower left corner to the upper right"),
    FALLING: say("once across, from the upper left corner to the lower right"),
}
_ONCE: Final = say("once across, corner to corner")
_TWICE: Final = say("twice across, corner to corner")


def describe_piece(piece: Piece, unit: LengthUnit = LengthUnit.INCH) -> Saying:
    """Return one sentence that says how the patches of a line are cut."""
    if piece.strip_set is not None:
        return say("Cut {count} from the strip set{reversed}.", count=piece.count, reversed=_turned_over(piece))
    if piece.how:
        return say("Cut {count}: {how}{reversed}.", count=piece.count, how=piece.how, reversed=_turned_over(piece))
    if piece.lay is Lay.TEMPLATE or not piece.cut:
        return say(
            "Cut {count} with the template, {grain}{reversed}.",
            count=piece.count,
            grain=piece.grain,
            reversed=_turned_over(piece),
        )
    if piece.lay is Lay.UPRIGHT and piece.angle is None:
        return _from_squares(piece, unit)
    return say(
        "From strips {width} wide cut {pieces}{reversed}.",
        width=format_measure(piece.cut[0], unit),
        pieces=_from_strips(piece, unit),
        reversed=_turned_over(piece),
    )


def degrees(angle: float) -> Saying:
    """Say an angle, as a number of degrees."""
    return say_decimal(f"{angle:.1f}".removesuffix(".0"))


def _from_squares(piece: Piece, unit: LengthUnit) -> Saying:
    shapes = _shapes(piece, unit)
    if piece.marks:
        return say(
            "Cut {shapes}; {marked}.", shapes=shapes, marked=_marked(piece, format_measure(piece.marks[0], unit))
        )
    if piece.yields == 1:
        return say("Cut {shapes}.", shapes=shapes)
    return say(
        "Cut {shapes}; {divided}, for {triangles}{over}.",
        shapes=shapes,
        divided=_each_divided(piece),
        triangles=say_number("{count} triangle", "{count} triangles", piece.count),
        over=_left_over(piece),
    )


def _shapes(piece: Piece, unit: LengthUnit) -> Saying:
    """Say how many squares or rectangles of which size are cut, and how their print lies."""
    size, lies = format_measure(piece.cut[-1], unit), _as_it_lies(piece, unit)
    if len(piece.cut) == 1:
        return say_number(
            "{count} square {size}{lies}", "{count} squares {size}{lies}", piece.shapes, size=size, lies=lies
        )
    return say_number(
        "{count} rectangle {width} x {length}{lies}",
        "{count} rectangles {width} x {length}{lies}",
        piece.shapes,
        width=format_number(piece.cut[0], unit),
        length=size,
        lies=lies,
    )


def _marked(piece: Piece, mark: str) -> Saying:
    if len(piece.cut) == 1:
        return say("on each side mark the middle {length}, and cut the corners off from mark to mark", length=mark)
    return say(
        "mark the middle of both short sides, and on both long sides {length} from the same end; "
        "cut from mark to mark, four cuts",
        length=mark,
    )


def _as_it_lies(piece: Piece, unit: LengthUnit) -> str:
    if not piece.pose:
        return ""
    if len(piece.cut) == 1:
        return say(", the print upright")
    return say(", the print upright and {length} high", length=format_measure(piece.cut[0], unit))


def _each_divided(piece: Piece) -> Saying:
    how = _divided(piece)
    return say("cut each {how}", how=how) if piece.shapes > 1 else say("cut it {how}", how=how)


def _divided(piece: Piece) -> Saying:
    if piece.pose in _CORNERS:
        return _CORNERS[piece.pose]
    if piece.yields == 4:
        return _TWICE
    if not piece.reversed or piece.reversed == piece.count:
        return _ONCE
    other = -(-piece.reversed // 2)
    return say_number(
        "once across, corner to corner, {count} of them from the other corner",
        "once across, corner to corner, {count} of them from the other corner",
        other,
    )


def _left_over(piece: Piece) -> str:
    over = piece.shapes * piece.yields - piece.count
    return say_number(" ({count} left over)", " ({count} left over)", over) if over else ""


def _from_strips(piece: Piece, unit: LengthUnit) -> Saying:
    angle, second = degrees(piece.angle or 90.0), format_measure(piece.cut[-1], unit)
    match piece.lay:
        case Lay.SLANTED:
            return say_number(
                "{count} at {angle} degrees, {length} apart",
                "{count} at {angle} degrees, {length} apart",
                piece.count,
                angle=angle,
                length=second,
            )
        case Lay.POINTED:
            return _triangles(piece, angle, second)
        case Lay.BOTH_ENDS | Lay.ONE_END:
            return _trapezoids(piece, angle, second)
        case _:
            return say_number(
                "{count} hexagon, {length} from point to point",
                "{count} hexagons, {length} from point to point",
                piece.count,
                length=second,
            )


def _triangles(piece: Piece, angle: str, base: str) -> Saying:
    along = "" if piece.method == "equilateral-triangle" else say(", each {length} along its base", length=base)
    return say_number(
        "{count} triangle at {angle} degrees, to and fro{along}",
        "{count} triangles at {angle} degrees, to and fro{along}",
        piece.count,
        angle=angle,
        along=along,
    )


def _trapezoids(piece: Piece, angle: str, long_side: str) -> Saying:
    if piece.lay is Lay.BOTH_ENDS:
        return say_number(
            "{count} trapezoid, the long side {length}, both ends at {angle} degrees, every second one turned round",
            "{count} trapezoids, the long side {length}, both ends at {angle} degrees, every second one turned round",
            piece.count,
            length=long_side,
            angle=angle,
        )
    return say_number(
        "{count} trapezoid, the long side {length}, one end at {angle} degrees, every second one turned round",
        "{count} trapezoids, the long side {length}, one end at {angle} degrees, every second one turned round",
        piece.count,
        length=long_side,
        angle=angle,
    )


def _turned_over(piece: Piece) -> str:
    if not piece.reversed:
        return ""
    if piece.reversed < piece.count:
        return say_number(", {count} of them reversed", ", {count} of them reversed", piece.reversed)
    return say_number(", reversed", ", reversed", piece.reversed)
