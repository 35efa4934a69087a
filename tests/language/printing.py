"""Print a syntax tree as text, plainly and with needless brackets; and take the places out of a tree."""

from typing import Any

from blocklang.language.syntax import (
    AddLine,
    AllowanceLine,
    BlockFile,
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
    Rows,
    SizeLine,
    Spot,
    Step,
    Turn,
    WishLine,
    Word,
)


def bare(node: Any) -> Any:
    """Return a tree as plain tuples that begin with the node's type, without places and depths."""
    if isinstance(node, BlockFile):
        return bare(node.items)
    if isinstance(node, tuple):
        fields = getattr(node, "_fields", None)
        if fields is None:
            return tuple(map(bare, node))
        kept = [bare(getattr(node, name)) for name in fields if name not in ("start", "end", "depth")]
        return type(node).__name__, *kept
    return node


def names(words: tuple[Word, ...]) -> str:
    """Print words one after the other."""
    return " ".join(word.text for word in words)


def expression(node: Any) -> str:
    """Print arithmetic, with brackets round every part."""
    if isinstance(node, Number | Word):
        return node.text
    assert isinstance(node, Operation)
    parts = [f"({expression(part)})" for part in node.parts]
    if node.verb in ("width", "height"):
        return node.verb
    if node.verb == "negative":
        return f"-{parts[0]}"
    if node.verb in ("sqrt", "sin", "cos", "tan"):
        return f"{node.verb} {parts[0]}"
    return f" {node.verb} ".join(parts) if len(parts) == 2 else f"{parts[0]} {node.verb}"


def spot(node: Spot) -> str:
    """Print where a point lies."""
    points, amounts = [word.text for word in node.points], list(map(expression, node.amounts))
    if node.verb == "at":
        return f"at {amounts[0]}, {amounts[1]}"
    if node.verb == "point":
        return f"at {points[0]}"
    if node.verb == "from":
        return f"from {points[0]} by {amounts[0]} toward {amounts[1]}"
    if node.verb == "along":
        return f"along {points[0]} {points[1]} by {amounts[0]}"
    if node.verb == "between":
        return f"between {points[0]} and {points[1]}" + (f" at {amounts[0]}" if amounts else "")
    return f"where {points[0]}, {points[1]} meets {points[2]} {points[3]}"


def steps(nodes: tuple[Step, ...]) -> str:
    """Print an outline."""
    return " ".join(map(_step, nodes))


def _step(node: Step) -> str:
    if not node.bend:
        return node.to.text
    assert node.by is not None
    by = f"via {node.by.text}" if node.bend == "via" else f"{node.bend} about {node.by.text}"
    return f"arc {by} to {node.to.text}"


def material(node: Material) -> str:
    """Print what a patch is cut from."""
    if not node.along:
        return f"of {node.fabrics[0].text}"
    return f"striped {names(node.fabrics)} along {names(node.along)}"


def cell(node: CellText) -> str:
    """Print one cell."""
    words = [word.text for word in node.words]
    if node.verb == "placed":
        return f'"{words[0]}"' + (f" turn {words[1]}" if len(words) > 1 else "")
    if node.verb == "made":
        return f"{words[0]}({' '.join(words[1:])})"
    return {"empty": ".", "square": "".join(words), "rising": "/".join(words), "falling": "\\".join(words)}[node.verb]


def statement(node: Any) -> str:
    """Print one statement, a group with all that stands in it."""
    text: str = PRINT[type(node)](node)
    return text


def _fabric(node: FabricLine) -> str:
    short = f" as {node.short.text}" if node.short else ""
    title = f' "{node.title.text}"' if node.title else ""
    printed = f" {node.printed.text}" if node.printed else ""
    return f"fabric {node.name.text}{short} {node.role.text} {node.value.text} {node.colour.text}{printed}{title}"


