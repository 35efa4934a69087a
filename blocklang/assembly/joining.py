"""From a unit taken apart to joins in order: paths, stops and pivots."""

from dataclasses import dataclass, replace

from blocklang.assembly.choosing import Chooser
from blocklang.assembly.preferences import Why
from blocklang.assembly.regions import Ground, Region
from blocklang.assembly.splits import Split, SplitKind
from blocklang.assembly.values import Join, JoinKind, Travelled


@dataclass(frozen=True, slots=True)
class Made:
    """One unit of the tree: its region, the joins that finish it, the unit number it gets, and why it is made so."""

    region: Region
    joins: tuple[int, ...]
    unit: int
    why: Why


@dataclass(slots=True)
class Sewing:
    """Joins as they pile up, units beside them; patches are the first units."""

    ground: Ground
    joins: list[Join]
    units: list[tuple[int, ...]]
    made: list[Made]


def sew(chooser: Chooser) -> Sewing | None:
    """Take the whole block apart and sew it together again; None when some unit cannot be taken apart."""
    whole = Region(tuple(range(len(chooser.ground.graph.block.patches))))
    sewing = Sewing(chooser.ground, [], [(patch,) for patch in whole.patches], [])
    waiting: list[tuple[Region, Split | None]] = [(whole, None)]
    finished: list[int] = []
    while waiting:
        region, split = waiting.pop()
        if split is not None:
            units = finished[len(finished) - len(split.parts) :]
            del finished[len(finished) - len(split.parts) :]
            finished.append(_make(sewing, region, split, units))
        elif len(region.patches) == 1:
            finished.append(region.patches[0])
        else:
            chosen = chooser.split(region)
            if chosen is None:
                return None
            waiting.append((region, chosen))
            waiting.extend((part, None) for part in reversed(chosen.parts))
    return sewing


def _make(sewing: Sewing, region: Region, split: Split, units: list[int]) -> int:
    first = len(sewing.joins)
    if split.closing:
        unit = _close(sewing, units[0], split)
    else:
        unit = units[0]
        for other in units[1:]:
            unit = _join(sewing, unit, other, region.open)
    sewing.made.append(Made(region, tuple(range(first, len(sewing.joins))), unit, split.why))
    return unit


def _join(sewing: Sewing, a: int, b: int, still_open: frozenset[int]) -> int:
    path = _path(sewing, a, b, still_open)
    together = tuple(sorted(sewing.units[a] + sewing.units[b]))
    sewing.joins.append(_told(sewing, (a, b), path, together, still_open))
    sewing.units.append(together)
    return len(sewing.units) - 1


def _told(
    sewing: Sewing,
    units: tuple[int, int],
    path: tuple[Travelled, ...],
    together: tuple[int, ...],
    still_open: frozenset[int],
) -> Join:
    ground, segments = sewing.ground, sewing.ground.graph.segments
    pivots = _pivots(sewing, path)
    members = set(together)
    ring = _start(sewing, path[0]) == _end(sewing, path[-1]) and not _stays_open(
        sewing, _start(sewing, path[0]), together, still_open
    )
    stops = [not ring and ground.is_notch(j, members) for j in (_start(sewing, path[0]), _end(sewing, path[-1]))]
    curved = any(segments[step.segment].edge.arc for step in path)
    kind = JoinKind.SET_IN if pivots else JoinKind.CURVED if curved else JoinKind.STRAIGHT
    return Join(kind, units, len(sewing.units), path, stops[0], stops[1], pivots)


def _path(sewing: Sewing, a: int, b: int, still_open: frozenset[int]) -> tuple[Travelled, ...]:
    """Return the shared seam as a path with unit a on its left."""
    graph = sewing.ground.graph
    small, other = (a, b) if len(sewing.units[a]) < len(sewing.units[b]) else (b, a)
    there = set(sewing.units[other])
    leaving: dict[int, Travelled] = {}
    reached: set[int] = set()
    for patch in sewing.units[small]:
        for index, on_left in graph.sides[patch]:
            segment = graph.segments[index]
            if index not in still_open and (segment.right if on_left else segment.left) in there:
                forward = on_left == (small == a)
                leaving[segment.start if forward else segment.end] = Travelled(index, forward)
                reached.add(segment.end if forward else segment.start)
    starts = sorted(leaving.keys() - reached)
    if not starts:
        together = sewing.units[a] + sewing.units[b]
        starts = [min(leaving, key=lambda j: (not _stays_open(sewing, j, together, still_open), j))]
    return _in_order(sewing, leaving, starts)


def _stays_open(sewing: Sewing, junction: int, together: tuple[int, ...], still_open: frozenset[int]) -> bool:
    """Tell whether something is still missing at a junction after a join: a patch, or a seam that is left open."""
    members = set(together)
    ends = sewing.ground.graph.junctions[junction].ends
    sides = (side for end in ends for side in sewing.ground.graph.segments[end.segment].patches)
    return any(end.segment in still_open for end in ends) or not members.issuperset(sides)


def _pivots(sewing: Sewing, path: tuple[Travelled, ...]) -> tuple[int, ...]:
    """Return the junctions at which a path bends."""
    inner = [_end(sewing, step) for step in path[:-1]]
    pairs = zip(path, path[1:], inner, strict=False)
    return tuple(j for a, b, j in pairs if sewing.ground.on[a.segment].get(j) != b.segment)


def _in_order(sewing: Sewing, leaving: dict[int, Travelled], starts: list[int]) -> tuple[Travelled, ...]:
    if len(starts) > 1:
        raise AssertionError("a join has one connected path")
    here = starts[0]
    path: list[Travelled] = []
    while here in leaving and len(path) < len(leaving):
        path.append(leaving[here])
        here = _end(sewing, leaving[here])
    return tuple(path)


def _close(sewing: Sewing, unit: int, split: Split) -> int:
    """Close a unit along a seam of its own: finish a partial seam and mark the join that began it, or close a ring."""
    graph, members = sewing.ground.graph, set(sewing.units[unit])
    here = split.begins
    path: list[Travelled] = []
    for index in split.closing:
        segment = graph.segments[index]
        path.append(Travelled(index, segment.start == here))
        here = segment.other_end(here)
    partial = split.kind is SplitKind.CLOSING
    if partial:
        _mark_beginning(sewing, split.closing[0], split.begins)
    curved = any(graph.segments[index].edge.arc for index in split.closing)
    kind = JoinKind.PARTIAL_FINISH if partial else JoinKind.CURVED if curved else JoinKind.STRAIGHT
    begins = partial or sewing.ground.is_notch(split.begins, members)
    stops = sewing.ground.is_notch(here, members)
    pivots = _pivots(sewing, tuple(path))
    sewing.joins.append(Join(kind, (unit,), len(sewing.units), tuple(path), begins, stops, pivots))
    sewing.units.append(sewing.units[unit])
    return len(sewing.units) - 1


def _mark_beginning(sewing: Sewing, segment: int, junction: int) -> None:
    before = sewing.ground.on[segment].get(junction)
    for place in range(len(sewing.joins) - 1, -1, -1):
        join = sewing.joins[place]
        if any(step.segment == before for step in join.path):
            sewing.joins[place] = replace(join, kind=JoinKind.PARTIAL)
            return


def _start(sewing: Sewing, step: Travelled) -> int:
    segment = sewing.ground.graph.segments[step.segment]
    return segment.start if step.forward else segment.end


def _end(sewing: Sewing, step: Travelled) -> int:
    segment = sewing.ground.graph.segments[step.segment]
    return segment.end if step.forward else segment.start
