"""Patches gathered into the lines of the cutting list: equal shapes of one fabric, cut in one way."""

import math
from collections.abc import Hashable, Iterator, Sequence
from dataclasses import dataclass, replace

from blocklang.block import Print, Stripes
from blocklang.cutting.claims import Claim, CuttingMethod, ask
from blocklang.cutting.finished import Finished
from blocklang.cutting.methods import TEMPLATE
from blocklang.cutting.offsetting import offset
from blocklang.cutting.one_way import UPRIGHT, Poses, as_printed, part_of
from blocklang.cutting.rounding import measures, room_for_marks
from blocklang.cutting.striped import stripe_labels, striped_edge
from blocklang.cutting.values import CuttingOptions, Lay, Measure
from blocklang.geometry import TICKS_PER_INCH, Outline
from blocklang.geometry.congruence import Interner, Shape, shape_key
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.graph import PatchGraph


@dataclass(frozen=True, slots=True)
class ToCut:
    """A patch with what it is cut larger by, the edges that lie on the grain, and its shape, stripes and all.

    `finished` is what its shape is without what it is cut larger by: a template has its sewing line from that.
    """

    patch: int
    outline: Outline
    grain: tuple[int, ...]
    shape: Shape
    finished: Hashable


@dataclass(frozen=True, slots=True)
class Line:
    """Equal patches of one fabric (or of one strip set), cut in one way; `first` is the first of them."""

    fabric: str
    stripes: Stripes | None
    method: str
    claim: Claim
    cut: tuple[Measure, ...]
    marks: tuple[Measure, ...]
    first: ToCut
    patches: tuple[int, ...]
    reversed: int
    parts: tuple[int, ...] = ()  # of divided squares that are never turned: how many of each part

    def lots(self, copies: int) -> tuple[int, ...]:
        """Return how many are cut for so many blocks, the mirror images apart where they are cut another way."""
        if self.parts:
            return (max(self.parts) * self.claim.yields * copies,)
        plain = (len(self.patches) - self.reversed) * copies
        return (plain, self.reversed * copies) if self.claim.handed else (plain + self.reversed * copies,)


@dataclass(frozen=True, slots=True)
class _Answer:
    method: str
    claim: Claim
    cut: tuple[Measure, ...]
    marks: tuple[Measure, ...]
    grain: Hashable
    stands: int = 0  # for fabrics that are never turned, which of the ways that the shape is turned this is


def to_cut(
    graph: PatchGraph,
    patches: Sequence[Finished],
    grain: Sequence[tuple[int, ...]],
    oversize: float,
    interner: Interner,
) -> tuple[ToCut, ...]:
    """Return the patches with the outside edges moved out by `oversize` ticks; striped patches stay as they are."""
    return tuple(
        _to_cut(graph.block.patches[patch.patch].stripes, patch, edges, oversize, interner)
        for patch, edges in zip(patches, grain, strict=True)
    )


def lines_of(
    graph: PatchGraph,
    patches: Sequence[ToCut],
    methods: tuple[CuttingMethod, ...],
    options: CuttingOptions,
    interner: Interner,
) -> tuple[Line, ...]:
    """Return the lines of the cutting list: fabrics in the block's order, patches in theirs."""
    answers = list(_answers(graph, patches, methods, options, interner))
    gathered: dict[Hashable, list[int]] = {}
    outer: dict[Hashable, Hashable] = {}
    for index, patch in sorted(enumerate(patches), key=lambda pair: (not pair[1].grain, pair[0])):
        kind = _kind(graph, patch, answers[index])
        key: Hashable = (kind, answers[index].grain)
        if patch.grain:
            outer.setdefault(kind, key)
        elif answers[index].claim.lay is Lay.TEMPLATE:
            key = outer.get(kind, key)
        gathered.setdefault(key, []).append(index)
    rank = {fabric.id: place for place, fabric in enumerate(graph.block.fabrics)}
    lines = [_line(graph, answers[group[0]], [patches[index] for index in group]) for group in gathered.values()]
    return tuple(sorted(lines, key=lambda line: (rank.get(line.fabric, len(rank)), min(line.patches))))


