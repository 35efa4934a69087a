"""Rows of cells: a grid over the block, over a rectangle, or over a slanted field."""

from itertools import accumulate

from blocklang.language.cell_drawing import draw_cell
from blocklang.language.drawing import Place
from blocklang.language.fields import CellFrame, Field
from blocklang.language.quantities import Exact, magnitude, read_number
from blocklang.language.scope import Scope
from blocklang.language.spots import points
from blocklang.language.syntax import Rows, Word
from blocklang.limits import MOST_PATCHES


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
