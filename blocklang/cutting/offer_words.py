"""An offer in sentences: what is cut for it, what is done, and what it saves."""

from blocklang.block import LengthUnit
from blocklang.cutting.lengths import format_measure, format_number
from blocklang.cutting.offers import Offer, StartPiece

_INCH = LengthUnit.INCH

#: Less fabric than this (a square an inch wide) is not worth a word.
_WORTH_SAYING = 1.0


def describe_offer(offer: Offer, unit: LengthUnit = _INCH) -> tuple[str, ...]:
    """Return the sentences of an offer: what to cut, how to sew, what comes out, what it saves, what to watch."""
    return (
        _starts(offer, unit),
        *offer.steps,
        _gives(offer),
        compare_work(offer, unit),
        *((offer.beware,) if offer.beware else ()),
    )


def compare_work(offer: Offer, unit: LengthUnit = _INCH) -> str:
    """Return what an offer saves or costs beside the plain cutting, in one sentence."""
    fabric = offer.work.area - offer.plain.area
    said = (
        "the same fabric"
        if abs(fabric) < _WORTH_SAYING
        else f"{_area(abs(fabric), unit)} {'more' if fabric > 0 else 'less'} fabric"
    )
    cuts = _change(offer.work.cuts - offer.plain.cuts, "cut")
    bias = _change(offer.work.bias - offer.plain.bias, "bias edge")
    return f"Beside the plain cutting: {said}, {cuts}, and {bias} to handle."


def _starts(offer: Offer, unit: LengthUnit) -> str:
    return f"Cut {_listed(tuple(_start(start, unit) for start in offer.starts))}."


def _start(start: StartPiece, unit: LengthUnit) -> str:
    shape = "square" if len(start.sides) == 1 else "rectangle"
    size = " x ".join(
        [*(format_number(side, unit) for side in start.sides[:-1]), format_measure(start.sides[-1], unit)]
    )
    return f"{start.count} {shape}{'s' * (start.count != 1)} {size} of {start.fabric}"


def _gives(offer: Offer) -> str:
    made = offer.rounds * offer.yields
    over = f", {offer.left_over} left over" if offer.left_over else ""
    if offer.rounds == 1:
        return f"That gives all {made} units{over}."
    one = f"{offer.yields} unit{'s' * (offer.yields != 1)}"
    return f"Each time gives {one}; do it {offer.rounds} times for {made} units{over}."


def _change(more: int, noun: str) -> str:
    if not more:
        return f"as many {noun}s"
    return f"{abs(more)} {'more' if more > 0 else 'fewer'} {noun}{'s' * (abs(more) != 1)}"


def _area(square_inches: float, unit: LengthUnit) -> str:
    if unit is _INCH:
        return f"{square_inches:.0f} square inches"
    return f"{square_inches * 2.54**2:.0f} square centimetres"


def _listed(parts: tuple[str, ...]) -> str:
    return ", ".join(parts[:-1]) + f" and {parts[-1]}" if len(parts) > 1 else parts[0]
