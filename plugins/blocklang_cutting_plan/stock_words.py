"""What the cutting plan says about stock: what is used, what is left, and what is proven about it."""

from collections.abc import Iterator
from typing import Final

from blocklang.block import LengthUnit
from blocklang.cloth import CutStock, FabricPlan, Precut, Stock
from blocklang.wording import Message, joined, message, say
from blocklang_cutting_plan import words

HOW_IT_LIES: Final = say(
    "Measure your stock after washing. Lay each piece with its longer side from left to right, "
    "as the cloth lay between the selvages, and cut its strips along that side."
)
_FULLEST: Final = say(
    "Each piece of stock is filled in turn. Proven: by area no strips along its longer side, with sub-cuts, take more "
    "out of it of what is still to be cut."
)
_NOT_ALL_FULLEST: Final = say(
    "Each piece of stock is filled in turn. That none of them can be filled better is not proven."
)
_NUMBERED: Final[dict[Precut, tuple[Message, Message]]] = {
    Precut.FAT_QUARTER: (
        message("Fat quarter {first} of {count}"),
        message("Fat quarters {first} to {last} of {count}"),
    ),
    Precut.STRIP: (message("Precut strip {first} of {count}"), message("Precut strips {first} to {last} of {count}")),
    Precut.SQUARE: (message("Square {first} of {count}"), message("Squares {first} to {last} of {count}")),
}
_NAMED: Final[dict[Precut, Message]] = {
    Precut.FAT_QUARTER: message("{count} fat quarter", "{count} fat quarters"),
    Precut.STRIP: message("{count} strip of {width}", "{count} strips of {width}"),
    Precut.SQUARE: message("{count} square of {width}", "{count} squares of {width}"),
}


def numbers(cut: CutStock) -> str:
    """Say which pieces of stock these are, such as “Fat quarters 1 to 3 of 4”."""
    one, several = _NUMBERED[cut.stock.precut]
    if cut.count == 1:
        return one.say(first=cut.first, count=cut.stock.count)
    return several.say(first=cut.first, last=cut.last, count=cut.stock.count)


def size(stock: Stock, unit: LengthUnit) -> str:
    """Say how large a piece of stock is."""
    if stock.precut is Precut.STRIP:
        return say("{width} wide", width=words.measure(stock.height, unit))
    return say("{width} by {height}", width=words.measure(stock.height, unit), height=words.measure(stock.width, unit))


def facts(plan: FabricPlan, unit: LengthUnit) -> Iterator[str]:
    """Yield what there is to say about the stock of a fabric, nothing where there is none."""
    if not plan.stock:
        return
    if not plan.cut_stock:
        yield say("Your stock of this fabric stays whole: this plan finds no way to buy less with it.")
        return
    used = [
        say("{count} of {stock}", count=plan.used(each), stock=_named(each, each.count, unit))
        for each in plan.stock
        if plan.used(each)
    ]
    yield say("From your stock: {stock}.", stock=joined(used, "; "))
    left = [_named(each, rest, unit) for each in plan.stock if (rest := each.count - plan.used(each))]
    if left:
        yield say("Left whole: {stock}.", stock=joined(left, "; "))
    else:
        yield say("No piece of your stock is left whole.")
    yield say("Without the stock you would buy {amount}.", amount=words.amount(plan.to_buy_without, unit))
    yield _FULLEST if all(cut.fullest for cut in plan.cut_stock) else _NOT_ALL_FULLEST
    yield _together(plan, unit)


def _together(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say what is proven of all the stock and the yardage at once."""
    if not plan.yards:
        return say("There is enough of it: nothing has to be bought.")
    least = words.amount(plan.least_beside_stock, unit)
    if words.amount(plan.to_buy, unit) == least:
        return say("Proven: with this stock no plan of strips and sub-cuts buys less.")
    return say(
        "Proven: with this stock every plan of strips and sub-cuts buys at least {least}; "
        "whether that is enough is not proven.",
        least=least,
    )


def _named(stock: Stock, count: int, unit: LengthUnit) -> str:
    return _NAMED[stock.precut].number(count, width=words.measure(stock.height, unit))
