"""From a rule of the grammar and its parts to a node of the syntax tree."""

from collections.abc import Callable
from typing import Any

from blocklang.language.syntax import (
    AddLine,
    AllowanceLine,
    CellText,
    CountsLine,
    CutLine,
    Cutting,
    FabricLine,
    Heading,
    LetLine,
    Material,
    Mirror,
    Number,
    Operation,
    OutlineLine,
    PatchLine,
    Piece,
    PlaceLine,
    PointLine,
    RectangleLine,
    Rounds,
    Row,
    Rows,
    SizeLine,
    Spot,
    Step,
    Swap,
    Turn,
    WishLine,
)

# Parts come straight off the parser's stack, whose shape the grammar guarantees; hence Any.
Parts = list[Any]
Builder = Callable[[Parts, int, int], Any]


def _heading(verb: str) -> Builder:
    return lambda parts, start, end: Heading(verb, parts[0], start, end)


def _wish(verb: str) -> Builder:
    return lambda parts, start, end: WishLine(verb, tuple(_flat(parts)), start, end)


def _operation(verb: str) -> Builder:
    def build(parts: Parts, start: int, end: int) -> Operation:
        depth = 1 + max((part.depth for part in parts if type(part) is Operation), default=0)
        return Operation(verb, tuple(parts), depth, start, end)

    return build


UNITS: dict[str, str] = {"in": "in", "inch": "in", "inches": "in", "cm": "cm", "mm": "mm", "deg": "deg", "°": "deg"}


def _measure(parts: Parts, start: int, end: int) -> Operation:
    measured: Operation = _operation(parts[1])(parts[:1], start, end)
    return measured


def _spot(verb: str) -> Builder:
    def build(parts: Parts, start: int, end: int) -> Spot:
        said = [part for part in parts if part is not None]
        points = POINTS_OF_SPOT[verb]
        return Spot(verb, tuple(said[:points]), tuple(said[points:]), start, end)

    return build


POINTS_OF_SPOT = {"at": 0, "point": 1, "from": 1, "along": 2, "between": 2, "meeting": 4}


def _cell(verb: str) -> Builder:
    return lambda parts, start, end: CellText(
        verb, tuple(_flat(part for part in parts if part is not None)), start, end
    )


def _flat(parts: Any) -> Any:
    for part in parts:
        if type(part) is tuple:
            yield from part
        else:
            yield part


def _place(parts: Parts, start: int, end: int) -> PlaceLine:
    options: dict[str, tuple[Any, ...]] = {"size": (), "turn": (), "with": (), "mirrored": ()}
    for verb, said in parts[3:]:
        options[verb] += said
    sizes, turns, swaps = options["size"], options["turn"], options["with"]
    return PlaceLine(parts[0], parts[1], parts[2], sizes, turns, bool(options["mirrored"]), swaps, start, end)


def _rows(parts: Parts, start: int, end: int) -> Rows:
    name, field, columns, heights, *rows = parts
    return Rows(name, field or (), columns or (), heights or (), tuple(rows), start, end - 1)


def _row(parts: Parts, start: int, end: int) -> Row:
    return Row(tuple(cell for cell in parts if cell.verb != "comma"), start, end - 1)


