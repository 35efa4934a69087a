"""Arrows as plain paths: a shaft, and a head at one end or both."""

import math
from collections.abc import Iterable

from blocklang_drawing.shapes import Arrow, Paint, Path, Place, Trail, polygon, polyline

_SLIM = 0.42  # half the width of a head, as a part of its length
_HALO = 1.3


def paths_of_arrows(arrows: Iterable[Arrow]) -> tuple[Path, ...]:
    """Return the paths that draw several arrows: all halos first, so that none of them lies on another arrow."""
    drawn: tuple[dict[Paint, list[Trail]], ...] = ({}, {}, {}, {})
    for arrow in arrows:
        paths = arrow_paths(arrow)
        for layer, path in zip(drawn[-len(paths) :], paths, strict=True):
            layer.setdefault(path.paint, []).extend(path.trails)
    return tuple(Path(tuple(trails), paint) for layer in drawn for paint, trails in layer.items())


def arrow_paths(arrow: Arrow) -> tuple[Path, ...]:
    """Return the paths that draw an arrow, its halo first."""
    length = math.dist(arrow.start, arrow.end) or 1.0
    along = ((arrow.end[0] - arrow.start[0]) / length, (arrow.end[1] - arrow.start[1]) / length)
    heads = [polygon(_head(arrow.end, along, arrow.head))]
    tail = arrow.start
    if arrow.both:
        heads.append(polygon(_head(arrow.start, (-along[0], -along[1]), arrow.head)))
        tail = _back(arrow.start, along, -arrow.head * 0.8)
    shaft = (polyline((tail, _back(arrow.end, along, arrow.head * 0.8))),)
    drawn = (
        Path(shaft, Paint(stroke=arrow.colour, width=arrow.width)),
        Path(tuple(heads), Paint(fill=arrow.colour)),
    )
    if arrow.halo is None:
        return drawn
    return (
        Path(shaft, Paint(stroke=arrow.halo, width=arrow.width + 2 * _HALO)),
        Path(tuple(heads), Paint(fill=arrow.halo, stroke=arrow.halo, width=2 * _HALO)),
        *drawn,
    )


def _head(tip: Place, along: Place, length: float) -> tuple[Place, Place, Place]:
    x, y = _back(tip, along, length)
    half = length * _SLIM
    return tip, (x - along[1] * half, y + along[0] * half), (x + along[1] * half, y - along[0] * half)


def _back(place: Place, along: Place, by: float) -> Place:
    return place[0] - along[0] * by, place[1] - along[1] * by
