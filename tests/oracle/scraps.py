"""Random small blocks with fixed seeds: cut and whirling rectangles, chords through patches, stars, hexagons, curves."""

import math
import random
from collections.abc import Callable, Iterable, Sequence
from functools import cache

from blocklang.block import Block, Patch
from blocklang.geometry import Arc, Edge, Outline, Point, from_inches
from tests.oracle.layouts import Layout, grown, size
from tests.support import blocks

Place = tuple[float, float]
Shape = tuple[Place, ...]

_FABRICS = ("fog", "deep", "coral", "reed")
_APART = 0.12  # inches: corners nearer than this but not one are left to the tests of the graph
_SHARE = (0.25, 1 / 3, 0.5, 2 / 3, 0.75)


def scrap(seed: int, patches: int = 0) -> Block:
    """Return the block of a seed; of 4 to 14 patches mostly, or of about as many as asked for."""
    rng = random.Random(seed)
    many = patches or rng.choice((4, 5, 6, 7, 8, 8, 9, 9, 9, 10, 11, 12, 13, 14))
    return _KINDS[seed % len(_KINDS)](rng, many)


def _whirls(rng: random.Random, many: int) -> Block:
    """Rectangles cut in two or into whirls, whirls in whirls; cuts on quarter inches, so crosses turn up."""
    boxes: list[tuple[float, float, float, float]] = [(0.0, 0.0, 12.0, 12.0)]
    for _ in range(4 * many):
        if len(boxes) >= many:
            break
        box = rng.choice(boxes)
        parts = _whirl(rng, *box) if rng.random() < 0.4 else _halves(rng, *box)
        if parts and all(min(c - a, d - b) >= 0.5 for a, b, c, d in parts):
            boxes.remove(box)
            boxes.extend(parts)
    return blocks.rectangles(sorted(boxes), 12, 12)


def _halves(rng: random.Random, a: float, b: float, c: float, d: float) -> list[tuple[float, float, float, float]]:
    if rng.random() < 0.5:
        x = _on_a_quarter(rng, a, c)
        return [(a, b, x, d), (x, b, c, d)]
    y = _on_a_quarter(rng, b, d)
    return [(a, b, c, y), (a, y, c, d)]


def _on_a_quarter(rng: random.Random, low: float, high: float) -> float:
    return round((low + (high - low) * rng.choice((*_SHARE, 0.5))) * 4) / 4


def _whirl(rng: random.Random, a: float, b: float, c: float, d: float) -> list[tuple[float, float, float, float]]:
    x, u = sorted(_on_a_quarter(rng, a, c) for _ in "xu")
    y, v = sorted(_on_a_quarter(rng, b, d) for _ in "yv")
    if x == u or y == v:
        return []
    if rng.random() < 0.5:
        return [(a, b, u, y), (u, b, c, v), (x, v, c, d), (a, y, x, d), (x, y, u, v)]
    return [(x, b, c, y), (u, y, c, d), (a, v, u, d), (a, b, x, v), (x, y, u, v)]


def _any_layout(rng: random.Random, many: int) -> Block:
    """A layout grown rectangle by rectangle in the upper right corner: rings that share runs, not only nested ones."""
    layout: Layout = grown(rng, many)
    boxes = [(float(a), float(b), float(c), float(d)) for a, b, c, d in layout]
    return blocks.rectangles(boxes, *size(layout))


def _chords(rng: random.Random, many: int) -> Block:
    """A square, or a few squares, cut along chords between corners and places on the sides of single patches."""
    wide, high = rng.choice(((1, 1), (1, 1), (2, 1), (2, 2)))
    shapes: list[Shape] = [
        tuple((6.0 * (i + u), 6.0 * (j + v)) for u, v in ((0, 0), (1, 0), (1, 1), (0, 1)))
        for i in range(wide)
        for j in range(high)
    ]
    return _divided(rng, shapes, many)


def _star(rng: random.Random, many: int) -> Block:
    """An eight-pointed star with some of its patches cut by chords, or a sector of it without the rest."""
    shapes = _star_shapes()
    return _divided(rng, _cluster(rng, shapes, max(3, min(len(shapes), many - rng.choice((0, 1, 2, 4, 4))))), many, 0.3)


@cache
def _star_shapes() -> tuple[Shape, ...]:
    return tuple(_shape_of(patch) for patch in blocks.star().patches)


def _hexagons(rng: random.Random, many: int) -> Block:
    """A cluster of hexagons without a hole, some of them cut by chords."""
    shapes = _hexagon_shapes()
    return _divided(
        rng, _cluster(rng, shapes, max(2, min(len(shapes), many) - rng.choice((0, 1, 2, 3, 4, 4)))), many, 0.3
    )


@cache
def _hexagon_shapes() -> tuple[Shape, ...]:
    return tuple(_shape_of(patch) for patch in blocks.hexagons(3, 2.0).patches)