def _answers(
    graph: PatchGraph,
    patches: Sequence[ToCut],
    methods: tuple[CuttingMethod, ...],
    options: CuttingOptions,
    interner: Interner,
) -> Iterator[_Answer]:
    """Yield how each patch is cut; patches of one shape with the same edges on the grain are asked about once."""
    allowance = graph.block.seam_allowance / TICKS_PER_INCH
    known: dict[Hashable, _Answer] = {}
    poses = Poses()
    for patch in patches:
        printed = _printed(graph, patch)
        turned = None if printed is Print.ALL_OVER else (printed, poses.of(patch.outline, patch.shape.either_way_up))
        seen = patch.shape.key, frozenset(_from_start(patch, edge) for edge in patch.grain), turned
        if seen not in known:
            name, claim = ask(methods, patch.outline, allowance, patch.grain) or _fallback(patch, allowance)
            name, claim = as_printed(name, claim, patch.outline, allowance, printed)
            answer = _answer(patch, name, claim, options, interner)
            known[seen] = answer if turned is None else replace(answer, stands=turned[1])
        yield known[seen]


def _answer(patch: ToCut, name: str, claim: Claim, options: CuttingOptions, interner: Interner) -> _Answer:
    grain, marks = _grain_of(patch, claim, interner), measures(claim.marks, options)
    return _Answer(name, claim, room_for_marks(measures(claim.cut, options), marks, options), marks, grain)


def _grain_of(patch: ToCut, claim: Claim, interner: Interner) -> Hashable:
    """Return what keeps patches of one shape apart because of their grain: for templates, the edges that lie on it."""
    if claim.lay is not Lay.TEMPLATE:
        return claim.grain
    if claim.along is None or not patch.grain:
        return None
    arrow = patch.outline.edges[claim.along].departs()
    labels = [edge.arc is None and _is_on_grain(edge.departs() - arrow) for edge in patch.outline.edges]
    return shape_key(patch.outline, interner, labels).either_way_up


def _is_on_grain(turn: float) -> bool:
    """Tell whether an edge at this angle to the arrow lies along the threads, lengthwise or crosswise."""
    return abs(math.remainder(turn, math.pi / 2)) <= 2 * STRAIGHT_ANGLE


def _kind(graph: PatchGraph, patch: ToCut, answer: _Answer) -> Hashable:
    drawn = graph.block.patches[patch.patch]
    fabric = drawn.stripes.fabrics if drawn.stripes else drawn.fabric
    shown = tuple(length.shown for length in (*answer.cut, *answer.marks))
    apart = answer.claim.pose == UPRIGHT and answer.claim.lay is Lay.TEMPLATE
    stands = answer.claim.pose, answer.stands if apart else 0
    return fabric, patch.shape.either_way_up, patch.finished, answer.method, shown, answer.claim.yields, stands


def _to_cut(
    stripes: Stripes | None, patch: Finished, grain: tuple[int, ...], oversize: float, interner: Interner
) -> ToCut:
    if stripes is not None:
        edge = striped_edge(patch.outline, stripes)
        labels = stripe_labels(patch.outline, stripes)
        along = grain if edge is None else (edge,)
        striped = shape_key(patch.outline, interner, labels)
        return ToCut(patch.patch, patch.outline, along, striped, striped.either_way_up)
    plain = interner.shape(patch.outline, ())
    if not oversize or not any(patch.outside):
        return ToCut(patch.patch, patch.outline, grain, plain, plain.either_way_up)
    moved = offset(patch.outline, [oversize if outside else 0.0 for outside in patch.outside])
    edges = tuple(index for index, source in enumerate(moved.sources) if source in grain)
    return ToCut(patch.patch, moved.outline, edges, interner.shape(moved.outline, ()), plain.either_way_up)


def _from_start(patch: ToCut, edge: int) -> int:
    return (edge - patch.shape.start) % len(patch.outline.edges)


def _printed(graph: PatchGraph, patch: ToCut) -> Print:
    drawn = graph.block.patches[patch.patch]
    return Print.ALL_OVER if drawn.stripes else graph.block.fabric(drawn.fabric).printed


def _parts(claim: Claim, members: Sequence[ToCut]) -> tuple[int, ...]:
    if not claim.pose or claim.yields == 1:
        return ()
    parts = [part_of(member.outline, claim) for member in members]
    return tuple(parts.count(part) for part in range(claim.yields))


def _fallback(patch: ToCut, allowance: float) -> tuple[str, Claim]:
    claim = TEMPLATE.claims(patch.outline, allowance, patch.grain)
    assert claim is not None
    return TEMPLATE.name, claim


def _line(graph: PatchGraph, answer: _Answer, members: list[ToCut]) -> Line:
    first = members[0]
    drawn = graph.block.patches[first.patch]
    return Line(
        drawn.fabric,
        drawn.stripes,
        answer.method,
        answer.claim,
        answer.cut,
        answer.marks,
        first,
        tuple(member.patch for member in members),
        sum(member.shape.key != first.shape.key for member in members),
        _parts(answer.claim, members),
    )
