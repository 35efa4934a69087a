"""All layouts of n rectangles in a rectangle, one of each kind, drawn on whole inches.

Two layouts are of one kind when sliding an inner line along the lines it ends on turns one into the other. Taking away
the rectangle in the upper right corner and letting its neighbours grow into its place leads from every kind to exactly
one smaller kind, so putting it back in every way makes each kind once. Source of the counts: Ackerman, Barequet,
Pinter, "On the number of rectangulations of a planar point set", SODA 2004.
"""

import random
from collections.abc import Iterator

Box = tuple[int, int, int, int]  # left, low, right, high
Layout = tuple[Box, ...]

#: How many kinds there are of 1, 2, ... rectangles (Baxter numbers), and how many can be cut straight (Schroeder).
KINDS = (1, 2, 6, 22, 92, 422, 2074, 10754)
STRAIGHT = (1, 2, 6, 22, 90, 394, 1806, 8558)


def layouts(count: int) -> Iterator[Layout]:
    """Yield every kind of layout of `count` rectangles; every inner line lies at its own place, so none crosses."""
    if count == 1:
        yield ((0, 0, 1, 1),)
        return
    for smaller in layouts(count - 1):
        yield from _with_one_above(smaller)
        yield from (_over_the_diagonal(one) for one in _with_one_above(_over_the_diagonal(smaller)))


def _with_one_above(layout: Layout) -> Iterator[Layout]:
    """Lay a new rectangle over the last one, two, ... of those that touch the upper edge; the others grow up beside it."""
    width, height = size(layout)
    upper = sorted(box for box in layout if box[3] == height)
    for place, first in enumerate(upper):
        grow = set(upper[:place])
        raised = (((a, b, c, d + 1) if (a, b, c, d) in grow else (a, b, c, d)) for a, b, c, d in layout)
        yield (*raised, (first[0], height, width, height + 1))


def _over_the_diagonal(layout: Layout) -> Layout:
    return tuple((b, a, d, c) for a, b, c, d in layout)


def size(layout: Layout) -> tuple[int, int]:
    """Return the width and the height."""
    return max(box[2] for box in layout), max(box[3] for box in layout)


def cuts_straight(layout: Layout) -> bool:
    """Tell whether a layout falls into single rectangles by straight cuts right through, tried one after the other."""
    if len(layout) == 1:
        return True
    for low, high in ((0, 2), (1, 3)):
        for at in {box[high] for box in layout}:
            here = [box for box in layout if box[high] <= at]
            there = [box for box in layout if box[low] >= at]
            if there and len(here) + len(there) == len(layout):
                return cuts_straight(tuple(here)) and cuts_straight(tuple(there))
    return False


def grown(rng: random.Random, count: int) -> Layout:
    """Return some layout of `count` rectangles."""
    layout: Layout = ((0, 0, 1, 1),)
    while len(layout) < count:
        if rng.random() < 0.5:
            layout = rng.choice(list(_with_one_above(layout)))
        else:
            layout = _over_the_diagonal(rng.choice(list(_with_one_above(_over_the_diagonal(layout)))))
    return layout