def _whirl_of_any(rng: random.Random, many: int) -> Block:
    """Four-sided patches whirling round a polygon of three to seven sides, one in the other, and chords."""
    sides = rng.randint(3, 7)
    shapes: list[Shape] = [tuple(_on_circle(6.0, k / sides) for k in range(sides))]
    outline = shapes[0]
    while len(shapes) + len(shapes[0]) <= many or len(shapes) == 1:
        inner = shapes[0]
        turned = _arms(inner, rng.choice((0.25, 0.3, 0.35)), rng.random() < 0.5)
        if turned is None:
            break
        shapes[:1] = turned
    return _drawn(_cut_up(rng, shapes, many, 0.1), outline)


def _on_circle(radius: float, turn: float) -> Place:
    return radius + radius * math.cos(math.tau * turn + 0.4), radius + radius * math.sin(math.tau * turn + 0.4)


def _whirled(rng: random.Random, shape: Shape) -> list[Shape] | None:
    corners = [p for k, p in enumerate(shape) if _turn(shape[k - 1], p, shape[(k + 1) % len(shape)]) > 1e-6]
    if len(corners) < len(shape):
        return None
    return _arms(shape, rng.choice((0.25, 0.3, 0.35, 0.4)), rng.random() < 0.5)


def _arms(shape: Shape, share: float, mirrored: bool) -> list[Shape] | None:
    """Lay lines from each corner's neighbourhood parallel to nothing, each ending on the next: a whirl."""
    n = len(shape)
    ring = shape[::-1] if mirrored else shape
    feet = [_between(ring[k], ring[(k + 1) % n], share) for k in range(n)]
    heads = [_between(feet[k], ring[(k + 2) % n], 0.75 if n > 3 else 0.85) for k in range(n)]
    tips = []
    for k in range(n):
        tip = _meeting(feet[k - 1], heads[k - 1], feet[k], heads[k])
        if tip is None:
            return None
        tips.append(tip)
    # the line from foot k-1 ends at tip k on the line from foot k
    arms = [(feet[k - 1], ring[k], feet[k], tips[k]) for k in range(n)]
    shapes = [tuple(tips), *arms]
    shapes = [s[::-1] if mirrored else s for s in shapes]
    if any(_area(s) < 0.3 or not _is_convex(s) for s in shapes):
        return None
    return shapes


