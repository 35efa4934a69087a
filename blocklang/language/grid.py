"""Rows of cells: a grid over the block, over a rectangle, or over a slanted field."""

from itertools import accumulate
from typing import NamedTuple

from blocklang.language.cells import FALLING, RISING, SQUARE, Cell, CellPatch, Corner
from blocklang.language.drawing import Bend, DrawnPatch, Motion, Place, Shape
from blocklang.language.quantities import Exact, magnitude, read_number
from blocklang.language.scope import Scope
from blocklang.language.spots import points
from blocklang.language.syntax import CellText, Rows, Word
from blocklang.limits import MOST_PATCHES


class Field(NamedTuple):
    """The lower left corner of a grid and its two sides."""

    origin: Place
    across: Place
    up: Place

    def at(self, x: Exact, y: Exact) -> Place:
        """Return the place that lies parts of the way across and up."""
        (ox, oy), (ax, ay), (ux, uy) = self
        return ox + ax * x + ux * y, oy + ay * x + uy * y


class CellFrame(NamedTuple):
    """One cell's four shared corners (sw, se, ne, nw), and where any place in its unit square lies."""

    corners: tuple[Place, Place, Place, Place]

    def place(self, corner: Corner) -> Place:
        """Return where a place of the unit square lies; the corners themselves are shared between cells."""
        index = CORNERS.get(corner)
        if index is not None:
            return self.corners[index]
        return self.field.at(*corner)

    @property
    def field(self) -> Field:
        """The cell as a field of its own."""
        sw, se, _, nw = self.corners
        return Field(sw, (se[0] - sw[0], se[1] - sw[1]), (nw[0] - sw[0], nw[1] - sw[1]))

    def is_square(self) -> bool:
        """Say whether a circle drawn in the unit square stays one."""
        _, (ax, ay), (ux, uy) = self.field
        size = float(ax * ax + ay * ay)
        return magnitude(ax * ux + ay * uy) <= 1e-6 * size and magnitude(ux * ux + uy * uy - size) <= 1e-6 * size


CORNERS: dict[Corner, int] = {(0, 0): 0, (1, 0): 1, (1, 1): 2, (0, 1): 3}


def draw_rows(scope: Scope, rows: Rows) -> None:
    """Put down every cell of a grid."""
    if rows.name is not None:
        scope.declare(rows.name, "rows")
    field = _field(scope, rows)
    count = len(rows.rows[0].cells) if rows.rows else 0
    if field is None or not _is_even(scope, rows, count):
        scope.broken = True
        return
    xs, ys = _lines(scope, rows.columns, count), _lines(scope, rows.heights, len(rows.rows))
    if xs is None or ys is None:
        scope.broken = True
        return
    ys = [1 - y for y in ys]
    lattice = _lattice(field, xs, ys)
    prefix = f"{rows.name.text}." if rows.name is not None else ""
    for number, row in enumerate(rows.rows):
        top, bottom = lattice[number], lattice[number + 1]
        for column, cell in enumerate(row.cells):
            frame = CellFrame((bottom[column], bottom[column + 1], top[column + 1], top[column]))
            draw_cell(scope, cell, frame, f"{prefix}r{number + 1}c{column + 1}")


def _lattice(field: Field, xs: list[Exact], ys: list[Exact]) -> list[list[Place]]:
    """Return the corners of all cells; those of an upright grid need little arithmetic."""
    (ox, oy), (ax, ay), (ux, uy) = field
    if ay or ux:
        return [[field.at(x, y) for x in xs] for y in ys]
    across, up = [ox + ax * x for x in xs], [oy + uy * y for y in ys]
    return [[(x, y) for x in across] for y in up]


def _field(scope: Scope, rows: Rows) -> Field | None:
    draft, zero = scope.draft, 0 * scope.draft.width.value
    if not rows.field:
        return Field((zero, zero), (draft.width.value, zero), (zero, draft.height.value))
    places = points(scope, rows.field)
    if places is None:
        return None
    at = (rows.field[0].start, rows.field[-1].end)
    if len(places) == 2:
        (x, y), (far_x, far_y) = places
        field = Field((min(x, far_x), min(y, far_y)), (magnitude(far_x - x), zero), (zero, magnitude(far_y - y)))
    elif len(places) == 3:
        (x, y), (rx, ry), (ux, uy) = places
        field = Field((x, y), (rx - x, ry - y), (ux - x, uy - y))
    else:
        found = f"`rows in` is followed by {len(places)} points."
        advice = "Name two opposite corners, or three for a slanted field: lower left, lower right, upper left."
        draft.error("bad-field", "This is not a field for rows", found, advice, at)
        return None
    area = field.across[0] * field.up[1] - field.across[1] * field.up[0]
    if magnitude(area) < 1e-6:
        draft.error("bad-field", "This is not a field for rows", "Its corners lie in one line.", "", at)
        return None
    return field


def _is_even(scope: Scope, rows: Rows, count: int) -> bool:
    """Say whether every row has as many cells as the first one."""
    if not rows.rows:
        at = (rows.start, rows.start + len("rows"))
        scope.draft.error("no-rows", "There are no rows here", "No row stands between `rows` and `end`.", "", at)
        return False
    if count * len(rows.rows) > MOST_PATCHES:
        found = f"A block has at most {MOST_PATCHES:,} patches, and this grid has more cells than that."
        scope.draft.error("too-many-patches", "There are too many patches", found, "", rows.rows[0][-2:])
        return False
    uneven = [(number, row) for number, row in enumerate(rows.rows, 1) if len(row.cells) != count]
    for number, row in uneven:
        found = f"Row {number} has {_cells(len(row.cells))}, and row 1 has {_cells(count)}."
        advice = "Write `.` for a cell that something else fills."
        scope.draft.error("uneven-rows", "These rows are not equally long", found, advice, row[-2:])
    return not uneven


def _cells(count: int) -> str:
    return "1 cell" if count == 1 else f"{count} cells"


def _lines(scope: Scope, shares: tuple[Word, ...], count: int) -> list[Exact] | None:
    """Return where the lines between columns (or rows) lie, as parts of the whole from 0 to 1."""
    if not shares:
        return [read_number(f"{index}/{count}") or 0 * scope.draft.inches for index in range(count + 1)]
    at = (shares[0].start, shares[-1].end)
    if len(shares) != count:
        found = f"There are {count} here, and {len(shares)} sizes are given."
        scope.draft.error("uneven-sizes", "The sizes do not fit the rows and columns", found, "", at)
        return None
    values = [read_number(word.text) for word in shares]
    known = [value for value in values if value]
    if len(known) < count:
        found = "Every row and column needs a size larger than nothing."
        scope.draft.error("no-width", "This size cannot be used", found, "", at)
        return None
    total = sum(known)
    return [0 * total, *(part / total for part in accumulate(known))]


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
