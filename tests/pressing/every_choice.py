"""All choices of directions of a small block at once: what each loses, by the written rules and the drawing alone."""

import numpy

from blocklang.assembly.values import Assembly
from blocklang.pressing import DEFAULTS
from blocklang.pressing.preferences import set_in_preference
from tests.pressing.checker import Drawing


class EveryChoice:
    """Bit k of a choice tells whether seam k goes to its left patch; open seams have no bit."""

    def __init__(self, assembly: Assembly, settled: dict[int, bool | None]) -> None:
        self.assembly, self.drawing = assembly, Drawing(assembly)
        self.seams = [s for s in assembly.graph.seams if settled.get(s.index, True) is not None]
        self.opened = {s.index for s in assembly.graph.seams} - {s.index for s in self.seams}
        number = numpy.arange(1 << len(self.seams))
        self.left = {s.index: (number >> k & 1).astype(bool) for k, s in enumerate(self.seams)}
        allowed = numpy.ones(len(number), dtype=bool)
        for segment, side in settled.items():
            if side is not None:
                allowed &= self.left[segment] == side
        costs = numpy.stack([*self.ranks(), self.preferences()], axis=1)[allowed]
        self.best = tuple(int(cost) for cost in min(map(tuple, costs.tolist())))

    def one_way(self, junction: int, segments) -> numpy.ndarray:
        """Whether the allowances of some seams lie the same way round, in every choice."""
        if not self.opened.isdisjoint(segments):
            return numpy.zeros(1 << len(self.seams), dtype=bool)
        around = numpy.stack(
            [self.left[s] == (self.drawing.counterclockwise[junction, s] == self.side(s)) for s in segments]
        )
        return around.all(axis=0) | ~around.any(axis=0)

    def side(self, segment: int) -> int:
        return self.assembly.graph.segments[segment].left

    def ranks(self) -> list[numpy.ndarray]:
        """Clips, locks lost, centres not spun, units unlike the first of their step, crosses not spun."""
        size = 1 << len(self.seams)
        clips, locks, centres, crosses = (numpy.zeros(size, dtype=int) for _ in range(4))
        drawing = self.drawing
        spun = {p.junction: self.spun(p.junction) for p in drawing.passes}
        for p in drawing.passes:
            if self.opened.isdisjoint(p.through):
                clips += self.one_way(p.junction, p.through) & ~spun[p.junction]
            if p.lockable:
                locks += ~self.one_way(p.junction, p.arriving)
                seams = len(drawing.leaving[p.junction])
                if seams >= 4 and p.junction not in drawing.never:
                    lost = ~spun[p.junction] * (seams if seams > 4 else 1)
                    centres, crosses = (centres + lost, crosses) if seams > 4 else (centres, crosses + lost)
        return [clips, locks, centres, self.unlike(), crosses]

    def spun(self, junction: int) -> numpy.ndarray:
        drawing, around = self.drawing, self.drawing.leaving[junction]
        offered = any(p.junction == junction and p.lockable for p in drawing.passes) and len(around) >= 4
        flat = self.one_way(junction, around)
        if offered and junction not in drawing.never:
            return flat
        asked = drawing.asked.get(junction)
        if asked is None:
            return numpy.zeros_like(flat)
        first = next(iter(around))
        turned = self.left[first] == (drawing.counterclockwise[junction, first] == self.side(first))
        return flat & (turned == (asked == "counterclockwise"))

    def unlike(self) -> numpy.ndarray:
        found = numpy.zeros(1 << len(self.seams), dtype=int)
        for step in self.assembly.steps:
            size = len(step.joins) // step.times
            told = [self.told(step.joins[i * size : (i + 1) * size]) for i in range(step.times)]
            for other in told[1:]:
                pairs = list(zip(told[0], other, strict=True))
                found += numpy.any([a != b for a, b in pairs if a is not None and b is not None] or [[False]], axis=0)
        return found

    def told(self, joins) -> list:
        travelled = [t for number in joins for t in self.assembly.joins[number].path]
        return [None if t.segment in self.opened else self.left[t.segment] == t.forward for t in travelled]

    def preferences(self) -> numpy.ndarray:
        found = numpy.zeros(1 << len(self.seams), dtype=int)
        for seam in self.seams:
            weight = sum(p.weigh(self.assembly.graph, seam) for p in (*DEFAULTS, set_in_preference(self.assembly)))
            found += (round(1000 * abs(weight)) * (self.left[seam.index] != (weight > 0))).astype(int)
        return found
