"""A map whose allowances would be too narrow to read, cut into parts that are drawn larger."""

import math
from collections.abc import Iterator

from blocklang_drawing import Arrow, Dot, Drawing, Path, Place, Shape, Window

#: An allowance narrower than this (points) is hard to read, and this wide it is drawn then.
NARROW, WIDE = 7.0, 10.0
#: No map is cut into more parts each way.
MOST_PARTS = 3


def parts_each_way(allowance: float) -> int:
    """Return into how many parts each way a map is cut whose allowances are so wide (points): 1 for none."""
    return 1 if allowance >= NARROW else min(MOST_PARTS, math.ceil(WIDE / allowance))


def part_of(whole: Drawing, row: int, column: int, count: int) -> Drawing:
    """Return one part of a drawing, a little of its neighbours with it."""
    width, height = whole.width / count, whole.height / count
    onto = (width * column, height * row)
    shapes = tuple(shape for shape in whole.shapes if _meets(shape, onto, (onto[0] + width, onto[1] + height)))
    return Drawing(width, height, (Window((0.0, 0.0), width, height, onto, shapes),), whole.title, whole.font)


def _meets(shape: Shape, low: Place, high: Place) -> bool:
    places = list(_places(shape))
    xs, ys = [x for x, _ in places], [y for _, y in places]
    margin = 12.0
    return not places or (
        min(xs) - margin < high[0]
        and max(xs) + margin > low[0]
        and min(ys) - margin < high[1]
        and max(ys) + margin > low[1]
    )


def _places(shape: Shape) -> Iterator[Place]:
    match shape:
        case Path():
            for trail in shape.trails:
                yield trail.start
                yield from (stretch.end for stretch in trail.stretches)
        case Arrow():
            yield from (shape.start, shape.end)
        case Dot():
            yield from ((shape.at[0] + d * shape.radius, shape.at[1] + d * shape.radius) for d in (-1, 1))
