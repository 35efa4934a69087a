"""Dividing a block into the fewest sections, and among all such divisions the one that is best to sew and to print."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from blocklang.foundation.growing import Grown, covering
from blocklang.foundation.lines import Lay, patches_of
from blocklang.foundation.sameness import Sameness
from blocklang.foundation.solving import Program, minimise, rounded_up
from blocklang.graph.values import Junction, JunctionKind

#: With more sets than these, equal papers are not sought among the divisions.
_MOST_COMPARED = 500
#: With more sets than these, the division that was found first is taken.
_MOST_CHOSEN_FROM = 1_000
#: The work spent on choosing: nobody is told that a choice is the best.
_CHOOSING, _NO_GAP = 30_000, 0.4
#: What is better costs more, in this order: a junction between sections that no seam passes straight, one more kind
#: of paper, uneven sizes, and sections that stand where they could lie.
_BENT, _KIND, _UNEVEN, _STANDING = 1000.0, 10.0, 4.0, 1.0

Division = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Fewest:
    """A division with as few sections as were found, and a number of sections that no division goes below."""

    division: Division
    bound: int

    @property
    def proven(self) -> bool:
        """Whether no division has fewer."""
        return len(self.division) <= self.bound


def divide(lay: Lay, grown: Grown, known: Fewest) -> Fewest:
    """Return a division into the fewest of all sets that can be sections, starting from one that is known."""
    assert grown.all_of_them
    program = Program()
    for _ in grown.sets:
        program.column(1.0)
    _cover(program, lay, grown)
    place = {members: at for at, members in enumerate(grown.sets)}
    solution = minimise(program, tuple(place[members] for members in known.division))
    best = min(known.division, tuple(grown.sets[place] for place in solution.chosen), key=len)
    return Fewest(best, max(known.bound, rounded_up(solution.bound)))


def divisions(lay: Lay, grown: Grown, fewest: Fewest) -> Iterator[Division]:
    """Yield divisions with the fewest sections, those first that are best to sew and to print."""
    size = len(grown.sets)
    if size > _MOST_CHOSEN_FROM or not grown.all_of_them:
        yield fewest.division
        return
    program = _weighed(lay, grown)
    program.row(0.0, len(fewest.division), dict.fromkeys(range(size), 1.0))
    while True:
        solution = minimise(program, work=_CHOOSING, gap=_NO_GAP)
        if not solution.found:
            return
        chosen = [place for place in solution.chosen if place < size]
        yield tuple(grown.sets[place] for place in chosen)
        program.row(0.0, len(chosen) - 1.0, dict.fromkeys(chosen, 1.0))


def _cover(program: Program, lay: Lay, grown: Grown) -> None:
    for places in covering(grown.sets, len(lay.near)):
        program.row(1.0, 1.0, dict.fromkeys(places, 1.0))


def _weighed(lay: Lay, grown: Grown) -> Program:
    program = Program()
    patches = len(lay.near)
    tall = _heights(lay, grown)
    for members, height in zip(grown.sets, tall, strict=True):
        uneven = (members.bit_count() / patches) ** 2
        program.column(_UNEVEN * uneven + _STANDING * height * members.bit_count() / patches)
    _cover(program, lay, grown)
    _count_bends(program, lay, grown)
    if len(grown.sets) <= _MOST_COMPARED:
        _count_papers(program, lay, grown)
    return program


def _heights(lay: Lay, grown: Grown) -> list[float]:
    """Return how high each set reaches, as a share of the block."""
    whole = max(1, lay.graph.block.size[1])
    bounds = [patch.outline.bounds() for patch in lay.graph.block.patches]
    found = []
    for members in grown.sets:
        inside = [bounds[patch] for patch in patches_of(members)]
        found.append((max(b[3] for b in inside) - min(b[1] for b in inside)) / whole)
    return found


def _count_papers(program: Program, lay: Lay, grown: Grown) -> None:
    sameness = Sameness(lay.graph)
    kinds: dict[object, list[int]] = {}
    patches = len(lay.near)
    for place, members in enumerate(grown.sets):
        key = sameness.key(patches_of(members))[0]
        kinds.setdefault(key, []).append(place)
    for places in kinds.values():
        column = program.column(_KIND)
        most = patches // grown.sets[places[0]].bit_count()
        program.row(0.0, math.inf, {column: float(min(most, len(places))), **dict.fromkeys(places, -1.0)})


def _count_bends(program: Program, lay: Lay, grown: Grown) -> None:
    """Charge each junction of many seams that no cut passes straight; a cross or a tee is always passed."""
    junctions = [j for j in lay.graph.junctions if j.kind is JunctionKind.MANY]
    inside = _inside(lay, grown, {end.segment for junction in junctions for end in junction.ends})
    for junction in junctions:
        _count_bend(program, lay, grown, junction, inside)


def _inside(lay: Lay, grown: Grown, segments: set[int]) -> dict[int, list[int]]:
    """Return, for each segment, the sets that hold both its sides."""
    found: dict[int, list[int]] = {}
    for index in sorted(segments):
        left, right = lay.graph.segments[index].patches
        both = (1 << left) | (1 << right)
        found[index] = [place for place, members in enumerate(grown.sets) if members & both == both]
    return found


def _count_bend(program: Program, lay: Lay, grown: Grown, junction: Junction, inside: dict[int, list[int]]) -> None:
    around = 0
    for patch in lay.angles[junction.index]:
        around |= 1 << patch
    passed = {place: 1.0 for place, members in enumerate(grown.sets) if members & around == around}
    for end in junction.ends:
        if end.straight_on is not None and end.straight_on > end.segment:
            straight = program.column()
            passed[straight] = 1.0
            for index in (end.segment, end.straight_on):
                program.row(0.0, 1.0, {straight: 1.0, **dict.fromkeys(inside[index], 1.0)})
    passed[program.column(_BENT)] = 1.0
    program.row(1.0, float(len(passed)), passed)
