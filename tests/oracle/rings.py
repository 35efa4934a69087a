"""Partial seams of rectangles as a matter of precedence: runs that end on other runs, and where to sew them in parts."""

from itertools import combinations, product

from tests.oracle.layouts import Layout

Line = tuple[bool, int, int, int]  # upright, where, from, to


def lines(layout: Layout) -> list[Line]:
    """Return the inner lines, each in its whole length; no two of a layout cross."""
    found: list[Line] = []
    for upright in (True, False):
        low, high, start, end = (0, 2, 1, 3) if upright else (1, 3, 0, 2)
        inner = {box[high] for box in layout} & {box[low] for box in layout}
        for where in sorted(inner):
            spans = sorted((box[start], box[end]) for box in layout if where in (box[low], box[high]))
            found.extend((upright, where, *span) for span in _joined(spans))
    return found


def _joined(spans: list[tuple[int, int]]) -> list[tuple[int, int]]:
    whole = [spans[0]]
    for start, end in spans[1:]:
        if start <= whole[-1][1]:
            whole[-1] = whole[-1][0], max(end, whole[-1][1])
        else:
            whole.append((start, end))
    return whole


def fewest_runs_in_parts(layout: Layout) -> int:
    """Return the fewest lines without which no ring of "ends on, so is sewn before" is left."""
    runs = lines(layout)
    before = {(i, j) for i, a in enumerate(runs) for j, b in enumerate(runs) if _foot(a, b) is not None}
    for size in range(len(runs) + 1):
        for gone in combinations(range(len(runs)), size):
            if _sorts(set(range(len(runs))).difference(gone), before):
                return size
    raise AssertionError("without any line there is no ring")


def fewest_partials(layout: Layout) -> int:
    """Return the fewest places at which lines are sewn in parts so that an order is left.

    A line may be parted where another ends on it; of its two parts there, the one that is sewn later comes after the
    line that ends there, the other is free. Elsewhere a part comes after all lines that end on it, and before the
    lines on which it ends itself.
    """
    runs = lines(layout)
    feet = {j: sorted({at for a in runs if (at := _foot(a, b)) is not None}) for j, b in enumerate(runs)}
    places = [(j, at) for j, ats in feet.items() for at in ats]
    for size in range(len(places) + 1):
        for parted in combinations(places, size):
            for later in product((False, True), repeat=size):
                if _order_with(runs, dict(zip(parted, later, strict=True))):
                    return size
    raise AssertionError("sewn in single seams there is an order")


def _order_with(runs: list[Line], parted: dict[tuple[int, int], bool]) -> bool:
    """Tell whether an order is left when lines are parted at places; True there: the upper part is the later one."""
    parts: list[tuple[int, int, int]] = []
    for j, (_, _, start, end) in enumerate(runs):
        stops = [start, *sorted(at for line, at in parted if line == j), end]
        parts.extend((j, a, b) for a, b in zip(stops, stops[1:], strict=False))
    before = set()
    for x, (i, a, b) in enumerate(parts):
        for y, (j, c, d) in enumerate(parts):
            for end in {a, b} & {runs[i][2], runs[i][3]}:
                at = _foot(runs[i], runs[j])
                if at is not None and runs[j][1] == end and _waits(parted, (j, c, d), at):
                    before.add((x, y))
    return _sorts(set(range(len(parts))), before)


def _waits(parted: dict[tuple[int, int], bool], part: tuple[int, int, int], at: int) -> bool:
    line, start, end = part
    if (line, at) not in parted:
        return start < at < end
    return start == at if parted[line, at] else end == at


def _foot(a: Line, b: Line) -> int | None:
    """Return where on a line another one ends, or None when it does not."""
    ends = b[1] in (a[2], a[3])
    return a[1] if a[0] != b[0] and ends and b[2] < a[1] < b[3] else None


def _sorts(left: set[int], before: set[tuple[int, int]]) -> bool:
    left = set(left)
    while left:
        free = {x for x in left if not any((y, x) in before for y in left)}
        if not free:
            return False
        left -= free
    return True
