"""Where a box of words fits inside a shape on a drawing."""

from collections.abc import Iterable

from blocklang_drawing.shapes import Place

Ring = tuple[Place, ...]
Span = tuple[float, float]
Box = tuple[float, float, float, float]  # left, top, right, low
#: How finely the height of a shape is searched, and at how many levels a box is held against it.
_STEPS, _LEVELS = 32, 9


def place_box(ring: Ring, width: float, height: float, within: Box | None = None) -> Place | None:
    """Return the upper left corner of a level box inside a ring, as near to its middle as can be; None without room.

    `within` is a larger box that it must lie in as well.
    """
    left, top, right, low = within or _bounds(ring)
    middle = _middle(ring) if within is None else ((left + right) / 2, (top + low) / 2)
    if low - top < height:
        return None
    found = []
    for step in range(_STEPS + 1):
        y = top + (low - top - height) * step / _STEPS
        for a, b in _spans(ring, y, width, height):
            first, last = max(a, left), min(b, right)
            if last - first >= width:
                x = min(max(middle[0] - width / 2, first), last - width)
                found.append((abs(x + width / 2 - middle[0]) + abs(y + height / 2 - middle[1]), x, y))
    return min(found)[1:] if found else None


def _bounds(ring: Ring) -> Box:
    xs, ys = zip(*ring, strict=True)
    return min(xs), min(ys), max(xs), max(ys)


def _spans(ring: Ring, top: float, width: float, height: float) -> list[Span]:
    """Return the level stretches that are inside the ring all the way down a height; none when all are too narrow."""
    levels = [top + height * place / (_LEVELS - 1) for place in range(_LEVELS)]
    levels += [y for _, y in ring if top < y < top + height]
    spans = _within(ring, levels[0])
    for level in levels[1:]:
        if not any(right - left >= width for left, right in spans):
            return []
        spans = [(max(a, c), min(b, d)) for a, b in spans for c, d in _within(ring, level) if min(b, d) > max(a, c)]
    return spans


def _within(ring: Ring, level: float) -> list[Span]:
    crossings = sorted(
        ax + (level - ay) * (bx - ax) / (by - ay)
        for (ax, ay), (bx, by) in zip(ring, ring[1:] + ring[:1], strict=True)
        if (ay > level) != (by > level)
    )
    return list(zip(crossings[::2], crossings[1::2], strict=False))


def _middle(ring: Ring) -> Place:
    """Return the centre of area."""
    twice = x = y = 0.0
    for (ax, ay), (bx, by) in _sides(ring):
        weight = ax * by - bx * ay
        twice += weight
        x += (ax + bx) * weight
        y += (ay + by) * weight
    return (x / (3 * twice), y / (3 * twice)) if twice else ring[0]


def _sides(ring: Ring) -> Iterable[tuple[Place, Place]]:
    return zip(ring, ring[1:] + ring[:1], strict=True)
