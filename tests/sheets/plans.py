"""Plans made by hand: a block, and the order in which its units are sewn, written as a person would list it."""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from blocklang.assembly.values import Assembly, Count, Join, JoinKind, Step, Travelled
from blocklang.block import Block, SpinSense
from blocklang.cutting.values import Cutting, CuttingOptions, FabricNeed, Measure, Piece, Strip
from blocklang.geometry import TICKS_PER_INCH, Point
from blocklang.graph import JunctionKind, PatchGraph, build_graph
from blocklang.plan import PlanJoin, PlanStep, PlanUnit, SewingPlan
from blocklang.pressing import Pressed, Pressing, Spun
from tests.support import blocks


@dataclass(frozen=True)
class Sew:
    """One step: what is joined to what and what it makes, `times` times."""

    title: str
    joins: Sequence[tuple[str, str, str]]
    times: int = 1


class Maker:
    """Collects joins and names until the plan is whole."""

    def __init__(self, block: Block) -> None:
        graphed = build_graph(block)
        assert graphed.graph is not None, graphed.diagnostics
        self.graph: PatchGraph = graphed.graph
        self.number = {patch.id: index for index, patch in enumerate(block.patches)}
        self.patches = [(index,) for index in range(len(block.patches))]
        self.names = [patch.id for patch in block.patches]
        self.joins: list[Join] = []

    def join(self, left: str, right: str, makes: str) -> int:
        a, b = self.number[left], self.number[right]
        path = self.path(set(self.patches[a]), set(self.patches[b]))
        whole = tuple(sorted(self.patches[a] + self.patches[b]))
        pivots, curved = self.bends(path)
        kind = JoinKind.SET_IN if pivots else JoinKind.CURVED if curved else JoinKind.STRAIGHT
        ends = (self.junction(path[0], True), self.junction(path[-1], False))
        stops = [self.stops(end, set(whole)) for end in ends]
        self.number[makes] = len(self.patches)
        self.patches.append(whole)
        self.names.append(makes)
        self.joins.append(Join(kind, (a, b), self.number[makes], tuple(path), stops[0], stops[1], tuple(pivots)))
        return len(self.joins) - 1

    def junction(self, step: Travelled, first: bool) -> int:
        segment = self.graph.segments[step.segment]
        return segment.start if step.forward == first else segment.end

    def path(self, left: set[int], right: set[int]) -> list[Travelled]:
        steps = []
        for segment in self.graph.segments:
            if segment.left in left and segment.right in right:
                steps.append(Travelled(segment.index, True))
            elif segment.right in left and segment.left in right:
                steps.append(Travelled(segment.index, False))
        begins = {self.junction(step, True): step for step in steps}
        ends = {self.junction(step, False) for step in steps}
        first = next((at for at in begins if at not in ends), min(begins))
        path = [begins.pop(first)]
        while (at := self.junction(path[-1], False)) in begins:
            path.append(begins.pop(at))
        assert len(path) == len(steps), "the units meet along more than one path"
        return path

    def bends(self, path: list[Travelled]) -> tuple[list[int], bool]:
        edges = [self.edge(step) for step in path]
        pivots = []
        for step, before, after in zip(path, edges, edges[1:], strict=False):
            if abs(math.remainder(after.departs() - before.arrives(), 2 * math.pi)) > 0.01:
                pivots.append(self.junction(step, False))
        return pivots, any(edge.arc for edge in edges)

    def edge(self, step: Travelled):
        edge = self.graph.segments[step.segment].edge
        return edge if step.forward else edge.reversed()

    def stops(self, junction: int, unit: set[int]) -> bool:
        if self.graph.junctions[junction].kind is JunctionKind.EDGE:
            return False
        missing = math.tau
        for patch in unit:
            outline = self.graph.block.patches[patch].outline
            at = self.graph.junctions[junction].at
            for corner, angle in zip(outline.corners, outline.angles(), strict=True):
                missing -= angle if math.dist(corner, at) < 40 else 0
        return missing < math.pi - 0.01


