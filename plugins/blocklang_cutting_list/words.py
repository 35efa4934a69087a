"""Every sentence of the cutting list that is not about one piece."""

from typing import Final

from blocklang.block import LengthUnit
from blocklang.cutting import CuttingOptions, Measure, Offer, Piece, format_measure
from blocklang.wording import Message, joined, listed, message, say, say_decimal, say_number

TITLE: Final = say("Cutting list")
STRIP_SETS: Final = say("Strip sets")
NOTES: Final = say("Good to know")
OTHER_WAYS: Final = say("Other ways to cut")
OTHER_WAYS_ARE: Final = say(
    "These make the same units, several at once. Take one in place of the pieces listed for them above. "
    "Cut the first squares a little larger if you like to trim more."
)
BLADE: Final = say("Close the blade of the rotary cutter every time you put it down, and cut away from yourself.")

_EXACTLY: Final[dict[LengthUnit, Message]] = {
    LengthUnit.INCH: message("Exactly {sizes} in."),
    LengthUnit.CENTIMETRE: message("Exactly {sizes} cm."),
    LengthUnit.MILLIMETRE: message("Exactly {sizes} mm."),
}

#: A mark this near to what a length comes out at (1/1000 in) is that length.
_SAME = 0.001


def page(name: str) -> str:
    """Say what the whole list is."""
    return say("{name}: cutting list", name=name)


def for_copies(options: CuttingOptions, unit: LengthUnit) -> str:
    """Say what the list is for, and how wide the fabric is taken to be."""
    return say_number(
        "For one block, from fabric {width} wide between the selvages.",
        "For {count} blocks, from fabric {width} wide between the selvages.",
        options.copies,
        width=format_measure(options.usable_width, unit),
    )


def strips(count: int, width: str) -> str:
    """Say how many strips of one width are cut."""
    return say_number("{count} strip {width} wide", "{count} strips {width} wide", count, width=width)


def exactly(piece: Piece, unit: LengthUnit) -> str:
    """Say what the sizes of a piece come out at before they are put on a mark; "" when they lie on one."""
    if piece.strip_set is not None or all(map(_lies_on_its_mark, piece.cut)):
        return ""
    sizes = joined((say_decimal(decimal(measure.exact, unit)) for measure in dict.fromkeys(piece.cut)), " x ")
    return _EXACTLY[unit].say(sizes=sizes)


def decimal(inches: float, unit: LengthUnit) -> str:
    """Write a length with decimals: thousandths of an inch, tenths of a millimetre."""
    places = {LengthUnit.INCH: 3, LengthUnit.CENTIMETRE: 2, LengthUnit.MILLIMETRE: 1}[unit]
    return f"{inches * unit.per_inch:.{places}f}".rstrip("0").rstrip(".")


def units(offer: Offer) -> str:
    """Say how many units an offer is for, and of which fabrics."""
    fabrics = list(dict.fromkeys(start.fabric for start in offer.starts))
    return say_number("{count} unit of {fabrics}", "{count} units of {fabrics}", offer.needed, fabrics=listed(fabrics))


def _lies_on_its_mark(measure: Measure) -> bool:
    return abs(float(measure.shown) - measure.exact) <= _SAME
