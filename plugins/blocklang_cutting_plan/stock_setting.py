"""What people have beside yardage, as they type it: fog: 4 fat quarters, 6 strips 2 1/2 in; harbour: 12 squares 5 in."""

import re
from collections.abc import Sequence
from fractions import Fraction
from typing import Final

from blocklang.block import Fabric
from blocklang.cloth import Precut, Stock
from blocklang.hooks import CannotMakeError

EXAMPLE: Final = "fog: 4 fat quarters, 6 strips 2 1/2 in; harbour: 12 squares 5 in"
#: A fat quarter is 18 by 22 in; without its selvage, and squared up, so much of it is left (common practice).
_FAT_QUARTER = (Fraction(21), Fraction(35, 2))
_MOST_PIECES, _LONGEST, _MOST_TYPED = 500, 120, 2000
_NUMBER = r"\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?"
_UNIT = r"in|inch|inches|\"|″|cm"
_ITEM = re.compile(
    rf"(\d+) ?(?:pieces? )?(fat quarter|strip|square)s?(?: ?({_NUMBER}) ?({_UNIT})?(?: ?[x×] ?({_NUMBER}) ?({_UNIT})?)?)?"
)
_PARTS_OF_ONE = {"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅛": " 1/8", "⅜": " 3/8", "⅝": " 5/8", "⅞": " 7/8"}
_INCHES_IN_CM = Fraction(50, 127)


def read_stock(text: str, fabrics: Sequence[Fabric], usable: Fraction) -> tuple[Stock, ...]:
    """Return what is said to be there, equal pieces of a fabric together; raise CannotMakeError where it says nothing."""
    if len(text) > _MOST_TYPED:
        raise CannotMakeError(f"The stock is too long to read: write at most {_MOST_TYPED} letters.")
    counts: dict[Stock, int] = {}
    for part in _plain(text).split(";"):
        if part.strip():
            for stock, count in _of_fabric(part, fabrics, usable):
                counts[stock] = counts.get(stock, 0) + count
    if any(count > _MOST_PIECES for count in counts.values()):
        raise CannotMakeError(f"Write at most {_MOST_PIECES} pieces of a kind in stock.")
    return tuple(
        Stock(stock.fabric, stock.precut, stock.width, stock.height, count) for stock, count in counts.items() if count
    )


def _of_fabric(part: str, fabrics: Sequence[Fabric], usable: Fraction) -> list[tuple[Stock, int]]:
    name, colon, items = part.partition(":")
    if not colon:
        raise CannotMakeError(f"In stock, begin “{part.strip()}” with a fabric and a colon, as in: {EXAMPLE}.")
    fabric = _fabric(name.strip(), fabrics)
    return [_item(item.strip(), fabric, usable) for item in items.split(",") if item.strip()]


def _fabric(name: str, fabrics: Sequence[Fabric]) -> str:
    for fabric in fabrics:
        if name in (_plain(fabric.id).strip(), _plain(fabric.title or fabric.id).strip()):
            return fabric.id
    known = ", ".join(fabric.id for fabric in fabrics)
    raise CannotMakeError(f"In stock, “{name}” is no fabric of this block; its fabrics are {known}.")


def _item(item: str, fabric: str, usable: Fraction) -> tuple[Stock, int]:
    match = _ITEM.fullmatch(item)
    if match is None:
        raise CannotMakeError(f"In stock, “{item}” cannot be read; write it as in: {EXAMPLE}.")
    count, name, first, first_unit, second, second_unit = match.groups()
    if len(count) > len(str(_MOST_PIECES)):
        raise CannotMakeError(f"Write at most {_MOST_PIECES} pieces of a kind in stock.")
    sizes = [
        _inches(number, unit, item)
        for number, unit in ((first, first_unit or second_unit), (second, second_unit or first_unit))
        if number
    ]
    width, height = _size(Precut(name), sorted(sizes, reverse=True), usable, item)
    return Stock(fabric, Precut(name), width, height, 0), int(count)


def _size(precut: Precut, sizes: list[Fraction], usable: Fraction, item: str) -> tuple[Fraction, Fraction]:
    """Return the longer side and the shorter one, from as many sizes as were typed."""
    if precut is Precut.FAT_QUARTER and len(sizes) != 1:
        return (sizes[0], sizes[1]) if sizes else _FAT_QUARTER
    if precut is Precut.FAT_QUARTER:
        raise CannotMakeError(f"In stock, say both sides of “{item}”, as in: 4 fat quarters 17 1/2 x 21 in.")
    if not sizes:
        raise CannotMakeError(f"In stock, say how wide “{item}” are, as in: 6 strips 2 1/2 in, or 12 squares 5 in.")
    if precut is Precut.SQUARE and sizes[0] != sizes[-1]:
        raise CannotMakeError(f"In stock, the sides of “{item}” differ; a square has one size, as in: 12 squares 5 in.")
    if precut is Precut.STRIP and len(sizes) == 1:
        return usable, sizes[0]
    return sizes[0], sizes[-1]


def _inches(number: str, unit: str | None, item: str) -> Fraction:
    """Return a length, inches where no unit is typed."""
    try:
        length = sum((Fraction(part) for part in number.split()), Fraction(0))
    except ZeroDivisionError:
        length = Fraction(0)
    if unit == "cm":
        length *= _INCHES_IN_CM
    if not 0 < length <= _LONGEST:
        raise CannotMakeError(f"In stock, write sizes above 0 and up to {_LONGEST} in; “{item}” has another.")
    return length


def _plain(text: str) -> str:
    """Return text in lower case with single spaces, fractions spelt out."""
    for sign, spelt in _PARTS_OF_ONE.items():
        text = text.replace(sign, spelt)
    return " ".join(text.lower().replace("-", " ").split())