def _place(node: PlaceLine) -> str:
    options = [f"size {expression(size)}" for size in node.sizes] + [f"turn {expression(turn)}" for turn in node.turns]
    options += ["mirrored"] if node.mirrored else []
    swaps = ", ".join(f"{swap.theirs.text} = {swap.ours.text}" for swap in node.swaps)
    options += [f"with {swaps}"] if swaps else []
    return f'place "{node.block.text}" as {node.name.text} {" ".join([spot(node.spot), *options])}'


def _wish(node: WishLine) -> str:
    words = [word.text for word in node.names]
    return {
        "stop": lambda: f"seam {words[0]} {words[1]} stops at {words[2]}",
        "set in": lambda: f"set in {words[0]} between {' and '.join(words[1:])}",
        "first": lambda: f"sew first {', '.join(words[:-1])} as {words[-1]}",
        "sew in": lambda: f"sew in {words[0]}",
        "partial": lambda: f"partial seam {words[0]} {words[1]}",
        "press away": lambda: f"press away from {words[0]}",
        "press toward": lambda: f"press toward {words[0]}",
        "press open": lambda: f"press {words[0]} {words[1]} open",
        "press": lambda: f"press {words[0]} {words[1]} toward {words[2]}",
        "spin": lambda: f"spin {words[0]} {words[1]}",
    }[node.verb]()


def _group(head: str, lines: list[str]) -> str:
    return "\n".join([head, *lines, "end"])


def _rows(node: Rows) -> str:
    head = "rows" + (f" as {node.name.text}" if node.name else "") + (f" in {names(node.field)}" if node.field else "")
    if node.columns:
        head += f" {', '.join(word.text for word in node.columns)} by {', '.join(word.text for word in node.heights)}"
    return _group(head, [" ".join(map(cell, row.cells)) for row in node.rows])


def _cut(node: CutLine | Piece) -> str:
    if isinstance(node, Piece):
        return f"piece {node.name.text} {material(node.material)} at {names(node.at)}"
    return f"along {names(node.points)}" if node.whole else f"from {node.points[0].text} to {node.points[1].text}"


def _turn(node: Turn) -> str:
    by = f" by {expression(node.by)}" if node.by is not None else ""
    return _group(f"turn {node.times.text} about {node.about.text}{by}", list(map(statement, node.items)))


def _heading(node: Heading) -> str:
    return f"{node.verb} {node.text.text}" if node.verb in ("language", "family") else f'{node.verb} "{node.text.text}"'


def _rectangle(node: RectangleLine) -> str:
    height = f" by {expression(node.height)}" if node.height is not None else ""
    return f"patch {node.name.text} {material(node.material)} {spot(node.spot)} size {expression(node.width)}{height}"


def _patch(node: PatchLine) -> str:
    rounds = f" {node.rounds.times.text} times about {node.rounds.about.text}" if node.rounds else ""
    return f"patch {node.name.text} {material(node.material)} through {steps(node.steps)}{rounds}"


def _add(node: AddLine) -> str:
    return f"add {node.name.text} of {names(node.fabrics)} to {names(node.sides)} by {expression(node.width)}"


PRINT: dict[type, Any] = {
    tuple: lambda node: " ".join(map(_heading, node)),
    Heading: _heading,
    SizeLine: lambda n: f"size {expression(n.width)}" + (f" by {expression(n.height)}" if n.height else ""),
    AllowanceLine: lambda node: f"seam allowance {expression(node.width)}",
    FabricLine: _fabric,
    LetLine: lambda node: f"let {node.name.text} = {expression(node.value)}",
    PointLine: lambda node: f"point {node.name.text} {spot(node.spot)}",
    OutlineLine: lambda node: f"outline {steps(node.steps)}" if node.steps else "outline of patches",
    PatchLine: _patch,
    CountsLine: lambda node: f"counts {node.patches.text} patches, {node.seams.text} seams",
    AddLine: _add,
    RectangleLine: _rectangle,
    PlaceLine: _place,
    WishLine: _wish,
    Turn: _turn,
    Mirror: lambda node: _group(f"mirror across {names(node.across)}", list(map(statement, node.items))),
    Rows: _rows,
    Cutting: lambda node: _group(f"cut {steps(node.steps) or 'block'}", list(map(_cut, node.cuts))),
}
