"""The marks of a step: the seam line on both units, where it stops, where it runs to the raw edge, where it turns."""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import combinations, groupby

from blocklang.geometry import Point
from blocklang.graph import PatchGraph
from blocklang.plan import PlanJoin
from blocklang_drawing.contacts import Contact
from blocklang_drawing.frame import Frame
from blocklang_drawing.laying_apart import LaidApart
from blocklang_drawing.raw_edges import CURVE_ERROR
from blocklang_drawing.shapes import Dot, Paint, Path, Place, Shape, Trail, polygon, polyline
from blocklang_drawing.theme import Theme

DOT, PIVOT, TICK, SHORTEST_TICK = 3.6, 5.2, 4.5, 2.0
_SEAM, _HALO = 1.7, 1.5
DASH = (5.0, 2.5)
#: Where many marks crowd, they are drawn smaller, but no smaller than this.
SMALLEST = 0.55


@dataclass(frozen=True, slots=True)
class SeamEnd:
    """One end of a seam on one of its units, on the drawing, and the heading in which it runs out."""

    at: Place
    heading: Place
    stops: bool


def draw_seam_marks(frame: Frame, graph: PatchGraph, laid: LaidApart, theme: Theme) -> tuple[Shape, ...]:
    """Return the marks of every join of a step, on each of its units."""
    shapes: list[Shape] = []
    allowance = graph.block.seam_allowance * frame.scale
    size = _size(frame, graph, laid)
    for join in laid.joins:
        touching = _touching(laid, join)
        shapes.extend(_links(frame, laid, join, touching, theme))
        for runs in _sides(frame, graph, laid, touching):
            shapes.extend(_seam(runs, join, allowance, theme, size))
        shapes.extend(draw_pivot(at, theme, size) for at in _pivots(frame, graph, laid, join, touching))
        shapes.extend(_quarter_ticks(frame, graph, laid, touching, theme))
    return tuple(shapes)


def _touching(laid: LaidApart, join: PlanJoin) -> list[Contact]:
    return [contact for contact in laid.contacts if contact.join == join.index]


def _size(frame: Frame, graph: PatchGraph, laid: LaidApart) -> float:
    """Return the size of dots and lozenges, 1 unless two of them would touch."""
    places = sorted({(round(x, 2), round(y, 2)) for x, y in _marked(frame, graph, laid)})
    nearest = min((math.dist(a, b) for a, b in combinations(places, 2)), default=math.inf)
    return max(SMALLEST, min(1.0, nearest / (2 * PIVOT + 2.5)))


def _marked(frame: Frame, graph: PatchGraph, laid: LaidApart) -> Iterator[Place]:
    """Yield where dots and lozenges stand."""
    for join in laid.joins:
        touching = _touching(laid, join)
        for runs in _sides(frame, graph, laid, touching):
            yield from (end.at for end in (seam_ends(runs[0], runs[-1], join) if runs else ()) if end.stops)
        yield from _pivots(frame, graph, laid, join, touching)


def seam_ends(run_first: tuple[Place, ...], run_last: tuple[Place, ...], join: PlanJoin) -> tuple[SeamEnd, SeamEnd]:
    """Return both ends of a seam drawn along runs of places."""
    return (
        SeamEnd(run_first[0], _heading(run_first[1], run_first[0]), join.start_stops),
        SeamEnd(run_last[-1], _heading(run_last[-2], run_last[-1]), join.end_stops),
    )


def draw_seam_end(end: SeamEnd, allowance: float, theme: Theme, size: float = 1.0) -> tuple[Shape, ...]:
    """Return a filled dot at a stop, or the seam drawn on to the raw edge with an open tick across it."""
    if end.stops:
        return (Dot(end.at, DOT * size, Paint(theme.ink, theme.paper, 1.2 * size)),)
    raw = (end.at[0] + end.heading[0] * allowance, end.at[1] + end.heading[1] * allowance)
    half = max(SHORTEST_TICK, min(TICK, allowance))
    across = (-end.heading[1] * half, end.heading[0] * half)
    tick = polyline(((raw[0] - across[0], raw[1] - across[1]), (raw[0] + across[0], raw[1] + across[1])))
    trails = (polyline((end.at, raw)), tick)
    return _haloed(trails, allowance, theme, ())


def draw_pivot(at: Place, theme: Theme, size: float = 1.0) -> Path:
    """Return the open lozenge of a pivot: another shape than a stop, since cloth may be as dark as a dot."""
    (x, y), reach = at, PIVOT * size
    ring = ((x, y - reach), (x + reach, y), (x, y + reach), (x - reach, y))
    return Path((polygon(ring),), Paint(theme.paper, theme.ink, 1.5 * size))


