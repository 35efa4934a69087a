"""The cutting list as a table for a spreadsheet: one row for what to buy, each kind of strip, piece and start piece."""

import csv
import io
from collections.abc import Iterator
from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting import FabricNeed, Measure, Offer, Piece, describe_piece, describe_strip_set
from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang.wording import say
from blocklang_cutting_list import words

COLUMNS = {
    "line": say("line", context="a row of a table"),
    "fabric": say("fabric"),
    "name": say("name"),
    "count": say("count", context="how many"),
    "reversed": say("reversed", context="how many of them"),
    "shapes": say("shapes"),
    "width": say("width"),
    "length": say("length"),
    "exact width": say("exact width"),
    "exact length": say("exact length"),
    "unit": say("unit", context="of length"),
    "yards": say("yards", context="how many"),
    "what to do": say("what to do"),
}

#: A cell that begins with one of these may be taken for a formula, so an apostrophe is put before it.
_FORMULA = tuple("=+-@\t\r\n|%")

Row = dict[str, str]


def write_csv(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the table as RFC 4180 has it, lengths with decimals in the unit asked for.

    Its words are in the language asked for; numbers have a decimal point in every language.
    """
    text, tell = io.StringIO(), options.language.tell
    table = csv.DictWriter(text, COLUMNS, restval="", lineterminator="\r\n")
    table.writerow(tell(COLUMNS))
    for row in _rows(plan, options.unit):
        table.writerow({name: plain(cell) for name, cell in tell(row).items()})
    return text.getvalue()


def plain(cell: str) -> str:
    """Return a cell that no spreadsheet takes for a formula, without signs that it could not show."""
    shown = "".join(sign if sign.isprintable() else " " for sign in cell)
    return f"'{shown}" if cell.startswith(_FORMULA) or shown.startswith(_FORMULA) else shown


def _rows(plan: SewingPlan, unit: LengthUnit) -> Iterator[Row]:
    for need in plan.cutting.needs:
        yield from _need(need, unit)
        yield from (_piece(piece, unit) for piece in plan.cutting.pieces if piece.fabric == need.fabric)
    for number, made in enumerate(plan.cutting.strip_sets, 1):
        yield {
            "line": say("strip set", context="a row of a table"),
            "name": str(number),
            "what to do": describe_strip_set(made, unit),
        }
    for offer in plan.cutting.offers:
        yield from _offer(offer, unit)


def _need(need: FabricNeed, unit: LengthUnit) -> Iterator[Row]:
    yield {"line": say("buy", context="a row of a table"), "fabric": need.fabric, "yards": _number(need.yards)}
    for width, count in need.strips:
        yield {
            "line": say("strip", context="a row of a table"),
            "fabric": need.fabric,
            "count": str(count),
            **_sizes((width,), unit),
        }


def _piece(piece: Piece, unit: LengthUnit) -> Row:
    return {
        "line": say("piece", context="a row of a table"),
        "fabric": piece.fabric,
        "name": piece.name,
        "count": str(piece.count),
        "reversed": str(piece.reversed),
        "shapes": str(piece.shapes),
        **_sizes(piece.cut, unit),
        "what to do": describe_piece(piece, unit),
    }


def _offer(offer: Offer, unit: LengthUnit) -> Iterator[Row]:
    for start in offer.starts:
        yield {
            "line": say("other way", context="a row of a table"),
            "fabric": start.fabric,
            "name": offer.title,
            "count": str(start.count),
            **_sizes(start.sides, unit),
        }


def _sizes(cut: tuple[Measure, ...], unit: LengthUnit) -> Row:
    if not cut:
        return {}
    first, last = cut[0], cut[-1]
    row = {"width": words.decimal(float(first.shown), unit), "exact width": words.decimal(first.exact, unit)}
    if len(cut) > 1:
        row |= {"length": words.decimal(float(last.shown), unit), "exact length": words.decimal(last.exact, unit)}
    return {**row, "unit": unit.value}


def _number(amount: Fraction) -> str:
    return f"{float(amount):g}"
