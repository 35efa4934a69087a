"""Texture lines clipped to a ring of places, as plain strokes that every renderer draws alike."""

import math

from blocklang_drawing.shapes import Place, Trail, polyline
from blocklang_drawing.textures import Texture


def hatch(ring: tuple[Place, ...], texture: Texture) -> tuple[Trail, ...]:
    """Return the lines of a texture inside a ring; they run on from ring to ring."""
    lines = _lines(ring, math.radians(texture.angle), texture.spacing)
    if texture.crossed:
        lines += _lines(ring, math.radians(texture.angle) + math.pi / 2, texture.spacing)
    return lines


def _lines(ring: tuple[Place, ...], angle: float, spacing: float) -> tuple[Trail, ...]:
    cos, sin = math.cos(angle), math.sin(angle)
    turned = [(x * cos + y * sin, y * cos - x * sin) for x, y in ring]
    low, high = min(y for _, y in turned), max(y for _, y in turned)
    # The half keeps lines off the sides of patches that lie on whole points.
    first = math.ceil(low / spacing - 0.5)
    trails: list[Trail] = []
    while (level := (first + 0.5) * spacing) < high:
        crossings = sorted(_crossings(turned, level))
        for start, end in zip(crossings[::2], crossings[1::2], strict=False):
            trails.append(polyline(tuple((x * cos - level * sin, x * sin + level * cos) for x in (start, end))))
        first += 1
    return tuple(trails)


def _crossings(ring: list[Place], level: float) -> list[float]:
    found = []
    for (ax, ay), (bx, by) in zip(ring, ring[1:] + ring[:1], strict=True):
        if (ay > level) != (by > level):
            found.append(ax + (level - ay) * (bx - ax) / (by - ay))
    return found
