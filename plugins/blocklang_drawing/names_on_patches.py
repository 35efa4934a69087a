"""Patch names written inside their patches, as large as fits and never smaller than can be read."""

import math

from blocklang.block import Block, Patch
from blocklang_drawing.frame import Frame
from blocklang_drawing.shapes import Place, Text
from blocklang_drawing.theme import Theme
from blocklang_drawing.type_widths import text_width

SMALLEST, LARGEST = 8.0, 12.0
_STEPS = 12  # how finely the inside of a patch is searched for room


def name_patches(frame: Frame, block: Block, theme: Theme) -> tuple[Text, ...]:
    """Return the names that fit; a patch too small for its name stays bare."""
    found = (_name(frame, patch, theme) for patch in block.patches)
    return tuple(text for text in found if text is not None)


def _name(frame: Frame, patch: Patch, theme: Theme) -> Text | None:
    ring = frame.ring(patch.outline.chords())
    wide = text_width(patch.id, 1.0)
    at, half, tall = room_in(ring, wide * LARGEST / 0.92)
    size = min(LARGEST, 2 * half * 0.92 / wide, tall * 0.7)
    if size < SMALLEST:
        return None
    return Text((at[0], at[1] + size * 0.35), patch.id, size, theme.ink, anchor="middle")


def room_in(ring: tuple[Place, ...], wanted: float) -> tuple[Place, float, float]:
    """Return the middle of a level room in a ring, half its width, and its height there.

    Of the rooms as wide as wanted it is the one nearest the middle; when there is none, the widest.
    """
    low, high = min(y for _, y in ring), max(y for _, y in ring)
    band = (high - low) / _STEPS
    best: tuple[float, Place, float] = (0.0, ring[0], 0.0)
    for index in range(2, _STEPS - 1):
        level = low + band * index
        rows = [_widest(ring, level + shift) for shift in (-band * 1.5, 0.0, band * 1.5)]
        left, right = max(row[0] for row in rows), min(row[1] for row in rows)
        score = min(right - left, wanted) - abs(index - _STEPS / 2) * 0.05 * band
        if score > best[0]:
            best = (score, ((left + right) / 2, level), (right - left) / 2)
    return best[1], best[2], band * 3


def _widest(ring: tuple[Place, ...], level: float) -> tuple[float, float]:
    crossings = []
    for (ax, ay), (bx, by) in zip(ring, ring[1:] + ring[:1], strict=True):
        if (ay > level) != (by > level):
            crossings.append(ax + (level - ay) * (bx - ax) / (by - ay))
    crossings.sort()
    pairs = list(zip(crossings[::2], crossings[1::2], strict=False))
    return max(pairs, key=lambda pair: pair[1] - pair[0], default=(math.inf, -math.inf))
