"""The cutting list as a table for a spreadsheet: one row for what to buy, each kind of strip, piece and start piece."""

import csv
import io
from collections.abc import Iterator
from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting import FabricNeed, Measure, Offer, Piece, describe_piece, describe_strip_set
from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_list import words

COLUMNS = (
    "line", "fabric", "name", "count", "reversed", "shapes", "width", "length", "exact width", "exact length", "unit",
    "yards", "what to do",
)  # fmt: skip

#: A cell that begins with one of these may be taken for a formula, so an apostrophe is put before it.
_FORMULA = tuple("=+-@\t\r\n|%")

Row = dict[str, str]


def write_csv(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the table as RFC 4180 has it, lengths with decimals in the unit asked for."""
    text = io.StringIO()
    table = csv.DictWriter(text, COLUMNS, restval="", lineterminator="\r\n")
    table.writeheader()
    for row in _rows(plan, options.unit):
        table.writerow({name: plain(cell) for name, cell in row.items()})
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
        yield {"line": "strip set", "name": str(number), "what to do": describe_strip_set(made, unit)}
    for offer in plan.cutting.offers:
        yield from _offer(offer, unit)


def _need(need: FabricNeed, unit: LengthUnit) -> Iterator[Row]:
    yield {"line": "buy", "fabric": need.fabric, "yards": _number(need.yards)}
    for width, count in need.strips:
        yield {"line": "strip", "fabric": need.fabric, "count": str(count), **_sizes((width,), unit)}


def _piece(piece: Piece, unit: LengthUnit) -> Row:
    return {
        "line": "piece",
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
            "line": "other way",
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
