"""Where a level line of words fits inside a ring, clear of its sides."""

from itertools import pairwise

from blocklang_drawing.shapes import Place

Span = tuple[float, float]
#: How many levels are tried, an odd number so that the middle is one of them.
_LEVELS = 15
_NUDGE = 1e-6


def room_for_words(ring: tuple[Place, ...], width: float, height: float, near: Place) -> Place | None:
    """Return the middle of a box of that size inside the ring, as near as may be to a place; None when none fits."""
    low, high = min(y for _, y in ring) + height / 2, max(y for _, y in ring) - height / 2
    if high < low - _NUDGE:
        return None
    levels = [low + (high - low) * index / (_LEVELS - 1) for index in range(_LEVELS)]
    levels += [near[1]] if low <= near[1] <= high else []
    places = [place for level in levels for place in _places(ring, level, width, height, near[0])]
    return min(places, key=lambda place: (round(_apart(place, near), 3), place), default=None)


def _places(ring: tuple[Place, ...], level: float, width: float, height: float, near: float) -> list[Place]:
    spans = [span for span in _free(ring, level - height / 2, level + height / 2) if span[1] - span[0] >= width]
    return [(min(max(near, left + width / 2), right - width / 2), level) for left, right in spans]


def _free(ring: tuple[Place, ...], low: float, high: float) -> list[Span]:
    """Return the spans that lie inside the ring at every level of a band."""
    corners = (y + nudge for _, y in ring for nudge in (-_NUDGE, _NUDGE) if low < y < high)
    levels = sorted({low + _NUDGE, high - _NUDGE, *corners})
    levels += [(a + b) / 2 for a, b in pairwise(levels)]
    spans = _inside(ring, levels[0])
    for level in levels[1:]:
        spans = _both(spans, _inside(ring, level))
    return spans


def _inside(ring: tuple[Place, ...], level: float) -> list[Span]:
    crossings = sorted(
        ax + (level - ay) * (bx - ax) / (by - ay)
        for (ax, ay), (bx, by) in zip(ring, ring[1:] + ring[:1], strict=True)
        if (ay > level) != (by > level)
    )
    return list(zip(crossings[::2], crossings[1::2], strict=False))


def _both(first: list[Span], second: list[Span]) -> list[Span]:
    met = ((max(a, c), min(b, d)) for a, b in first for c, d in second)
    return [span for span in met if span[0] < span[1]]


def _apart(place: Place, near: Place) -> float:
    return abs(place[0] - near[0]) + abs(place[1] - near[1])
