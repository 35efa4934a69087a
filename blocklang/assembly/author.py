"""The author's words about sewing, held against the order that was found."""

import math
from collections.abc import Iterator

from blocklang.assembly.values import Join, JoinKind
from blocklang.block import PartialWish, RowsWish, SetInWish, StopWish
from blocklang.diagnostics import Diagnostic, Severity, Span
from blocklang.geometry.points import same_point
from blocklang.graph.values import PatchGraph

#: The sine of how far a seam between rows may lean.
_LEVEL = 1e-3

Units = tuple[tuple[int, ...], ...]


def unmet_wishes(graph: PatchGraph, joins: tuple[Join, ...], units: Units) -> tuple[Diagnostic, ...]:
    """Return an error for each wish that the geometry contradicts, so that no order could follow it."""
    found: list[Diagnostic] = []
    for wish in graph.block.wishes:
        match wish:
            case StopWish(patches=patches):
                found.extend(_stops(graph, joins, wish, _seam(graph, *patches)))
            case SetInWish():
                found.extend(_set_in(graph, joins, units, wish))
            case RowsWish():
                found.extend(_rows(graph, joins, wish))
            case PartialWish(patches=patches, span=span):
                found.extend(_partial(joins, patches, _seam(graph, *patches), span))
    return tuple(found)


def _seam(graph: PatchGraph, a: str, b: str) -> set[int]:
    names = [patch.id for patch in graph.block.patches]
    pair = {names.index(a), names.index(b)}
    return {segment.index for segment in graph.seams if set(segment.patches) == pair}


def _stops(graph: PatchGraph, joins: tuple[Join, ...], wish: StopWish, seam: set[int]) -> Iterator[Diagnostic]:
    stops = [junction for join in joins if seam & {t.segment for t in join.path} for junction in _stopped(graph, join)]
    if not any(same_point(graph.junctions[junction].at, wish.at) for junction in stops):
        a, b = wish.patches
        found = f"The seam between {a} and {b} is sewn through there: nothing is set in at that point afterwards."
        advice = "Leave this line out, or say with `set in` which patch comes last there."
        yield Diagnostic("no-stop", Severity.ERROR, "The seam does not stop there", found, advice, wish.span)


def _stopped(graph: PatchGraph, join: Join) -> Iterator[int]:
    first, last = join.path[0], join.path[-1]
    if join.start_stops:
        yield graph.segments[first.segment].start if first.forward else graph.segments[first.segment].end
    if join.end_stops:
        yield graph.segments[last.segment].end if last.forward else graph.segments[last.segment].start


def _set_in(graph: PatchGraph, joins: tuple[Join, ...], units: Units, wish: SetInWish) -> Iterator[Diagnostic]:
    names = [patch.id for patch in graph.block.patches]
    patch, between = names.index(wish.patch), {names.index(name) for name in wish.between}
    for join in joins:
        if len(join.units) == 2 and join.pivots:
            sides = [set(units[unit]) for unit in join.units]
            if any(patch in one and between <= other for one, other in (sides, sides[::-1])):
                return
    found = f"The seams of {wish.patch} to {' and '.join(wish.between)} do not meet at a corner inside the block."
    advice = "Leave this line out: it is sewn on with straight seams."
    yield Diagnostic("not-set-in", Severity.ERROR, "The patch is not set in there", found, advice, wish.span)


def _partial(joins: tuple[Join, ...], patches: tuple[str, str], seam: set[int], span: Span) -> Iterator[Diagnostic]:
    kinds = (JoinKind.PARTIAL, JoinKind.PARTIAL_FINISH)
    if not any(seam & {t.segment for t in join.path} for join in joins if join.kind in kinds):
        found = (
            f"The seam between {patches[0]} and {patches[1]} passes no junction at which it could be left half open."
        )
        advice = "Leave this line out: it is sewn in one go."
        yield Diagnostic("not-partial", Severity.ERROR, "The seam is not a partial seam", found, advice, span)


def _rows(graph: PatchGraph, joins: tuple[Join, ...], wish: RowsWish) -> Iterator[Diagnostic]:
    """The last join of the block must run straight across (or straight down)."""
    edges = [graph.segments[step.segment].edge for step in joins[-1].path] if joins else []
    turns = [abs(math.cos(edge.departs())) if wish.columns else abs(math.sin(edge.departs())) for edge in edges]
    if joins and (joins[-1].kind is not JoinKind.STRAIGHT or max(turns) > _LEVEL):
        word, way = ("columns", "down") if wish.columns else ("rows", "across")
        found = f"No seam runs straight {way} the whole block, so it does not come apart in {word}."
        yield Diagnostic("not-in-rows", Severity.ERROR, f"The block is not made of {word}", found, "", wish.span)