def make_plan(block: Block, sewing: Sequence[Sew]) -> SewingPlan:
    """Return the plan of a block sewn in this order, pressed toward the darker patch."""
    maker = Maker(block)
    steps = []
    for sew in sewing:
        joins = tuple(maker.join(*join) for join in sew.joins)
        each = len(joins) // sew.times
        makes = tuple(maker.joins[joins[i]].makes for i in range(each - 1, len(joins), each))
        steps.append(Step(maker.joins[joins[0]].kind, joins, sew.times, makes))
    pivots = sum(len(join.pivots) for join in maker.joins)
    minimum = sum(junction.always_pivots for junction in maker.graph.junctions)
    assembly = Assembly(
        maker.graph, tuple(maker.joins), tuple(steps), tuple(maker.patches), tuple(range(len(maker.patches))),
        Count(pivots, minimum, pivots == minimum), Count(0, 0, True),
    )
    pressing = press_toward_dark(maker.graph)
    units = tuple(unit(maker, index) for index in range(len(maker.patches)))
    told = tuple(tell(maker, pressing, number, step, sew.title, units) for number, (step, sew) in enumerate(zip(steps, sewing, strict=True), 1))
    names = tuple(f"j{index + 1}" for index in range(len(maker.graph.junctions)))
    return SewingPlan(block, maker.graph, assembly, pressing, cut_by_hand(block), units, told, names, ())


def unit(maker: Maker, index: int) -> PlanUnit:
    patches = tuple(maker.graph.block.patches[patch] for patch in maker.patches[index])
    outline = patches[0].outline if len(patches) == 1 else blocks.outline_of(patches) if all(
        edge.arc is None for patch in patches for edge in patch.outline.edges) else patches[0].outline
    boxes = [patch.outline.bounds() for patch in patches]
    left, low, right, high = (pick(box[i] for box in boxes) for i, pick in enumerate((min, min, max, max)))
    allowance = 2 * maker.graph.block.seam_allowance
    full = abs(sum(patch.outline.area() for patch in patches) - (right - left) * (high - low)) < 1e9
    measures = (right - left + allowance, high - low + allowance) if full else None
    return PlanUnit(maker.names[index], maker.patches[index], outline, measures)


def tell(maker: Maker, pressing: Pressing, number: int, step: Step, title: str, units: tuple[PlanUnit, ...]) -> PlanStep:
    joins = tuple(tell_join(maker, pressing, index) for index in step.joins)
    makes = tuple(maker.names[made] for made in step.makes)
    return PlanStep(number, title, step.kind, step.times, joins, makes, units[step.makes[0]].measures)


def tell_join(maker: Maker, pressing: Pressing, index: int) -> PlanJoin:
    join = maker.joins[index]
    path: list[Point] = []
    for step in join.path:
        path.extend(maker.edge(step).chords()[bool(path) :])
    directions = {item.segment: item for item in pressing.directions}
    return PlanJoin(
        tuple(maker.names[unit] for unit in join.units), maker.names[join.makes], tuple(path), join.start_stops,
        join.end_stops, tuple(maker.graph.junctions[pivot].at for pivot in join.pivots),
        tuple(directions[step.segment] for step in join.path), index,
    )


def press_toward_dark(graph: PatchGraph) -> Pressing:
    rank = {"dark": 0, "medium": 1, "light": 2}

    def darkness(patch: int) -> tuple[int, int]:
        found = graph.block.patches[patch]
        return rank[graph.block.fabric(found.fabric).value], patch

    directions = tuple(Pressed(s.index, min(s.patches, key=darkness)) for s in graph.seams)
    many = [j.index for j in graph.junctions if j.kind is JunctionKind.MANY]
    spins = tuple(Spun(index, SpinSense.CLOCKWISE) for index in many)
    return Pressing(directions, (), (), spins, False, 1.0, ())


