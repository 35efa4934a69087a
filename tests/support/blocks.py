"""Blocks built from plain geometry, without a file: the tests' own ground."""

import math
from collections.abc import Iterable, Sequence

from blocklang.block import Block, Fabric, LengthUnit, Patch, Value, Wish
from blocklang.geometry import TICKS_PER_INCH, Arc, Edge, Outline, Point, from_inches

QUARTER = TICKS_PER_INCH // 4
FABRICS = (
    Fabric("fog", "background", Value.LIGHT, "#e8eef2"),
    Fabric("deep", "star", Value.DARK, "#1f3a5f"),
    Fabric("coral", "accent", Value.MEDIUM, "#d9643a"),
    Fabric("reed", "accent", Value.MEDIUM, "#6b8f71"),
)
Corners = Sequence[tuple[float, float]]


def patch(name: str, fabric: str, corners: Corners, **more: object) -> Patch:
    """Return a straight-sided patch from corners in inches."""
    outline = Outline.through(from_inches(x, y) for x, y in corners)
    return Patch(name, name.partition(".")[0], fabric, outline, **more)  # type: ignore[arg-type]


def block(patches: Iterable[Patch], outline: Corners, name: str = "Test", wishes: tuple[Wish, ...] = ()) -> Block:
    """Return a block with an outline in inches and the tests' fabrics."""
    ring = Outline.through(from_inches(x, y) for x, y in outline)
    return Block(name, LengthUnit.INCH, ring, QUARTER, FABRICS, tuple(patches), wishes=wishes)


def square(size: float, height: float | None = None) -> Corners:
    """Return the corners of a square or rectangle."""
    h = size if height is None else height
    return [(0, 0), (size, 0), (size, h), (0, h)]


def rectangles(boxes: Iterable[tuple[float, float, float, float]], width: float, height: float) -> Block:
    """Return a block of rectangles given as left, low, right, high."""
    names = ("fog", "deep", "coral", "reed")
    patches = [
        patch(f"p{i + 1}", names[i % 2], [(a, b), (c, b), (c, d), (a, d)]) for i, (a, b, c, d) in enumerate(boxes)
    ]
    return block(patches, square(width, height))


def grid(columns: int, rows: int, cell: float = 1.0) -> Block:
    """Return a chequerboard."""
    patches = [
        patch(
            f"r{row + 1}c{column + 1}",
            "fog" if (row + column) % 2 else "deep",
            [
                (column * cell, row * cell),
                ((column + 1) * cell, row * cell),
                ((column + 1) * cell, (row + 1) * cell),
                (column * cell, (row + 1) * cell),
            ],
        )
        for row in range(rows)
        for column in range(columns)
    ]
    return block(patches, square(columns * cell, rows * cell), "Grid")


def whirl() -> Block:
    """Return four bars round a square: 3 in, one partial seam."""
    bars = [(0, 0, 2, 1), (2, 0, 3, 2), (1, 2, 3, 3), (0, 1, 1, 3)]
    patches = [patch(f"bar.{i + 1}", "deep", [(a, b), (c, b), (c, d), (a, d)]) for i, (a, b, c, d) in enumerate(bars)]
    return block([*patches, patch("middle", "coral", [(1, 1), (2, 1), (2, 2), (1, 2)])], square(3), "Whirl")


def pinwheel(cell: float = 3.0) -> Block:
    """Return eight triangles round one centre."""
    c = cell
    centre = (c, c)
    ring = [(2 * c, c), (2 * c, 2 * c), (c, 2 * c), (0, 2 * c), (0, c), (0, 0), (c, 0), (2 * c, 0)]
    patches = [patch(f"t.{i + 1}", "deep" if i % 2 else "fog", [centre, ring[i], ring[(i + 1) % 8]]) for i in range(8)]
    return block(patches, square(2 * c), "Pinwheel")


