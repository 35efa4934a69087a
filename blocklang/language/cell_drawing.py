"""Draw what one cell of a grid holds: triangles, a named cell, or a block that fills it."""

from blocklang.language.cells import FALLING, RISING, SQUARE, Cell, CellPatch
from blocklang.language.drawing import Bend, DrawnPatch, Motion, Shape
from blocklang.language.fields import CellFrame
from blocklang.language.quantities import Exact, magnitude, read_number
from blocklang.language.scope import Scope
from blocklang.language.syntax import CellText, Word


def draw_cell(scope: Scope, text: CellText, frame: CellFrame, name: str) -> None:
    """Put down what one cell holds."""
    if text.verb == "empty":
        return
    if text.verb == "placed":
        _place(scope, text, frame, name)
        return
    patches, words = PLAIN.get(text.verb, ()), text.words
    if text.verb == "made":
        made = _made(scope, text)
        if made is None:
            scope.broken = True
            return
        patches, words = made
    fabrics = [scope.draft.fabric(word) for word in words]
    span = scope.draft.span(text.start, text.end)
    if any(patch.arcs for patch in patches) and not frame.is_square():
        found = f"`{text.words[0].text}` has a curve, and this cell is not a square."
        scope.draft.error("cell-not-square", "A circle does not fit here", found, "", text[-2:])
        return
    for number, patch in enumerate(patches, 1):
        fabric = fabrics[patch.fabric]
        if fabric is not None:
            patch_id = name if len(patches) == 1 else f"{name}.{number}"
            _put(scope, DrawnPatch(patch_id, name, fabric, _shape(patch, frame), span), text)


def _put(scope: Scope, patch: DrawnPatch, text: CellText) -> None:
    scope.add_patch(patch, text[-2:])


PLAIN = {"square": SQUARE, "rising": RISING, "falling": FALLING}


def _shape(patch: CellPatch, frame: CellFrame) -> Shape:
    corners = tuple(map(frame.place, patch.corners))
    if not patch.arcs:
        return Shape(corners)
    _, (ax, ay), (ux, uy) = frame.field
    flipped = ax * uy < ay * ux
    bends: list[Bend | None] = [None] * len(corners)
    for arc in patch.arcs:
        bends[arc.corner] = Bend(frame.place(arc.centre), arc.clockwise ^ flipped)
    return Shape(corners, tuple(bends))


def _made(scope: Scope, text: CellText) -> tuple[tuple[CellPatch, ...], tuple[Word, ...]] | None:
    """Return the patches of a cell that is named, and the words that name their fabrics."""
    maker, *arguments = text.words
    cell = scope.draft.placements.cell(maker.text)
    if cell is None:
        from blocklang.language.suggesting import did_you_mean

        known = scope.draft.placements.cell_names()
        found = f"No cell is called `{maker.text}`."
        advice = did_you_mean(maker.text, known, f"The cells are: {', '.join(sorted(known))}.")
        scope.draft.error("unknown-cell", "This cell is not known", found, advice, maker[1:])
        return None
    words = tuple(word for word in arguments if not _is_number(word))
    numbers = [word for word in arguments if _is_number(word)]
    if len(words) != len(cell.fabrics) or len(numbers) > (cell.number is not None):
        _wrong_fabrics(scope, text, cell, len(words))
        return None
    number = read_number(numbers[0].text) if numbers else cell.number or 0 * scope.draft.inches
    if number is None or (numbers and not cell.least <= number <= cell.most):
        found = f"The number of `{cell.name}` lies between {cell.least} and {cell.most}."
        scope.draft.error("number-out-of-range", "This number cannot be used here", found, "", numbers[0][1:])
        return None
    return cell.draw(number), words


def _is_number(word: Word) -> bool:
    return word.text[0].isdigit() or word.text[0] in ".¼½¾⅓⅔⅛⅜⅝⅞"


def _wrong_fabrics(scope: Scope, text: CellText, cell: Cell, words: int) -> None:
    needed = len(cell.fabrics)
    found = (
        f"`{cell.name}` needs {needed} fabric{'s' * (needed != 1)}, and {words} {'is' if words == 1 else 'are'} named."
    )
    if words == needed:
        found = f"`{cell.name}` takes {'one number' if cell.number is not None else 'no number'}."
    advice = f"Write it like this: `{cell.sample}`."
    scope.draft.error("wrong-number-of-fabrics", "This cell does not fit its fabrics", found, advice, text[-2:])


def _place(scope: Scope, text: CellText, frame: CellFrame, name: str) -> None:
    """Fill a cell with a placed block."""
    from blocklang.language.placing import place_drawn

    block, turns = text.words[0], _quarter_turns(scope, text)
    if turns is None:
        return
    placed = scope.draft.placements.open(scope.draft, block)
    if placed is None:
        scope.broken = True
        return
    motion = _into_cell(frame, placed.frame, turns)
    if motion is None:
        found = f"`{block.text}` is {float(placed.width):.4g} in by {float(placed.height):.4g} in, and the cell is shaped otherwise."
        advice = "Give the columns and rows sizes in the proportion of the block."
        scope.draft.error("block-does-not-fit", "This block does not fit its cell", found, advice, text[-2:])
        return
    place_drawn(scope, placed, motion, name, (), text[-2:])


def _quarter_turns(scope: Scope, text: CellText) -> int | None:
    degrees = read_number(text.words[1].text) if len(text.words) > 1 else read_number("0")
    if degrees is not None and degrees % 90 == 0:
        return int(degrees // 90) % 4
    found = "In a cell a block is turned by 90, 180 or 270."
    scope.draft.error("number-out-of-range", "This number cannot be used here", found, "", text.words[1][1:])
    return None


def _into_cell(frame: CellFrame, block: tuple[Exact, Exact, Exact, Exact], turns: int) -> Motion | None:
    """Return the motion that lays a block into a cell; None when it would be stretched."""
    left, low, right, high = block
    corners = frame.corners[turns:] + frame.corners[:turns]
    (ox, oy), (ax, ay), _, (ux, uy) = corners
    wide, tall = right - left, high - low
    a, c, b, d = (ax - ox) / wide, (ay - oy) / wide, (ux - ox) / tall, (uy - oy) / tall
    size = float(a * a + c * c)
    if magnitude(a * b + c * d) > 1e-6 * size or magnitude(b * b + d * d - size) > 1e-6 * size:
        return None
    return Motion(a, b, c, d, ox - a * left - b * low, oy - c * left - d * low)
