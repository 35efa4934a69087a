"""The author's words about sewing, held against the order that was found."""

from collections.abc import Iterator

from blocklang.assembly.values import Join, JoinKind
from blocklang.block import PartialWish, SetInWish, StopWish
from blocklang.diagnostics import Diagnostic, Severity, Span
from blocklang.geometry.points import same_point
from blocklang.graph.values import PatchGraph

Units = tuple[tuple[int, ...], ...]


def unmet_wishes(graph: PatchGraph, joins: tuple[Join, ...], units: Units) -> tuple[Diagnostic, ...]:
    """Return an error for each stop that the geometry contradicts, and a warning for each wish not followed."""
    found: list[Diagnostic] = []
    for wish in graph.block.wishes:
        match wish:
            case StopWish(patches=patches):
                found.extend(_stops(graph, joins, wish, _seam(graph, *patches)))
            case SetInWish():
                found.extend(_set_in(graph, joins, units, wish))
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
    found = f"{wish.patch} is not set in between {' and '.join(wish.between)} in the order with the fewest pivots."
    advice = "This line is not followed yet; the order on the sheet is the one that is sewn."
    yield Diagnostic("not-set-in", Severity.WARNING, "The patch is not set in there", found, advice, wish.span)


def _partial(joins: tuple[Join, ...], patches: tuple[str, str], seam: set[int], span: Span) -> Iterator[Diagnostic]:
    kinds = (JoinKind.PARTIAL, JoinKind.PARTIAL_FINISH)
    if not any(seam & {t.segment for t in join.path} for join in joins if join.kind in kinds):
        found = f"The seam between {patches[0]} and {patches[1]} is sewn in one go in the order that was found."
        advice = "This line is not followed yet; the order on the sheet is the one that is sewn."
        yield Diagnostic("not-partial", Severity.WARNING, "The seam is not a partial seam", found, advice, span)
