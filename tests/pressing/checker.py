"""Locks, spins and clips found again from the drawing and the directions alone, by other means than the program's."""

import math
from dataclasses import dataclass
from itertools import pairwise

from shapely.geometry import Point as Dot
from shapely.geometry import Polygon

from blocklang.assembly.values import Assembly, JoinKind
from blocklang.block import SpinSense, SpinWish
from blocklang.graph import OUTSIDE
from blocklang.pressing.values import Pressing

ASIDE = 2_000.0  # ticks


@dataclass(frozen=True)
class Pass:
    """A join straight through a junction: its two seams, and the other seams on each side of it."""

    junction: int
    through: tuple[int, int]
    sides: tuple[tuple[int, ...], tuple[int, ...]]

    @property
    def lockable(self):
        return bool(self.sides[0] and self.sides[1])

    @property
    def arriving(self):
        return self.sides[0] + self.sides[1]


class Drawing:
    """What can be seen in the drawing of an assembly."""

    def __init__(self, assembly: Assembly) -> None:
        self.assembly = assembly
        graph = assembly.graph
        self.shapes = [Polygon([tuple(p) for p in patch.outline.chords()]) for patch in graph.block.patches]
        self.leaving: dict[int, dict[int, float]] = {}
        self.counterclockwise: dict[tuple[int, int], int] = {}
        for s in graph.segments:
            for at, edge in ((s.start, s.edge), (s.end, s.edge.reversed())):
                x, y = edge.at(min(0.4, 4 * ASIDE / edge.length()))
                angle = math.atan2(y - edge.start.y, x - edge.start.x)
                self.leaving.setdefault(at, {})[s.index] = angle
                if OUTSIDE not in s.patches:
                    beside = Dot(x - ASIDE * math.sin(angle), y + ASIDE * math.cos(angle))
                    self.counterclockwise[at, s.index] = next(p for p in s.patches if self.shapes[p].contains(beside))
        outside = {n for s in graph.segments if OUTSIDE in s.patches for n in (s.start, s.end)}
        self.inner = set(range(len(graph.junctions))) - outside
        self.sewn = {t.segment: n for n, join in enumerate(assembly.joins) for t in join.path}
        self.passes = self.find_passes()
        wished = {self.junction_at(w.at): w.sense for w in graph.block.wishes if isinstance(w, SpinWish)}
        self.never = {j for j, sense in wished.items() if sense is SpinSense.NONE}
        self.asked = {j: sense.value for j, sense in wished.items() if j not in self.never}

    def junction_at(self, at):
        return min(self.assembly.graph.junctions, key=lambda j: math.dist(j.at, at)).index

    def find_passes(self) -> list[Pass]:
        found = []
        for number, join in enumerate(self.assembly.joins):
            path = [step.segment for step in join.path]
            pairs = list(pairwise(path))
            if len(path) > 2 and self.ends(path[0]) & self.ends(path[-1]):
                pairs.append((path[-1], path[0]))  # it comes back to where it starts
            if join.kind is JoinKind.PARTIAL_FINISH:
                begun = [t.segment for other in assembly_joins(self.assembly, JoinKind.PARTIAL) for t in other.path]
                pairs += [(other, own) for own in {path[0], path[-1]} for other in begun]
            for a, b in pairs:
                for junction in self.ends(a) & self.ends(b) & self.inner:
                    turn = self.leaving[junction][a] - self.leaving[junction][b]
                    if abs(math.remainder(turn - math.pi, 2 * math.pi)) < 0.02:
                        found.append(self.look(junction, a, b, number))
        return found

    def ends(self, segment) -> set[int]:
        return {self.assembly.graph.segments[segment].start, self.assembly.graph.segments[segment].end}

    def look(self, junction, a, b, number) -> Pass:
        around = self.leaving[junction]
        sides: tuple[list[int], list[int]] = ([], [])
        for other, angle in around.items():
            if other not in (a, b) and self.sewn[other] < number:
                sides[(angle - around[a]) % (2 * math.pi) > (around[b] - around[a]) % (2 * math.pi)].append(other)
        return Pass(junction, (a, b), (tuple(sides[0]), tuple(sides[1])))

    def senses(self, junction, segments, toward) -> set[str]:
        """The ways round that allowances lie, seen from the front."""
        return {
            "open"
            if toward[s] is None
            else "counterclockwise"
            if toward[s] == self.counterclockwise[junction, s]
            else "clockwise"
            for s in segments
        }

    def one_way(self, junction, segments, toward) -> bool:
        senses = self.senses(junction, segments, toward)
        return len(senses) == 1 and "open" not in senses

    def spun(self, toward) -> dict[int, str]:
        spun = {}
        offered = {p.junction for p in self.passes if p.lockable and len(self.leaving[p.junction]) >= 4} - self.never
        for junction in offered | set(self.asked):
            if self.one_way(junction, self.leaving[junction], toward):
                (sense,) = self.senses(junction, self.leaving[junction], toward)
                if junction in offered or sense == self.asked[junction]:
                    spun[junction] = sense
        return spun

    def costs(self, toward) -> tuple[int, int, int, int, int]:
        """Clips, locks lost, centres not spun, units pressed unlike the first of their step, crosses not spun."""
        spun = self.spun(toward)
        clips = sum(self.changes_side(p, toward) for p in self.passes if p.junction not in spun)
        lost = sum(not self.one_way(p.junction, p.arriving, toward) for p in self.passes if p.lockable)
        unspun = [
            len(self.leaving[p.junction])
            for p in self.passes
            if p.lockable and p.junction not in self.never | set(spun) and len(self.leaving[p.junction]) >= 4
        ]
        centres = sum(n for n in unspun if n > 4)
        return clips, lost, centres, self.unlike(toward), sum(n == 4 for n in unspun)

    def changes_side(self, p: Pass, toward) -> bool:
        """A join that stays on its side has allowances of opposite senses, seen from a junction it runs through."""
        senses = self.senses(p.junction, p.through, toward)
        return len(senses) == 1 and "open" not in senses

    def unlike(self, toward) -> int:
        return sum(
            self.told(step.joins[i * size : (i + 1) * size], toward) != self.told(step.joins[:size], toward)
            for step in self.assembly.steps
            for size in [len(step.joins) // step.times]
            for i in range(1, step.times)
        )

    def told(self, joins, toward) -> list[bool]:
        """The pressing of one unit as it is told: toward what lies left of the needle, or right."""
        said = []
        for number in joins:
            for t in self.assembly.joins[number].path:
                s = self.assembly.graph.segments[t.segment]
                said.append(toward[t.segment] == (s.left if t.forward else s.right))
        return said


def assembly_joins(assembly, kind):
    return [join for join in assembly.joins if join.kind is kind]


def check(assembly: Assembly, pressing: Pressing) -> Drawing:
    """Hold a pressing against what its own directions show."""
    drawing = Drawing(assembly)
    toward = {p.segment: p.toward for p in pressing.directions}
    assert sorted(toward) == [s.index for s in assembly.graph.seams]
    for s in assembly.graph.seams:
        assert toward[s.index] in (*s.patches, None)
    lockable = sorted(p.junction for p in drawing.passes if p.lockable)
    locks = (p for p in drawing.passes if p.lockable and drawing.one_way(p.junction, p.arriving, toward))
    locked = sorted(p.junction for p in locks)
    assert list(pressing.lockable) == lockable
    assert list(pressing.locked) == locked
    assert {s.junction: s.sense.value for s in pressing.spins} == drawing.spun(toward)
    return drawing