def _pies(rng: random.Random, many: int) -> Block:
    """Squares with a quarter circle in any corner, plain, halved, or beside chords; some quarters are parted again."""
    wide = 2 if many < 12 else max(3, round(math.sqrt(many / 2)))
    high = max(1, many // (2 * wide))
    patches: list[Patch] = []
    for i in range(wide):
        for j in range(high):
            patches.extend(_cell(rng, f"c{i}{j}", 4.0 * i, 4.0 * j, 4.0))
    return blocks.block(patches, blocks.square(4.0 * wide, 4.0 * high), "Pies")


def _cell(rng: random.Random, name: str, x: float, y: float, side: float) -> list[Patch]:
    turn, radius = rng.randrange(4), side * rng.choice((0.5, 0.5, 0.625, 0.75))

    def at(u: float, v: float) -> Point:
        for _ in range(turn):
            u, v = side - v, u
        return from_inches(x + u, y + v)

    def ring(*corners: tuple[float, float]) -> Outline:
        return Outline.through(at(u, v) for u, v in corners)

    match rng.randrange(5):
        case 0:
            return [_patch(f"{name}.a", ring((0, 0), (side, 0), (side, side), (0, side)), rng)]
        case 1:
            halves = [(0, 0), (side, 0), (side, side)], [(0, 0), (side, side), (0, side)]
            return [_patch(f"{name}.{k}", ring(*half), rng) for k, half in enumerate(halves)]
    arc = Edge(at(radius, 0), at(0, radius), Arc(at(0, 0), False))
    around = [at(0, radius), at(0, side), at(side, side), at(side, 0), at(radius, 0)]
    ground = Outline((arc, *(Edge(a, b) for a, b in zip(around, around[1:], strict=False)))).counterclockwise()
    pie = Outline((arc, Edge(at(0, radius), at(0, 0)), Edge(at(0, 0), at(radius, 0)))).counterclockwise()
    if rng.random() < 0.6:
        return [_patch(f"{name}.pie", pie, rng), _patch(f"{name}.ground", ground, rng)]
    return [*_slices(f"{name}.pie", at, radius, rng), _patch(f"{name}.ground", ground, rng)]


def _slices(name: str, at: Callable[[float, float], Point], radius: float, rng: random.Random) -> list[Patch]:
    middle = at(radius * math.sqrt(0.5), radius * math.sqrt(0.5))
    ends = (at(radius, 0), middle, at(0, radius))
    found = []
    for k in (0, 1):
        arc = Edge(ends[k], ends[k + 1], Arc(at(0, 0), False))
        ring = Outline((arc, Edge(ends[k + 1], at(0, 0)), Edge(at(0, 0), ends[k]))).counterclockwise()
        found.append(_patch(f"{name}{k}", ring, rng))
    return found


def _jigsaw(rng: random.Random, many: int) -> Block:
    """Squares of a grid grown together at random: patches with inner corners, notches and hooks."""
    side = max(3, round(math.sqrt(1.6 * many)))
    wide, high = rng.choice(((side, side), (side + 1, side), (side, side + 1), (side + 1, side + 1)))
    cells = {(i, j): k for k, (i, j) in enumerate((i, j) for i in range(wide) for j in range(high))}
    for _ in range(20 * wide * high):
        if len(set(cells.values())) <= many:
            break
        i, j = rng.choice(sorted(cells))
        k, m = rng.choice(((i + 1, j), (i, j + 1)))
        if cells.get((k, m), cells[i, j]) != cells[i, j]:
            merged = {c: cells[i, j] if n == cells[k, m] else n for c, n in cells.items()}
            if _is_one_ring([_square(c) for c, n in merged.items() if n == cells[i, j]]):
                cells = merged
    names = sorted(set(cells.values()))
    shapes = [_around([_square(c) for c, n in sorted(cells.items()) if n == name]) for name in names]
    return _drawn(shapes, ((0.0, 0.0), (2.0 * wide, 0.0), (2.0 * wide, 2.0 * high), (0.0, 2.0 * high)))


def _square(cell: tuple[int, int]) -> Shape:
    i, j = cell
    return (2.0 * i, 2.0 * j), (2.0 * i + 2, 2.0 * j), (2.0 * i + 2, 2.0 * j + 2), (2.0 * i, 2.0 * j + 2)


def _around(squares: list[Shape]) -> Shape:
    """Return the outline of squares with its corners only."""
    sides = {(a, b) for square in squares for a, b in zip(square, square[1:] + square[:1], strict=True)}
    after = {a: b for a, b in sides if (b, a) not in sides}
    ring = [min(after)]
    while after[ring[-1]] != ring[0]:
        ring.append(after[ring[-1]])
    n = len(ring)
    bends = (k for k in range(n) if len({p[0] for p in (ring[k - 1], ring[k], ring[(k + 1) % n])}) > 1)
    return tuple(ring[k] for k in bends if len({p[1] for p in (ring[k - 1], ring[k], ring[(k + 1) % n])}) > 1)


_KINDS = (_whirls, _any_layout, _chords, _star, _hexagons, _whirl_of_any, _pies, _jigsaw)


def _patch(name: str, outline: Outline, rng: random.Random) -> Patch:
    return Patch(name, name, rng.choice(_FABRICS), outline)


def _shape_of(patch: Patch) -> Shape:
    return tuple((p.x / 720720, p.y / 720720) for p in patch.outline.corners)


def _drawn(shapes: list[Shape], outline: Shape) -> Block:
    left, low = min(x for x, _ in outline), min(y for _, y in outline)
    moved = [[(x - left, y - low) for x, y in shape] for shape in (*shapes, outline)]
    patches = [blocks.patch(f"p{n + 1}", _FABRICS[n % 3], corners) for n, corners in enumerate(moved[:-1])]
    return blocks.block(patches, moved[-1], "Scrap")


def _cluster(rng: random.Random, shapes: tuple[Shape, ...], many: int) -> list[Shape]:
    """Return patches that lie side by side and enclose no others, taken one by one."""
    chosen = [rng.randrange(len(shapes))]
    for _ in range(40 * many):
        if len(chosen) >= many:
            break
        new = rng.randrange(len(shapes))
        if new not in chosen and _is_one_ring([shapes[k] for k in (*chosen, new)]):
            chosen.append(new)
    return [shapes[k] for k in sorted(chosen)]


def _is_one_ring(shapes: list[Shape]) -> bool:
    """Tell whether the outline of shapes with shared corners passes each point once and is one ring."""
    return bool(_outline(shapes))


def _outline(shapes: Iterable[Shape]) -> Shape:
    """Return the ring round shapes with shared corners; () when it is more than one, or touches itself."""
    loose: dict[tuple[Place, Place], None] = {}
    for shape in shapes:
        ring = [(round(x, 3), round(y, 3)) for x, y in shape]
        for a, b in zip(ring, ring[1:] + ring[:1], strict=True):
            if (b, a) in loose:
                del loose[b, a]
            else:
                loose[a, b] = None
    after = dict(loose.keys())
    ring = [next(iter(after))]
    while len(ring) <= len(after) and after[ring[-1]] != ring[0]:
        ring.append(after[ring[-1]])
    return tuple(ring) if len(ring) == len(loose) == len(after) else ()


def _divided(rng: random.Random, shapes: Sequence[Shape], many: int, whirls: float = 0.0) -> Block:
    """Draw shapes with shared corners, cut up along chords and now and then into whirls."""
    exact = {(round(x, 3), round(y, 3)): (x, y) for shape in shapes for x, y in shape}
    return _drawn(_cut_up(rng, list(shapes), many, whirls), tuple(exact[corner] for corner in _outline(shapes)))


def _cut_up(rng: random.Random, shapes: list[Shape], many: int, whirls: float) -> list[Shape]:
    """Part single patches, along chords or into whirls, until there are as many as asked for or nothing good turns up."""
    for _ in range(30 * many):
        if len(shapes) >= many:
            break
        shape = rng.choice(shapes)
        parts = _whirled(rng, shape) if rng.random() < whirls else _cut(rng, shape)
        if parts and all(_good(part) for part in parts):
            others = [p for other in shapes for p in other]
            if _keeps_apart([p for s in parts for p in s], others):
                place = shapes.index(shape)
                shapes[place : place + 1] = parts
    return shapes


def _cut(rng: random.Random, shape: Shape) -> list[Shape] | None:
    n = len(shape)
    i, j = sorted(rng.sample(range(n), 2))
    a, b = (
        shape[k] if rng.random() < 0.35 else _between(shape[k], shape[(k + 1) % n], rng.choice(_SHARE)) for k in (i, j)
    )
    one = [a, *shape[i + 1 : j + 1], b]
    two = [b, *shape[j + 1 :], *shape[: i + 1], a]
    parts = [tuple(p for k, p in enumerate(s) if math.dist(p, s[k - 1]) > 1e-9) for s in (one, two)]
    return parts if all(len(part) > 2 for part in parts) else None


def _good(shape: Shape) -> bool:
    """Tell whether a patch can be handled: convex, no side shorter than a third of an inch, no point too sharp."""
    sides = [math.dist(p, shape[k - 1]) for k, p in enumerate(shape)]
    return _is_convex(shape) and min(sides) > 0.34 and _area(shape) > 0.3


def _is_convex(shape: Shape) -> bool:
    n = len(shape)
    for k in range(n):
        turn = _turn(shape[k - 1], shape[k], shape[(k + 1) % n])
        if not (abs(turn) < 1e-6 or 0.05 < turn < math.pi - 0.2):
            return False
    return True


def _turn(a: Place, b: Place, c: Place) -> float:
    return math.remainder(math.atan2(c[1] - b[1], c[0] - b[0]) - math.atan2(b[1] - a[1], b[0] - a[0]), math.tau)


def _keeps_apart(new: list[Place], old: list[Place]) -> bool:
    return all(d < 1e-6 or d > _APART for p in new for q in (*old, *new) for d in (math.dist(p, q),))


def _area(shape: Shape) -> float:
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(shape, shape[1:] + shape[:1], strict=True)) / 2