def star(size: float = 12.0, across: int = 1) -> Block:
    """Return an eight-pointed star; `across` small diamonds along each edge of a point."""
    d = size / (2 + math.sqrt(2))
    mid = size / 2
    patches = []

    def ray(turn: int, length: float) -> tuple[float, float]:
        return length * math.cos(turn * math.pi / 4), length * math.sin(turn * math.pi / 4)

    def at(turn: int, u: float, v: float) -> tuple[float, float]:
        (ax, ay), (bx, by) = ray(turn, u), ray(turn + 1, v)
        return mid + ax + bx, mid + ay + by

    s = d / across
    for turn in range(8):
        for i in range(across):
            for j in range(across):
                corners = [at(turn, a * s, b * s) for a, b in ((i, j), (i + 1, j), (i + 1, j + 1), (i, j + 1))]
                name = f"diamond.{turn + 1}" if across == 1 else f"diamond.{turn + 1}.{i + 1}.{j + 1}"
                patches.append(patch(name, ("deep", "coral", "reed")[(i + j) % 3], corners))
    for k in range(4):
        turn = 2 * k
        inner, right, left = at(turn + 1, d, 0), at(turn, d, d), at(turn + 1, d, d)
        outer = [(size, size), (0, size), (0, 0), (size, 0)][k]
        patches.append(patch(f"corner.{k + 1}", "fog", [inner, right, outer, left]))
        patches.append(patch(f"side.{k + 1}", "fog", [at(turn, d, 0), at(turn - 1, d, d), at(turn, d, d)]))
    return block(patches, square(size), "Star")


def hexagons(rings: int, side: float = 1.0) -> Block:
    """Return a flower of regular hexagons with the given number of rings round the middle one."""
    centres = [(q, r) for q in range(-rings, rings + 1) for r in range(-rings, rings + 1) if abs(q + r) <= rings]
    shift = side * (2 * rings + 2)

    def corners(q: int, r: int) -> list[tuple[float, float]]:
        x, y = shift + side * 1.5 * q, shift + side * math.sqrt(3) * (r + q / 2)
        turns = [k * math.pi / 3 for k in range(6)]
        return [(x + side * math.cos(t), y + side * math.sin(t)) for t in turns]

    patches = [
        patch(f"hex.{i + 1}", "coral" if (q, r) == (0, 0) else "deep", corners(q, r))
        for i, (q, r) in enumerate(sorted(centres))
    ]
    return Block("Flower", LengthUnit.INCH, outline_of(patches), QUARTER, FABRICS, tuple(patches))


def drunkards_path(cells: int = 2, cell: float = 3.0) -> Block:
    """Return cells of a quarter circle in an L-shaped ground, corners alternating."""
    patches = []
    for row in range(cells):
        for column in range(cells):
            patches.extend(_pie(f"r{row + 1}c{column + 1}", column * cell, row * cell, cell, (row + column) % 2 == 0))
    return block(patches, square(cells * cell), "Path")


def _pie(name: str, x: float, y: float, cell: float, low: bool) -> list[Patch]:
    def at(u: float, v: float) -> Point:
        return from_inches(x + (u if low else cell - u), y + (v if low else cell - v))

    r = cell * 2 / 3
    arc = Edge(at(r, 0), at(0, r), Arc(at(0, 0), False))
    pie = Outline((Edge(at(0, 0), at(r, 0)), arc, Edge(at(0, r), at(0, 0))))
    far = [at(0, r), at(0, cell), at(cell, cell), at(cell, 0), at(r, 0)]
    ground = Outline((*(Edge(b, a) for a, b in reversed(list(zip(far, far[1:], strict=False)))), arc.reversed()))
    ground = Outline(
        (
            arc.reversed(),
            *(
                Edge(a, b)
                for a, b in [
                    (at(r, 0), at(cell, 0)),
                    (at(cell, 0), at(cell, cell)),
                    (at(cell, cell), at(0, cell)),
                    (at(0, cell), at(0, r)),
                ]
            ),
        )
    )
    return [
        Patch(f"{name}.pie", "pie", "deep", pie.counterclockwise()),
        Patch(f"{name}.ground", "ground", "fog", ground.counterclockwise()),
    ]


def outline_of(patches: Iterable[Patch]) -> Outline:
    """Return the outline that straight patches with shared corners cover together."""
    edges: dict[tuple[Point, Point], Edge] = {}
    seen: list[Point] = []

    def settle(point: Point) -> Point:
        near = next((p for p in seen if abs(p.x - point.x) <= 4 and abs(p.y - point.y) <= 4), None)
        if near is None:
            seen.append(point)
        return near or point

    for item in patches:
        for edge in item.outline.edges:
            start, end = settle(edge.start), settle(edge.end)
            if edges.pop((end, start), None) is None:
                edges[start, end] = Edge(start, end)
    following = {edge.start: edge for edge in edges.values()}
    first = min(following)
    ring = [following[first]]
    while ring[-1].end != first:
        ring.append(following[ring[-1].end])
    return Outline(tuple(ring))
