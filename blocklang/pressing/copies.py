"""Equal copies of a block that is placed more than once, and which of their seams correspond."""

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from blocklang.block import Patch
from blocklang.geometry import Point
from blocklang.graph.values import PatchGraph
from blocklang.pressing.rules import Tie

_HEADING = re.compile(r'^\s*block\s+"([^"\n]*)"', re.MULTILINE)
_NEAR = 16  # ticks; copies are snapped to the lattice each for itself


@dataclass(frozen=True, slots=True)
class Slot:
    """One inner seam of a copy, and whether its left patch is the one that comes first in the copy."""

    segment: int
    first_is_left: bool


@dataclass(frozen=True, slots=True)
class Copy:
    """One placed copy: its group, its patches in the order of its file, its inner seams in an order shared by all."""

    group: tuple[str, ...]
    patches: tuple[int, ...]
    slots: tuple[Slot, ...]
    centre: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Copies:
    """Equal copies of one block; `quarter[i]` is the slot where slot i lies once the copy is turned a quarter.

    It is empty when the copy does not look the same after that; its second part tells whether "first" changes.
    """

    block: str
    copies: tuple[Copy, ...]
    quarter: tuple[tuple[int, bool], ...]


def copies_of(graph: PatchGraph) -> tuple[Copies, ...]:
    """Return every block that is placed more than once in equal copies, in file order."""
    groups: dict[tuple[str, ...], list[int]] = {}
    for index, patch in enumerate(graph.block.patches):
        if patch.group:
            groups.setdefault(patch.group[:1], []).append(index)
    fabrics = {f.id: f"{f.role} {f.value} {f.colour}" for f in graph.block.fabrics}
    named: dict[object, list[Copy]] = {}
    for group, patches in groups.items():
        look = tuple(_look(graph.block.patches[patch], group, fabrics) for patch in patches)
        copy = Copy(group, tuple(patches), tuple(_slots(graph, patches)), _centre(graph, patches))
        named.setdefault(look, []).append(copy)
    found = []
    for members in named.values():
        several = [equal for equal in _equal(graph, members) if len(equal) > 1 and equal[0].slots]
        found += [Copies(_name_of(graph, one[0]), one, _quarter(graph, one[0], fabrics)) for one in several]
    return tuple(found)


def ties_between(
    copies: Sequence[Copy], opened: frozenset[int], quarter: tuple[tuple[int, bool], ...] = ()
) -> Iterator[Tie]:
    """Yield the ties by which copies are pressed alike; with `quarter`, all but the first as that one turned so."""
    turn = quarter or tuple((place, False) for place in range(len(copies[0].slots)))
    for slot, (there, changes) in zip(copies[0].slots, turn, strict=True):
        twins = [(slot, False), *((copy.slots[there], changes) for copy in copies[1:])]
        pressed = [(twin, turned) for twin, turned in twins if twin.segment not in opened]
        for twin, turned in pressed[1:]:
            first, first_turned = pressed[0]
            differ = first.first_is_left ^ twin.first_is_left ^ first_turned ^ turned
            yield Tie(first.segment, twin.segment, differ)


def _equal(graph: PatchGraph, members: list[Copy]) -> list[tuple[Copy, ...]]:
    """Return the copies of one look sorted by size and shape."""
    kinds: list[list[Copy]] = []
    for copy in members:
        kind = next((kind for kind in kinds if _same_shape(graph, kind[0], copy)), None)
        if kind is None:
            kinds.append([copy])
        else:
            kind.append(copy)
    return [tuple(kind) for kind in kinds]


def _same_shape(graph: PatchGraph, one: Copy, other: Copy) -> bool:
    if len(one.slots) != len(other.slots):
        return False
    pairs = zip(one.slots, other.slots, strict=True)
    return all(abs(_length(graph, a) - _length(graph, b)) < _NEAR for a, b in pairs)


def _length(graph: PatchGraph, slot: Slot) -> float:
    return graph.segments[slot.segment].edge.length()