BUILDERS: dict[str, Builder] = {
    "title": _heading("block"),
    "language": _heading("language"),
    "family": _heading("family"),
    "note": _heading("note"),
    "by": _heading("by"),
    "licence": _heading("licence"),
    "source": _heading("source"),
    "headings": lambda parts, start, end: tuple(parts) if len(parts) > 1 else parts[0],
    "size": lambda parts, start, end: SizeLine(parts[0], parts[1], start, end),
    "outline": lambda parts, start, end: OutlineLine(tuple(parts), start, end),
    "outline_of_patches": lambda parts, start, end: OutlineLine((), start, end),
    "allowance": lambda parts, start, end: AllowanceLine(parts[0], start, end),
    "counts": lambda parts, start, end: CountsLine(parts[0], parts[1], start, end),
    "fabric": lambda parts, start, end: FabricLine._make((*parts, start, end)),
    "let": lambda parts, start, end: LetLine(parts[0], parts[1], start, end),
    "point": lambda parts, start, end: PointLine(parts[0], parts[1], start, end),
    "patch": lambda parts, start, end: PatchLine(parts[0], parts[1], tuple(parts[2:-1]), parts[-1], start, end),
    "rounds": lambda parts, start, end: Rounds(parts[0], parts[1], start, end),
    "rectangle": lambda parts, start, end: RectangleLine._make((*parts, start, end)),
    "adding": lambda parts, start, end: AddLine(parts[0], parts[1], parts[2], parts[3], start, end),
    "placing": _place,
    "stop": _wish("stop"),
    "set_in": _wish("set in"),
    "first": _wish("first"),
    "sew_in": _wish("sew in"),
    "partial": _wish("partial"),
    "press_away": _wish("press away"),
    "press_toward": _wish("press toward"),
    "press_open": _wish("press open"),
    "press": _wish("press"),
    "spin": _wish("spin"),
    "turn": lambda parts, start, end: Turn(parts[0], parts[1], parts[2], tuple(parts[3:]), start, end - 1),
    "mirror": lambda parts, start, end: Mirror(tuple(parts[:2]), tuple(parts[2:]), start, end - 1),
    "rows": _rows,
    "cutting": lambda parts, start, end: Cutting(parts[0], tuple(parts[1:]), start, end - 1),
    "at": lambda parts, start, end: parts[0],
    "spot_name": _spot("point"),
    "coordinates": _spot("at"),
    "from_by": _spot("from"),
    "along": _spot("along"),
    "between": _spot("between"),
    "meeting": _spot("meeting"),
    "plain": lambda parts, start, end: Material(tuple(parts), (), start, end),
    "striped": lambda parts, start, end: Material(parts[0], tuple(parts[1:]), start, end),
    "straight_step": lambda parts, start, end: Step(parts[0], "", None, parts[0].start, end),
    "arc_about": lambda parts, start, end: Step(parts[2], parts[0].text, parts[1], start, end),
    "arc_via": lambda parts, start, end: Step(parts[1], "via", parts[0], start, end),
    "placed_size": lambda parts, start, end: ("size", (parts[0],)),
    "placed_turn": lambda parts, start, end: ("turn", (parts[0],)),
    "placed_mirrored": lambda parts, start, end: ("mirrored", (True,)),
    "placed_with": lambda parts, start, end: ("with", tuple(parts)),
    "swap": lambda parts, start, end: Swap(parts[0], parts[1], start, end),
    "whole_block": lambda parts, start, end: (),
    "cut_outline": lambda parts, start, end: tuple(parts),
    "cut_along": lambda parts, start, end: CutLine(True, parts[0], start, end - 1),
    "cut_from": lambda parts, start, end: CutLine(False, tuple(parts), start, end - 1),
    "piece": lambda parts, start, end: Piece(parts[0], parts[1], parts[2], start, end - 1),
    "field": lambda parts, start, end: parts[0],
    "shares": lambda parts, start, end: tuple(parts),
    "row": _row,
    "square": lambda parts, start, end: CellText("square", (parts[0],), start, end),
    "rising": _cell("rising"),
    "falling": _cell("falling"),
    "made": _cell("made"),
    "placed_cell": _cell("placed"),
    "empty": _cell("empty"),
    "comma": _cell("comma"),
    "argument": lambda parts, start, end: parts[0],
    "names": lambda parts, start, end: tuple(parts),
    "sense": lambda parts, start, end: parts[0],
    "direction": lambda parts, start, end: parts[0],
    "add": _operation("+"),
    "subtract": _operation("-"),
    "multiply": _operation("*"),
    "divide": _operation("/"),
    "negative": _operation("negative"),
    "sqrt": _operation("sqrt"),
    "sin": _operation("sin"),
    "cos": _operation("cos"),
    "tan": _operation("tan"),
    "number": lambda parts, start, end: Number(*parts[0]),
    "measure": lambda parts, start, end: _measure([Number(*parts[0]), parts[1]], start, end),
    "variable": lambda parts, start, end: parts[0],
    "width": _operation("width"),
    "height": _operation("height"),
    "bracket": lambda parts, start, end: parts[0],
    "bracket_measure": _measure,
    "unit": lambda parts, start, end: UNITS[parts[0].text],
    "file": lambda parts, start, end: tuple(parts),
}
