"""What the cutting plan says about stock: what is used, what is left, and what is proven about it."""

from collections.abc import Iterator
from typing import Final

from blocklang.block import LengthUnit
from blocklang.cloth import CutStock, FabricPlan, Precut, Stock
from blocklang_cutting_plan import words

HOW_IT_LIES: Final = (
    "Measure your stock after washing. Lay each piece with its longer side from left to right, "
    "as the cloth lay between the selvages, and cut its strips along that side."
)
_FULLEST = (
    "Each piece of stock is filled in turn. Proven: by area no strips along its longer side, with sub-cuts, take more "
    "out of it of what is still to be cut."
)
_NOT_ALL_FULLEST = "Each piece of stock is filled in turn. That none of them can be filled better is not proven."


def numbers(cut: CutStock) -> str:
    """Say which pieces of stock these are, such as “Fat quarters 1 to 3 of 4”."""
    name = cut.stock.precut.value.capitalize()
    if cut.stock.precut is Precut.STRIP:
        name = "Precut strip"
    if cut.count == 1:
        return f"{name} {cut.first} of {cut.stock.count}"
    return f"{name}s {cut.first} to {cut.last} of {cut.stock.count}"


def size(stock: Stock, unit: LengthUnit) -> str:
    """Say how large a piece of stock is."""
    if stock.precut is Precut.STRIP:
        return f"{words.measure(stock.height, unit)} wide"
    return f"{words.measure(stock.height, unit)} by {words.measure(stock.width, unit)}"


def facts(plan: FabricPlan, unit: LengthUnit) -> Iterator[str]:
    """Yield what there is to say about the stock of a fabric, nothing where there is none."""
    if not plan.stock:
        return
    if not plan.cut_stock:
        yield "Your stock of this fabric stays whole: this plan finds no way to buy less with it."
        return
    used = (f"{plan.used(each)} of {_named(each, each.count, unit)}" for each in plan.stock if plan.used(each))
    yield f"From your stock: {_listed(used)}."
    left = [_named(each, rest, unit) for each in plan.stock if (rest := each.count - plan.used(each))]
    yield f"Left whole: {_listed(left)}." if left else "No piece of your stock is left whole."
    yield f"Without the stock you would buy {words.amount(plan.to_buy_without, unit)}."
    yield _FULLEST if all(cut.fullest for cut in plan.cut_stock) else _NOT_ALL_FULLEST
    yield _together(plan, unit)


def _together(plan: FabricPlan, unit: LengthUnit) -> str:
    """Say what is proven of all the stock and the yardage at once."""
    if not plan.yards:
        return "There is enough of it: nothing has to be bought."
    least = words.amount(plan.least_beside_stock, unit)
    if words.amount(plan.to_buy, unit) == least:
        return "Proven: with this stock no plan of strips and sub-cuts buys less."
    return f"Proven: with this stock every plan of strips and sub-cuts buys at least {least}; whether that is enough is not proven."


def _named(stock: Stock, count: int, unit: LengthUnit) -> str:
    name = f"{stock.precut.value}{'' if count == 1 else 's'}"
    if stock.precut is Precut.FAT_QUARTER:
        return f"{count} {name}"
    return f"{count} {name} of {words.measure(stock.height, unit)}"


def _listed(parts: Iterator[str] | list[str]) -> str:
    return "; ".join(parts)