def _look(patch: Patch, group: tuple[str, ...], fabrics: dict[str, str]) -> tuple[object, ...]:
    """Return what two patches of two equal copies share: name, fabrics and number of sides."""
    own = patch.id.removeprefix(f"{group[0]}.")
    names = (patch.fabric,) if patch.stripes is None else patch.stripes.fabrics
    return own, tuple(fabrics[name] for name in names), len(patch.outline.edges)


def _slots(graph: PatchGraph, patches: list[int]) -> list[Slot]:
    """Return the inner seams by their patches; those of one pair in an order that a turn does not change."""
    place = {patch: number for number, patch in enumerate(patches)}
    found = []
    for patch in patches:
        for index, on_left in graph.sides[patch]:
            segment = graph.segments[index]
            other = segment.right if on_left else segment.left
            if place.get(other, -1) > place[patch]:
                found.append((place[patch], place[other], _aside(graph, patch, other, index), Slot(index, on_left)))
    return [slot for *_, slot in sorted(found, key=lambda one: one[:3])]


def _aside(graph: PatchGraph, patch: int, other: int, segment: int) -> float:
    """Return how far the middle of a seam lies to the left of the line from one patch to the other."""
    (ax, ay), (bx, by) = (graph.block.patches[p].outline.centroid() for p in (patch, other))
    x, y = graph.segments[segment].edge.middle()
    return (bx - ax) * (y - ay) - (by - ay) * (x - ax)


def _centre(graph: PatchGraph, patches: list[int]) -> tuple[float, float]:
    bounds = [graph.block.patches[p].outline.bounds() for p in patches]
    low = [min(b[axis] for b in bounds) for axis in (0, 1)]
    high = [max(b[axis + 2] for b in bounds) for axis in (0, 1)]
    return (low[0] + high[0]) / 2, (low[1] + high[1]) / 2


def _quarter(graph: PatchGraph, copy: Copy, fabrics: dict[str, str]) -> tuple[tuple[int, bool], ...]:
    """Return where each slot comes to lie by a quarter turn, or nothing when the picture would change."""
    patches = graph.block.patches
    where = {_cell(patches[p].outline.centroid()): p for p in copy.patches}
    turned: dict[int, int] = {}
    for p in copy.patches:
        twin = _near(where, _turned(patches[p].outline.centroid(), copy.centre))
        if twin is None or fabrics[patches[twin].fabric] != fabrics[patches[p].fabric]:
            return ()
        if patches[p].stripes is not None or not math.isclose(
            patches[twin].outline.area(), patches[p].outline.area(), rel_tol=1e-3
        ):
            return ()
        turned[p] = twin
    middles = {_cell(_middle(graph, slot)): place for place, slot in enumerate(copy.slots)}
    found = []
    for slot in copy.slots:
        there = _near(middles, _turned(_middle(graph, slot), copy.centre))
        if there is None:
            return ()
        found.append((there, turned[_first(graph, slot)] != _first(graph, copy.slots[there])))
    return tuple(found)


def _first(graph: PatchGraph, slot: Slot) -> int:
    segment = graph.segments[slot.segment]
    return segment.left if slot.first_is_left else segment.right


def _middle(graph: PatchGraph, slot: Slot) -> Point | tuple[float, float]:
    return graph.segments[slot.segment].edge.middle()


def _turned(at: "Point | tuple[float, float]", centre: tuple[float, float]) -> tuple[float, float]:
    return centre[0] - (at[1] - centre[1]), centre[1] + (at[0] - centre[0])


def _cell(at: "Point | tuple[float, float]") -> tuple[int, int]:
    return round(at[0] / (4 * _NEAR)), round(at[1] / (4 * _NEAR))


def _near(where: dict[tuple[int, int], int], at: tuple[float, float]) -> int | None:
    x, y = _cell(at)
    cells = ((x + a, y + b) for a in (0, -1, 1) for b in (0, -1, 1))
    return next((where[cell] for cell in cells if cell in where), None)


def _name_of(graph: PatchGraph, copy: Copy) -> str:
    """Return the block's name as its own file gives it, or the first copy's name."""
    spans = {span.source for p in copy.patches if (span := graph.block.patches[p].span) is not None}
    heading = _HEADING.search(next(iter(spans)).text) if len(spans) == 1 else None
    return heading[1] if heading else copy.group[0]