def cut_by_hand(block: Block) -> Cutting:
    """Return one line a fabric and name, the cut size taken from the bounds of the patch."""
    lines: dict[tuple[str, str], list[int]] = {}
    for index, patch in enumerate(block.patches):
        lines.setdefault((patch.fabric, patch.name), []).append(index)
    pieces = []
    for (fabric, name), patches in lines.items():
        outline = block.patches[patches[0]].outline
        left, low, right, high = outline.bounds()
        sides = sorted({Fraction(side + 2 * block.seam_allowance, TICKS_PER_INCH) for side in (right - left, high - low)})
        cut = tuple(Measure(float(side), Fraction(math.ceil(side * 8), 8)) for side in sides)
        strip = Strip(cut[0], 8, math.ceil(len(patches) / 8))
        method = "square" if len(cut) == 1 else "rectangle"
        pieces.append(Piece(fabric, method, name, tuple(patches), len(patches), cut, len(patches), 1, None, 0, "straight grain along both sides", strip, None, outline))
    used = dict.fromkeys(piece.fabric for piece in pieces)
    needs = tuple(FabricNeed(fabric, ((Measure(3.0, Fraction(3)), 1),), 3.0, 2.1, Fraction(1, 8)) for fabric in used)
    return Cutting(CuttingOptions(), block.seam_allowance / TICKS_PER_INCH, tuple(pieces), (), needs, ("Trim every star point to the eighth.",))


def star_plan(size: float = 12.0) -> SewingPlan:
    """Return the eight-pointed star in the order that is taught: pairs, corners, halves, centre, sides."""
    pairs = [(f"diamond.{2 * k + 1}", f"diamond.{2 * k + 2}", f"unit A.{k + 1}") for k in range(4)]
    corners = [(f"unit A.{k + 1}", f"corner.{k + 1}", f"unit B.{k + 1}") for k in range(4)]
    halves = [("unit B.1", "unit B.2", "unit C.1"), ("unit B.3", "unit B.4", "unit C.2")]
    sides = [("unit D" if k == 1 else f"unit E.{k - 1}", f"side.{k}", f"unit E.{k}" if k < 4 else "block") for k in (1, 2, 3, 4)]
    return make_plan(
        blocks.star(size),
        [
            Sew("Sew the diamonds in pairs", pairs, 4),
            Sew("Set a corner into each pair", corners, 4),
            Sew("Sew the halves of the star", halves, 2),
            Sew("Sew the centre seam", [("unit C.1", "unit C.2", "unit D")]),
            Sew("Set in the 4 side triangles", sides),
        ],
    )


def grid_plan(columns: int, rows: int, cell: float = 3.0) -> SewingPlan:
    """Return a chequerboard sewn in rows."""
    steps = []
    for row in range(1, rows + 1):
        unit, joins = f"r{row}c1", []
        for column in range(2, columns + 1):
            makes = f"row {row}.{column}" if column < columns else f"row {row}"
            joins.append((unit, f"r{row}c{column}", makes))
            unit = makes
        steps.append(Sew(f"Sew row {row}", joins))
    joins = [(f"row {1}" if row == 2 else f"rows {row - 1}", f"row {row}", f"rows {row}") for row in range(2, rows + 1)]
    return make_plan(blocks.grid(columns, rows, cell), [*steps, Sew("Sew the rows together", joins)])


def pie_plan() -> SewingPlan:
    """Return four quarter circles in their grounds, sewn in two rows."""
    cells = [f"r{row}c{column}" for row in (1, 2) for column in (1, 2)]
    return make_plan(
        blocks.drunkards_path(),
        [
            Sew("Sew each pie into its ground", [(f"{cell}.pie", f"{cell}.ground", f"unit A.{k + 1}") for k, cell in enumerate(cells)], 4),
            Sew("Sew the cells in pairs", [("unit A.1", "unit A.2", "unit B.1"), ("unit A.4", "unit A.3", "unit B.2")], 2),
            Sew("Sew the pairs together", [("unit B.1", "unit B.2", "block")]),
        ],
    )
