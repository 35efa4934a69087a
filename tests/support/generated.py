"""Random blocks with known-good geometry: guillotine cuts, whirls in whirls, stars, flowers and curves; seeds fixed."""

import random

from blocklang.block import Block
from tests.support import blocks

Box = tuple[float, float, float, float]


def boxes(rng: random.Random, depth: int, whirls: bool = True, size: float = 12.0) -> Block:
    """Return a block of rectangles made by cutting, and now and then whirling, `depth` times down."""
    return blocks.rectangles(_divide(rng, (0.0, 0.0, size, size), depth, whirls), size, size)


def _divide(rng: random.Random, box: Box, depth: int, whirls: bool) -> list[Box]:
    left, low, right, high = box
    if depth == 0 or min(right - left, high - low) < 0.9:
        return [box]
    if whirls and min(right - left, high - low) > 3 and rng.random() < 0.3:
        parts = _whirl(rng, box)
    elif rng.random() < 0.5:
        x = _part_way(left, right, rng.choice((0.25, 0.375, 0.5, 0.625, 0.75)))
        parts = [(left, low, x, high), (x, low, right, high)]
    else:
        y = _part_way(low, high, rng.choice((0.25, 0.375, 0.5, 0.625, 0.75)))
        parts = [(left, low, right, y), (left, y, right, high)]
    return [piece for part in parts for piece in _divide(rng, part, depth - 1, whirls)]


def _part_way(start: float, end: float, share: float) -> float:
    """Return a place between two, on a quarter inch, so that no two cuts nearly meet."""
    return round((start + (end - start) * share) * 4) / 4


def _whirl(rng: random.Random, box: Box) -> list[Box]:
    left, low, right, high = box
    a, b = _part_way(left, right, rng.choice((0.25, 0.375))), _part_way(left, right, rng.choice((0.625, 0.75)))
    c, d = _part_way(low, high, rng.choice((0.25, 0.375))), _part_way(low, high, rng.choice((0.625, 0.75)))
    if rng.random() < 0.5:
        return [(left, low, b, c), (b, low, right, d), (a, d, right, high), (left, c, a, high), (a, c, b, d)]
    return [(a, low, right, c), (b, c, right, high), (left, d, b, high), (left, low, a, d), (a, c, b, d)]


def any_block(seed: int) -> Block:
    """Return the generated block of a seed."""
    rng = random.Random(seed)
    match rng.randrange(8):
        case 0:
            return blocks.star(rng.choice((6.0, 9.0, 12.0)), rng.randint(1, 3))
        case 1:
            return blocks.hexagons(rng.randint(1, 2), rng.choice((1.0, 1.5, 0.875)))
        case 2:
            return blocks.drunkards_path(rng.randint(1, 4), rng.choice((2.0, 3.0)))
        case 3:
            return blocks.grid(rng.randint(1, 6), rng.randint(1, 6))
        case _:
            return boxes(rng, rng.randint(1, 5))
