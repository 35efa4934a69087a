"""A little sewing order for tests: straight cuts first, then single patches set in. No claim to be a good one."""

from itertools import pairwise

import networkx

from blocklang.assembly.values import Assembly, Count, Join, JoinKind, Step, Travelled
from blocklang.block import Block
from blocklang.graph import PatchGraph, build_graph


def graph_of(block: Block) -> PatchGraph:
    graphed = build_graph(block)
    assert graphed.graph is not None, [d.found for d in graphed.diagnostics]
    return graphed.graph


def sew(block: Block, alike: tuple[tuple[tuple[int, ...], ...], ...] = ()) -> Assembly:
    """Sew a block; `alike` are the steps told as one: for each, the joins of every instance."""
    return Sewing(graph_of(block)).assembly(alike)


class Sewing:
    """Takes a block apart from the whole down, then counts the joins from the patches up."""

    def __init__(self, graph: PatchGraph) -> None:
        self.graph = graph
        self.joins: list[Join] = []
        self.units: list[tuple[int, ...]] = [(p,) for p in range(len(graph.block.patches))]

    def assembly(self, alike: tuple[tuple[tuple[int, ...], ...], ...] = ()) -> Assembly:
        self.make(tuple(range(len(self.units))))
        return self.told(alike)

    def told(self, alike: tuple[tuple[tuple[int, ...], ...], ...]) -> Assembly:
        grouped = {j for step in alike for instance in step for j in instance}
        steps = [
            Step(self.joins[t[0][0]].kind, sum(t, ()), len(t), tuple(self.joins[one[-1]].makes for one in t))
            for t in alike
        ]
        steps += [Step(j.kind, (n,), 1, (j.makes,)) for n, j in enumerate(self.joins) if n not in grouped]
        none = Count(0, 0, False)
        units = tuple(self.units)
        return Assembly(self.graph, tuple(self.joins), tuple(steps), units, tuple(range(len(units))), none, none)

    def make(self, patches: tuple[int, ...]) -> int:
        if len(patches) == 1:
            return patches[0]
        left, right, path = self.cut(set(patches))
        units = (self.make(left), self.make(right))
        self.units.append(tuple(sorted(patches)))
        pivots = tuple(self.pivots(path))
        kind = JoinKind.SET_IN if pivots else JoinKind.STRAIGHT
        self.joins.append(Join(kind, units, len(self.units) - 1, path, False, False, pivots))
        return len(self.units) - 1

    def cut(self, patches: set[int]) -> tuple[tuple[int, ...], tuple[int, ...], tuple[Travelled, ...]]:
        inner = {s.index for s in self.graph.seams if set(s.patches) <= patches}
        runs = []
        seen: set[int] = set()
        for index in sorted(inner):
            if index not in seen:
                run = self.run(index, inner)
                seen.update(t.segment for t in run)
                split = self.split(patches, inner, run)
                if split:
                    runs.append((-len(run), abs(len(split[0]) - len(split[1])), index, (*split, run)))
        if runs:
            return min(runs)[3]
        return next(filter(None, (self.peel(patches, inner, p) for p in sorted(patches, reverse=True))))

    def run(self, index: int, inner: set[int]) -> tuple[Travelled, ...]:
        ahead = self.follow(Travelled(index, True), inner)
        back = self.follow(Travelled(index, False), inner)
        return (*(Travelled(t.segment, not t.forward) for t in reversed(back[1:])), *ahead)

    def follow(self, step: Travelled, inner: set[int]) -> list[Travelled]:
        found = [step]
        while True:
            segment = self.graph.segments[step.segment]
            junction = self.graph.junctions[segment.end if step.forward else segment.start]
            following = next(e.straight_on for e in junction.ends if e.segment == step.segment)
            if following is None or following not in inner:
                return found
            step = Travelled(following, self.graph.segments[following].start == junction.index)
            found.append(step)

    def split(self, patches, inner, path):
        removed = {t.segment for t in path}
        rest = networkx.Graph()
        rest.add_nodes_from(patches)
        rest.add_edges_from(self.graph.segments[i].patches for i in inner - removed)
        parts = list(networkx.connected_components(rest))
        first = self.graph.segments[path[0].segment]
        on_left = first.left if path[0].forward else first.right
        if len(parts) != 2:
            return None
        left = parts[0] if on_left in parts[0] else parts[1]
        right = patches - left
        across = {s for s in inner if len(set(self.graph.segments[s].patches) & left) == 1}
        return (tuple(sorted(left)), tuple(sorted(right))) if across == removed else None

    def peel(self, patches, inner, patch):
        shared = [(s, on_left) for s, on_left in self.graph.sides[patch] if s in inner]
        ring = [s in {i for i, _ in shared} for s, _ in self.graph.sides[patch]]
        starts = [i for i, on in enumerate(ring) if on and not ring[i - 1]]
        if len(starts) != 1 and not all(ring):
            return None
        begin = starts[0] if starts else 0
        sides = self.graph.sides[patch]
        path = tuple(Travelled(*sides[(begin + k) % len(sides)]) for k in range(len(shared)))
        rest = networkx.Graph()
        rest.add_nodes_from(patches - {patch})
        rest.add_edges_from(e for i in inner if patch not in (e := self.graph.segments[i].patches))
        if all(ring) or not networkx.is_connected(rest):
            return None
        return (patch,), tuple(sorted(patches - {patch})), path

    def pivots(self, path):
        for a, b in pairwise(path):
            segment = self.graph.segments[a.segment]
            junction = self.graph.junctions[segment.end if a.forward else segment.start]
            if next(e.straight_on for e in junction.ends if e.segment == a.segment) != b.segment:
                yield junction.index


def sew_rows(block: Block, columns: int, rows: int) -> Assembly:
    """Sew a chequerboard in rows, fast enough for big ones; rows that begin alike are one step."""
    graph = graph_of(block)
    between = {s.patches: s.index for s in graph.seams}
    between |= {(b, a): index for (a, b), index in between.items()}
    sewing = Sewing(graph)

    def join(left: int, right: int, pairs: list[tuple[int, int]]) -> int:
        path = tuple(Travelled(between[pair], graph.segments[between[pair]].left == pair[0]) for pair in pairs)
        sewing.units.append(tuple(sorted(sewing.units[left] + sewing.units[right])))
        sewing.joins.append(Join(JoinKind.STRAIGHT, (left, right), len(sewing.units) - 1, path, False, False, ()))
        return len(sewing.units) - 1

    made = []
    for row in range(rows):
        unit = row * columns
        for patch in range(unit + 1, unit + columns):
            unit = join(unit, patch, [(patch - 1, patch)])
        made.append(unit)
    whole = made[0]
    for row in range(1, rows):
        first = row * columns
        whole = join(made[row], whole, [(first + c, first + c - columns) for c in range(columns)])
    size = columns - 1
    told = [[tuple(range(r * size, (r + 1) * size)) for r in range(start, rows, 2)] for start in (0, 1)]
    return sewing.told(tuple(tuple(step) for step in told if step))