def _between(a: Place, b: Place, share: float) -> Place:
    return a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share


def _meeting(a: Place, b: Place, c: Place, d: Place) -> Place | None:
    """Return where the segment a to b meets the segment c to d."""
    rx, ry, sx, sy = b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]
    cross = rx * sy - ry * sx
    if abs(cross) < 1e-9:
        return None
    t = ((c[0] - a[0]) * sy - (c[1] - a[1]) * sx) / cross
    u = ((c[0] - a[0]) * ry - (c[1] - a[1]) * rx) / cross
    return (a[0] + rx * t, a[1] + ry * t) if 0 < t < 1 and 0 < u < 1 else None


def circle() -> Block:
    """Return two half circles set into a ground of two halves, parted the other way: no cut runs right through."""
    middle, top, low, left, right = (from_inches(*at) for at in ((4, 4), (4, 6), (4, 2), (2, 4), (6, 4)))
    corners = [from_inches(x, y) for x, y in ((0, 0), (4, 0), (8, 0), (8, 8), (4, 8), (0, 8))]
    arcs = [Arc(middle, False), Arc(middle, True)]
    rings = {
        "upper": [Edge(right, left, arcs[0]), Edge(left, right)],
        "lower": [Edge(left, right, arcs[0]), Edge(right, left)],
        "west": [Edge(low, top, arcs[1]), *_through(top, corners[4], corners[5], corners[0], corners[1], low)],
        "east": [Edge(top, low, arcs[1]), *_through(low, corners[1], corners[2], corners[3], corners[4], top)],
    }
    patches = [Patch(n, n, "deep" if len(ring) == 2 else "fog", Outline(tuple(ring))) for n, ring in rings.items()]
    return blocks.block(patches, blocks.square(8), "Circle")


def _through(*points: Point) -> list[Edge]:
    return [Edge(a, b) for a, b in zip(points, points[1:], strict=False)]
