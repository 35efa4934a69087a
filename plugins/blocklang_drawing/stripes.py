"""A striped patch cut along its stripes, for drawing."""

import math

from blocklang.block import Patch
from blocklang_drawing.shapes import Place

Ring = tuple[Place, ...]


def stripe_rings(patch: Patch, ring: Ring) -> tuple[tuple[str, Ring], ...]:
    """Return each stripe's fabric and its part of the ring (ticks); the ring may be larger than the finished patch."""
    stripes = patch.stripes
    if stripes is None:
        return ((patch.fabric, ring),)
    lines = _lines(patch)
    found = []
    for fabric, (low, high) in zip(stripes.fabrics, lines, strict=True):
        part = _clip(_clip(ring, patch, low, keep_above=True), patch, high, keep_above=False)
        if part:
            found.append((fabric, part))
    return tuple(found)


def _lines(patch: Patch) -> tuple[tuple[float, float], ...]:
    assert patch.stripes is not None
    count = len(patch.stripes.fabrics)
    away = [_away(patch, point) for point in patch.outline.chords()]
    far = max(away, key=abs)
    stops = [far * index / count for index in range(1, count)]
    if far < 0:
        return tuple(zip([*stops, -math.inf], [math.inf, *stops], strict=True))
    return tuple(zip([-math.inf, *stops], [*stops, math.inf], strict=True))


def _away(patch: Patch, place: Place) -> float:
    assert patch.stripes is not None
    (ax, ay), (bx, by) = patch.stripes.start, patch.stripes.end
    return ((bx - ax) * (place[1] - ay) - (by - ay) * (place[0] - ax)) / (math.hypot(bx - ax, by - ay) or 1.0)


def _clip(ring: Ring, patch: Patch, line: float, keep_above: bool) -> Ring:
    if math.isinf(line):
        return ring
    sign = 1 if keep_above else -1
    kept: list[Place] = []
    for a, b in zip(ring, ring[1:] + ring[:1], strict=True):
        first, second = sign * (_away(patch, a) - line), sign * (_away(patch, b) - line)
        if first >= 0:
            kept.append(a)
        if (first > 0 > second) or (first < 0 < second):
            part = first / (first - second)
            kept.append((a[0] + (b[0] - a[0]) * part, a[1] + (b[1] - a[1]) * part))
    return tuple(kept)
