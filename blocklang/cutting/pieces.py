"""Lines of the cutting list, with what each takes: how many shapes, from which strips or strip set."""

import math
from collections.abc import Sequence
from dataclasses import dataclass

from blocklang.cutting.finished import Finished
from blocklang.cutting.lines import Line
from blocklang.cutting.naming import name_of, told_apart
from blocklang.cutting.offsetting import offset
from blocklang.cutting.striped import strip_set, ticks
from blocklang.cutting.strips import Spacing, around_template, spacing, strips_for, upright
from blocklang.cutting.tips import tip_limits
from blocklang.cutting.values import CuttingOptions, Lay, Piece, StripSet
from blocklang.geometry import Outline
from blocklang.geometry.tolerance import TICKS_PER_INCH
from blocklang.graph import PatchGraph


@dataclass(frozen=True, slots=True)
class Laid:
    """A piece with how it lies along a strip and the lots of shapes that do not mix; no spacing when from a set."""

    piece: Piece
    space: Spacing | None
    lots: tuple[int, ...]


def raw_distances(patches: Sequence[Finished], graph: PatchGraph, oversize: float) -> tuple[tuple[float, ...], ...]:
    """Return, for each patch, how far its edges lie inside its raw edges, in ticks."""
    by = float(graph.block.seam_allowance)
    return tuple(
        tuple(
            by + (oversize if outside and graph.block.patches[patch.patch].stripes is None else 0.0)
            for outside in patch.outside
        )
        for patch in patches
    )


def laid_pieces(
    graph: PatchGraph, patches: Sequence[Finished], lines: Sequence[Line], options: CuttingOptions
) -> tuple[tuple[Laid, ...], tuple[StripSet, ...]]:
    """Return the pieces of the cutting list with their places along strips, and the strip sets."""
    distances = raw_distances(patches, graph, float(options.oversize) * TICKS_PER_INCH)
    sets: list[StripSet] = []
    laid = []
    for line, name in zip(lines, _names(graph, lines), strict=True):
        raw = _raw(patches[line.first.patch], distances[line.first.patch])
        index = None
        if line.stripes is not None:
            index = len(sets)
            sets.append(_set_of(graph, line, raw, options))
        outline = offset(
            patches[line.first.patch].outline,
            distances[line.first.patch],
            tip_limits(graph, patches, line.first.patch, distances),
        ).outline
        laid.append(_laid(line, name, raw, outline, index, options))
    return tuple(laid), tuple(sets)


def _names(graph: PatchGraph, lines: Sequence[Line]) -> tuple[str, ...]:
    names = [name_of((graph.block.patches[patch].name for patch in line.patches), line.method) for line in lines]
    shapes = [line.first.shape.either_way_up for line in lines]
    return told_apart(names, [line.method for line in lines], shapes)


def _raw(patch: Finished, distances: Sequence[float]) -> Outline:
    return offset(patch.outline, distances).outline


def _set_of(graph: PatchGraph, line: Line, raw: Outline, options: CuttingOptions) -> StripSet:
    assert line.stripes is not None
    allowance = ticks(graph.block.seam_allowance)
    return strip_set(line.claim, line.stripes, (line.first.outline, raw), line.lots(options.copies), allowance, options)


def _laid(line: Line, name: str, raw: Outline, outline: Outline, index: int | None, options: CuttingOptions) -> Laid:
    usable = float(options.usable_width)
    shapes = tuple(-(-lot // line.claim.yields) for lot in line.lots(options.copies))
    lots = shapes if line.claim.lay in (Lay.SLANTED, Lay.ONE_END) else (sum(shapes),)
    space = _spacing(line, raw, sum(lots), options) if index is None else None
    piece = Piece(
        fabric=line.fabric,
        method=line.method,
        name=name,
        patches=line.patches,
        count=len(line.patches) * options.copies,
        cut=line.cut,
        shapes=sum(shapes),
        yields=line.claim.yields,
        angle=line.claim.angle,
        reversed=line.reversed * options.copies,
        grain=line.claim.grain,
        strip=strips_for(space, lots, usable) if space else None,
        strip_set=index,
        outline=outline,
        lay=line.claim.lay,
        how=line.claim.how,
        marks=line.marks,
        pose=line.claim.pose,
    )
    return Laid(piece, space, lots)


def _spacing(line: Line, raw: Outline, shapes: int, options: CuttingOptions) -> Spacing:
    if line.claim.lay is Lay.TEMPLATE or not line.cut:
        return around_template(raw, _grain_heading(line), options)
    if line.claim.lay is Lay.UPRIGHT and line.claim.angle is None:
        if line.claim.pose:
            return spacing(line.claim.lay, line.cut, None)
        return upright(line.cut, shapes, float(options.usable_width))
    return spacing(line.claim.lay, line.cut, line.claim.angle)


def _grain_heading(line: Line) -> float:
    if line.claim.along is None or line.claim.pose:
        return 0.0
    edges = line.first.outline.edges
    longest = [edges[i] for i in line.first.grain if edges[i].arc is None] or [e for e in edges if e.arc is None]
    best = max(longest, key=lambda edge: round(edge.length(), -2))
    return math.remainder(best.departs(), 2 * math.pi)