def _sides(
    frame: Frame, graph: PatchGraph, laid: LaidApart, touching: list[Contact]
) -> tuple[list[tuple[Place, ...]], ...]:
    return tuple(_side(frame, graph, laid, touching, on_left) for on_left in (True, False))


def _side(
    frame: Frame, graph: PatchGraph, laid: LaidApart, touching: list[Contact], on_left: bool
) -> list[tuple[Place, ...]]:
    runs = []
    for unit, contacts in groupby(touching, key=lambda contact: contact.left if on_left else contact.right):
        places: list[Point] = []
        for contact in contacts:
            edge = graph.segments[contact.segment].edge
            places.extend((edge if contact.forward else edge.reversed()).chords(CURVE_ERROR)[bool(places) :])
        runs.append(tuple(frame.at(laid.units[unit].moved(place)) for place in places))
    return runs


def _seam(
    runs: list[tuple[Place, ...]], join: PlanJoin, allowance: float, theme: Theme, size: float
) -> tuple[Shape, ...]:
    if not runs:
        return ()
    first, last = seam_ends(runs[0], runs[-1], join)
    lines = _haloed(tuple(map(polyline, runs)), allowance, theme, DASH)
    return (*lines, *draw_seam_end(first, allowance, theme, size), *draw_seam_end(last, allowance, theme, size))


def _links(frame: Frame, laid: LaidApart, join: PlanJoin, touching: list[Contact], theme: Theme) -> tuple[Shape, ...]:
    if not touching or len(join.units) < 2:
        return ()
    pairs = ((join.path[0], touching[0]), (join.path[-1], touching[-1]))
    trails = tuple(_link(frame, laid, place, contact) for place, contact in pairs)
    return (Path(trails, Paint(stroke=theme.quiet, width=0.8, dash=(1.5, 2.5))),)


def _link(frame: Frame, laid: LaidApart, place: Point, contact: Contact) -> Trail:
    return polyline(tuple(frame.at(laid.units[unit].moved(place)) for unit in (contact.left, contact.right)))


def _pivots(
    frame: Frame, graph: PatchGraph, laid: LaidApart, join: PlanJoin, touching: list[Contact]
) -> Iterator[Place]:
    for contact in touching:
        edge = graph.segments[contact.segment].edge
        end = edge.end if contact.forward else edge.start
        if end in join.pivots:
            sides = (contact.left, contact.right)
            yield from (frame.at(laid.units[unit].moved(end)) for unit in dict.fromkeys(sides))


def _quarter_ticks(
    frame: Frame, graph: PatchGraph, laid: LaidApart, touching: list[Contact], theme: Theme
) -> tuple[Shape, ...]:
    """Return short ticks across a curved seam at its quarter points, on both units; the one in the middle is longer."""
    found: list[Shape] = []
    for contact in touching:
        edge = graph.segments[contact.segment].edge
        for part in (0.25, 0.5, 0.75) if edge.arc else ():
            (x, y), (nx, ny) = edge.at(part), edge.at(part + 1e-3)
            for unit in dict.fromkeys((contact.left, contact.right)):
                at, on = (frame.at(laid.units[unit].moved(place)) for place in ((x, y), (nx, ny)))
                found.append(draw_quarter_tick(at, _heading(at, on), part == 0.5, theme))
    return tuple(found)


def draw_quarter_tick(at: Place, along: Place, longer: bool, theme: Theme) -> Path:
    """Return a tick across a seam line."""
    half = TICK * (1.0 if longer else 0.65)
    ends = tuple((at[0] - along[1] * half * side, at[1] + along[0] * half * side) for side in (-1, 1))
    return Path((polyline(ends),), Paint(stroke=theme.ink, width=1.1))


def _haloed(trails: tuple[Trail, ...], allowance: float, theme: Theme, dash: tuple[float, ...]) -> tuple[Path, ...]:
    # In a small picture the line leaves room for the allowance beyond it to be seen.
    halo = min(_HALO, allowance / 6)
    width = min(_SEAM, max(1.0, allowance / 4))
    return (
        Path(trails, Paint(stroke=theme.paper, width=width + 2 * halo)),
        Path(trails, Paint(stroke=theme.ink, width=width, dash=dash)),
    )


def _heading(a: Place, b: Place) -> Place:
    length = math.dist(a, b) or 1.0
    return (b[0] - a[0]) / length, (b[1] - a[1]) / length
