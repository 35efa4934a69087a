"""The shape of a block's outline in a word, and how narrow a patch is."""

import math

from blocklang.geometry import TICKS_PER_INCH, Edge, Outline, Point

#: Words for the shape of a whole block.
SHAPES = ("square", "rectangle", "triangle", "diamond", "hexagon", "octagon", "circle", "other")
#: Corners this straight (in radians) are no corners, and angles this near are equal.
_NEARLY = 0.002
#: Sides that differ less than this, in ticks, are equal.
_CLOSE = TICKS_PER_INCH // 64


def shape_of(outline: Outline) -> str:
    """Return the word for an outline."""
    if all(edge.arc is not None for edge in outline.edges):
        centres = [edge.arc.centre for edge in outline.edges if edge.arc is not None]
        around = all(math.dist(centres[0], centre) < _CLOSE for centre in centres)
        return "circle" if around else "other"
    if any(edge.arc is not None for edge in outline.edges):
        return "other"
    corners = _corners(outline)
    sides = [math.dist(a, b) for a, b in zip(corners, corners[1:] + corners[:1], strict=True)]
    turns = Outline(tuple(Edge(a, b) for a, b in zip(corners, corners[1:] + corners[:1], strict=True))).angles()
    equal = max(sides) - min(sides) < _CLOSE
    if len(corners) == 4:
        right = all(abs(turn - math.pi / 2) < _NEARLY for turn in turns)
        return ("square" if equal else "rectangle") if right else "diamond" if equal else "other"
    convex = all(turn < math.pi for turn in turns)
    return {3: "triangle", 6: "hexagon", 8: "octagon"}.get(len(corners), "other") if convex else "other"


def _corners(outline: Outline) -> tuple[Point, ...]:
    """Return the corners where the outline bends."""
    return tuple(
        corner for corner, turn in zip(outline.corners, outline.angles(), strict=True) if abs(turn - math.pi) > _NEARLY
    )


def sharpest(outline: Outline) -> int:
    """Return the least angle between two straight sides of a patch, in whole degrees; 180 when there is none."""
    edges = outline.edges
    straight = [
        edge.arc is None and before.arc is None for before, edge in zip(edges[-1:] + edges[:-1], edges, strict=True)
    ]
    angles = (angle for angle, counts in zip(outline.angles(), straight, strict=True) if counts)
    return round(math.degrees(min(angles, default=math.pi)))


def narrowest(outline: Outline) -> int:
    """Return the least width of a patch, in ticks: the narrowest gap between parallel lines that it fits through."""
    ring = _hull(outline.chords())
    widths = [
        max(abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) for p in ring) / math.dist(a, b)
        for a, b in zip(ring, ring[1:] + ring[:1], strict=True)
    ]
    return round(min(widths, default=0.0))


def _hull(points: tuple[Point, ...]) -> list[Point]:
    ordered = sorted(set(points))
    return _chain(ordered)[:-1] + _chain(ordered[::-1])[:-1]


def _chain(points: list[Point]) -> list[Point]:
    """Return one side of the hull of points in order."""
    chain: list[Point] = []
    for point in points:
        while len(chain) > 1 and _turn(chain[-2], chain[-1], point) <= 0:
            chain.pop()
        chain.append(point)
    return chain


def _turn(a: Point, b: Point, c: Point) -> int:
    return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)
