"""Orders for the tests: random ones with fixed seeds, and plain ways of laying them out to compare with."""

import random
from functools import cache

from blocklang.cloth import Layout, Order, in_order, straight_way

WIDTH = 336  # 42 in, in eighths


def small_order(seed: int) -> Order:
    """Return an order of two to four kinds and a dozen shapes at most, on a narrow cloth."""
    rng = random.Random(seed)
    kinds = rng.randint(2, 4)
    width = rng.randint(8, 16)
    ways = [straight_way(kind, rng.randint(1, 6), rng.randint(2, width), width) for kind in range(kinds)]
    return Order(width, in_order(ways), tuple(rng.randint(1, 3) for _ in range(kinds)))


def cloth_order(seed: int, turning: bool = False) -> Order:
    """Return an order such as a quilt makes: 3 to 12 sizes, 40 to 400 shapes, cut sizes in eighths.

    Squares come with 1/2 or 7/8 in added to a finished size in half inches, rectangles with 1/2 in.
    """
    rng = random.Random(seed)
    kinds, shapes = rng.randint(3, 12), rng.randint(40, 400)
    sizes: list[tuple[int, int]] = []
    while len(sizes) < kinds:
        if rng.random() < 0.4:
            high = long = 4 * rng.randint(2, 16) + rng.choice((4, 7))
        else:
            high, long = 4 * rng.randint(2, 12) + 4, 4 * rng.randint(2, 24) + 4
        if (high, long) not in sizes:
            sizes.append((high, long))
    parts = sorted(rng.sample(range(1, shapes), kinds - 1))
    wanted = tuple(end - start for start, end in zip([0, *parts], [*parts, shapes], strict=True))
    ways = [straight_way(kind, high, long, WIDTH) for kind, (high, long) in enumerate(sizes)]
    if turning:
        ways += [straight_way(kind, long, high, WIDTH) for kind, (high, long) in enumerate(sizes) if high != long]
    return Order(WIDTH, in_order(ways), wanted)


def first_fit_decreasing(order: Order) -> int:
    """Return the length when shapes, the highest and longest first, go into the first strip with room for them."""
    shapes = sorted(
        ((way.height, way.takes[1]) for way in order.ways for _ in range(order.wanted[way.kind])), reverse=True
    )
    strips: list[list[int]] = []
    for height, length in shapes:
        for strip in strips:
            if strip[1] >= length:
                strip[1] -= length
                break
        else:
            strips.append([height, order.width - length])
    return sum(height for height, _ in strips)


def least_length(order: Order) -> int:
    """Return the least length there is, by trying every strip for what is left to cut."""
    lengths = [(way.height, way.takes[1], way.kind) for way in order.ways]

    @cache
    def least(wanted: tuple[int, ...]) -> int:
        if not any(wanted):
            return 0
        tallest = max(height for height, _, kind in lengths if wanted[kind])
        return min(
            tallest + least(left) for left in after_strip(wanted, len(lengths) - 1, order.width) if left != wanted
        )

    def after_strip(wanted: tuple[int, ...], place: int, room: int) -> list[tuple[int, ...]]:
        if place < 0:
            return [wanted]
        _, length, kind = lengths[place]
        found = []
        for count in range(min(wanted[kind], room // length) + 1):
            left = (*wanted[:kind], wanted[kind] - count, *wanted[kind + 1 :])
            found += after_strip(left, place - 1, room - count * length)
        return found

    return least(order.wanted)


def boxes_of(order: Order, layout: Layout) -> list[tuple[int, int, int, int, int]]:
    """Return the kind, left, top, right and bottom of every shape, strip below strip."""
    boxes, top = [], 0
    for filling, times in layout.strips:
        for _ in range(times):
            left = 0
            for place, count in filling.runs:
                way = order.ways[place]
                for number in range(count):
                    start, end = left + way.takes[number], left + way.takes[number + 1]
                    boxes.append((way.kind, start, top, end, top + way.height))
                left += way.takes[count]
            top += filling.height
    return boxes
