"""The author's seam statements, checked against the seams that there are."""

from collections.abc import Iterator

from blocklang.block import PartialWish, PressWish, SetInWish, SpinWish, StopWish
from blocklang.diagnostics import Diagnostic, Severity, Span
from blocklang.geometry.points import Point, same_point
from blocklang.graph.places import say_place
from blocklang.graph.values import Junction, JunctionKind, PatchGraph


def misplaced_wishes(graph: PatchGraph) -> tuple[Diagnostic, ...]:
    """Return an error for each statement about a seam or a junction that the block does not have."""
    return tuple(fault for wish in graph.block.wishes for fault in _faults(graph, wish))


def _faults(graph: PatchGraph, wish: object) -> Iterator[Diagnostic]:
    match wish:
        case PressWish(patches=(a, b), toward=toward, span=span):
            yield from _no_seam(graph, a, b, span)
            if toward is not None and toward not in (a, b):
                yield _press_elsewhere(a, b, toward, span)
        case PartialWish(patches=(a, b), span=span):
            yield from _no_seam(graph, a, b, span)
        case StopWish(patches=(a, b), at=at, span=span):
            yield from _no_seam(graph, a, b, span) or _stop_faults(graph, a, b, at, span)
        case SetInWish(patch=patch, between=between, span=span):
            for other in between:
                yield from _no_seam(graph, patch, other, span)
        case SpinWish(at=at, span=span):
            yield from _spin_faults(graph, at, span)


def _error(code: str, title: str, found: str, advice: str, span: Span) -> Diagnostic:
    return Diagnostic(code, Severity.ERROR, title, found, advice, span)


def _indices(graph: PatchGraph, a: str, b: str) -> set[int]:
    return {index for index, patch in enumerate(graph.block.patches) if patch.id in (a, b)}


def _shared(graph: PatchGraph, a: str, b: str) -> list[int]:
    pair = _indices(graph, a, b)
    return [segment.index for segment in graph.seams if set(segment.patches) == pair]


def _no_seam(graph: PatchGraph, a: str, b: str, span: Span) -> list[Diagnostic]:
    if _shared(graph, a, b):
        return []
    found = f"{a} and {b} do not lie side by side, so there is no seam between them."
    beside_a = ", ".join(sorted(_neighbours(graph, a))[:6])
    return [_error("no-such-seam", "There is no such seam", found, f"{a} is sewn to {beside_a}.", span)]


def _neighbours(graph: PatchGraph, name: str) -> set[str]:
    own = _indices(graph, name, name)
    sides = (segment.patches for segment in graph.seams if own & set(segment.patches))
    return {graph.block.patches[p].id for pair in sides for p in pair if p not in own}


def _press_elsewhere(a: str, b: str, toward: str, span: Span) -> Diagnostic:
    found = f"The seam between {a} and {b} cannot be pressed toward {toward}, which it does not touch."
    advice = f"Write `toward {a}`, `toward {b}` or `open`."
    return _error("press-elsewhere", "The seam does not touch that patch", found, advice, span)


def _junction_at(graph: PatchGraph, at: Point) -> Junction | None:
    return next((junction for junction in graph.junctions if same_point(junction.at, at)), None)


def _stop_faults(graph: PatchGraph, a: str, b: str, at: Point, span: Span) -> list[Diagnostic]:
    junction = _junction_at(graph, at)
    where = say_place(at, graph.block.unit)
    ends = {j for index in _shared(graph, a, b) for j in (graph.segments[index].start, graph.segments[index].end)}
    if junction is None or junction.index not in ends:
        found = f"The seam between {a} and {b} does not end at that point ({where})."
        return [
            _error(
                "stop-elsewhere", "The seam does not end there", found, "Name one of the two ends of the seam.", span
            )
        ]
    if junction.kind is JunctionKind.EDGE:
        found = f"The seam between {a} and {b} reaches the edge of the block ({where}): sew it to the raw edge."
        return [
            _error(
                "stop-at-edge",
                "A seam does not stop at the edge",
                found,
                "Leave this line out: nothing is set in there.",
                span,
            )
        ]
    return []


def _spin_faults(graph: PatchGraph, at: Point, span: Span) -> list[Diagnostic]:
    junction = _junction_at(graph, at)
    where = say_place(at, graph.block.unit)
    if junction is None:
        found = f"No seams meet at that point ({where})."
        return [_error("spin-nowhere", "There is nothing to spin there", found, "Name a point where seams meet.", span)]
    if junction.kind is JunctionKind.EDGE:
        found = f"That point is on the edge of the block ({where}), where a junction is not closed yet."
        return [
            _error(
                "spin-at-edge", "A junction on the edge cannot be spun", found, "Name a point inside the block.", span
            )
        ]
    return []
