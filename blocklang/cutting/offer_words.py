"""An offer in sentences: what is cut for it, what is done, and what it saves."""

from blocklang.block import LengthUnit
from blocklang.cutting.lengths import format_measure, format_number
from blocklang.cutting.offers import Offer, StartPiece
from blocklang.wording import Saying, joined, listed, say, say_number

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


def compare_work(offer: Offer, unit: LengthUnit = _INCH) -> Saying:
    """Return what an offer saves or costs beside the plain cutting, in one sentence."""
    return say(
        "Beside the plain cutting: {fabric}, {cuts}, and {edges} to handle.",
        fabric=_fabric(offer.work.area - offer.plain.area, unit),
        cuts=_cuts(offer.work.cuts - offer.plain.cuts),
        edges=_edges(offer.work.bias - offer.plain.bias),
    )


def _fabric(more: float, unit: LengthUnit) -> Saying:
    if abs(more) < _WORTH_SAYING:
        return say("the same fabric")
    area = _area(abs(more), unit)
    return say("{area} more fabric", area=area) if more > 0 else say("{area} less fabric", area=area)


def _cuts(more: int) -> Saying:
    if more > 0:
        return say_number("{count} more cut", "{count} more cuts", more)
    return say_number("{count} fewer cut", "{count} fewer cuts", -more) if more else say("as many cuts")


def _edges(more: int) -> Saying:
    if more > 0:
        return say_number("{count} more bias edge", "{count} more bias edges", more)
    return (
        say_number("{count} fewer bias edge", "{count} fewer bias edges", -more) if more else say("as many bias edges")
    )


def _starts(offer: Offer, unit: LengthUnit) -> Saying:
    return say("Cut {pieces}.", pieces=listed(_start(start, unit) for start in offer.starts))


def _start(start: StartPiece, unit: LengthUnit) -> Saying:
    *others, last = start.sides
    size = joined((*(format_number(side, unit) for side in others), format_measure(last, unit)), " x ")
    if others:
        return say_number(
            "{count} rectangle {size} of {fabric}",
            "{count} rectangles {size} of {fabric}",
            start.count,
            size=size,
            fabric=start.fabric,
        )
    return say_number(
        "{count} square {size} of {fabric}",
        "{count} squares {size} of {fabric}",
        start.count,
        size=size,
        fabric=start.fabric,
    )


def _gives(offer: Offer) -> Saying:
    made = offer.rounds * offer.yields
    over = say_number(", {count} left over", ", {count} left over", offer.left_over) if offer.left_over else ""
    if offer.rounds == 1:
        return say_number("That gives all {count} units{over}.", "That gives all {count} units{over}.", made, over=over)
    return say_number(
        "Each time gives {count} unit; do it {times} times for {made} units{over}.",
        "Each time gives {count} units; do it {times} times for {made} units{over}.",
        offer.yields,
        times=offer.rounds,
        made=made,
        over=over,
    )


def _area(square_inches: float, unit: LengthUnit) -> Saying:
    if unit is _INCH:
        return say("{number} square inches", number=f"{square_inches:.0f}")
    return say("{number} square centimetres", number=f"{square_inches * 2.54**2:.0f}")
