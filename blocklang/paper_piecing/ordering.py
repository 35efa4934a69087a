"""In which order patches are whip-stitched: from the middle outward, round by round, each along one chain of edges.

There is always a next patch. A patch that touches the work in two places encloses others with it, and of what is
enclosed so, something touches the work in one place: take a patch for which the enclosed area is least.
"""

import math
from collections.abc import Iterator

from blocklang.graph.values import OUTSIDE, PatchGraph
from blocklang.paper_piecing.contact import Chain, chain_of
from blocklang.paper_piecing.values import Joining, PaperOrder, Round

#: Two patches in line with the middle may differ in their headings by noise.
_SAME_HEADING = 1e-6


def order_papers(graph: PatchGraph) -> PaperOrder:
    """Return the order of joining; it begins with the patch, or the patches round a point, in the middle of the block."""
    middle = _middle(graph)
    ranks = _ranks(graph, middle)
    work = _Work(graph, ranks, middle)
    found: list[list[Joining]] = []
    rank = -1
    while work.left:
        joining = work.next()
        # A patch of a later round that has to come early is told in the round that needs it.
        if ranks[joining.patch] > rank and (not found or work.finished(rank)):
            rank = ranks[joining.patch]
            found.append([])
        found[-1].append(joining)
        work.join(joining.patch)
    return PaperOrder(tuple(Round(number, tuple(joinings)) for number, joinings in enumerate(found, 1)))


class _Work:
    """What is joined so far, and what can be joined next."""

    def __init__(self, graph: PatchGraph, ranks: list[int], middle: tuple[float, float]) -> None:
        self.graph = graph
        self.left = set(range(len(graph.sides)))
        self._ranks = ranks
        self._headings = [_heading(graph, patch, middle) for patch in range(len(graph.sides))]
        self._joined: set[int] = set()
        self._touched: set[int] = set()
        self._beside: set[int] = {min(self.left, key=lambda patch: (ranks[patch], self._headings[patch], patch))}
        self._last = 0.0

    def finished(self, rank: int) -> bool:
        """Tell whether no patch of a round, nor of one before it, is left."""
        return all(self._ranks[patch] > rank for patch in self.left)

    def next(self) -> Joining:
        """Return the next patch of the earliest round, on round the middle from the last one."""
        if not self._joined:
            return Joining(min(self._beside), (), (), ())
        order = sorted(self._beside, key=lambda patch: (self._ranks[patch], self._onward(patch), patch))
        for patch in order:
            chain = chain_of(self.graph, patch, self._joined, self._touched)
            if chain is not None:
                return self._joining(patch, chain)
        raise AssertionError("some patch always touches the work in one place")

    def join(self, patch: int) -> None:
        """Take a patch into the work."""
        self.left.remove(patch)
        self._joined.add(patch)
        self._beside.discard(patch)
        self._last = self._headings[patch]
        for segment, _ in self.graph.sides[patch]:
            here = self.graph.segments[segment]
            self._touched.update((here.start, here.end))
            self._beside.update(side for side in here.patches if side != OUTSIDE and side not in self._joined)

    def _onward(self, patch: int) -> float:
        turn = (self._headings[patch] - self._last) % math.tau
        return 0.0 if math.tau - turn < _SAME_HEADING else turn

    def _joining(self, patch: int, chain: Chain) -> Joining:
        segments = self.graph.segments
        sides = (segments[edge].patches for edge in chain.edges)
        others = dict.fromkeys(left if right == patch else right for left, right in sides)
        return Joining(patch, chain.edges, tuple(others), tuple(_folds(self.graph, chain)))


def _folds(graph: PatchGraph, chain: Chain) -> Iterator[int]:
    """Yield the junctions within a chain where it does not run straight on."""
    for edge, following, junction in zip(chain.edges, chain.edges[1:], chain.between, strict=False):
        ends = graph.junctions[junction].ends
        if not any(end.segment == edge and end.straight_on == following for end in ends):
            yield junction


def _middle(graph: PatchGraph) -> tuple[float, float]:
    return graph.block.outline.centroid()


def _ranks(graph: PatchGraph, middle: tuple[float, float]) -> list[int]:
    """Return for each patch in which round it comes, counted from 0: how many patches lie between it and the middle."""
    ranks = [-1] * len(graph.sides)
    reached = _first_round(graph, middle)
    rank = 0
    while reached:
        for patch in reached:
            ranks[patch] = rank
        reached = sorted({other for patch in reached for other in _beside(graph, patch) if ranks[other] < 0})
        rank += 1
    return ranks


def _first_round(graph: PatchGraph, middle: tuple[float, float]) -> list[int]:
    """Return the patches round the junction in the middle; without one there, the patch whose centre is nearest."""
    size = max(graph.block.size)
    for junction in graph.junctions:
        if math.dist(junction.at, middle) < size / 1000:
            around = {side for end in junction.ends for side in graph.segments[end.segment].patches}
            return sorted(around - {OUTSIDE})
    centres = [patch.outline.centroid() for patch in graph.block.patches]
    return [min(range(len(centres)), key=lambda i: (round(math.dist(centres[i], middle)), i))]


def _beside(graph: PatchGraph, patch: int) -> Iterator[int]:
    for segment, _ in graph.sides[patch]:
        for side in graph.segments[segment].patches:
            if side not in (OUTSIDE, patch):
                yield side


def _heading(graph: PatchGraph, patch: int, middle: tuple[float, float]) -> float:
    x, y = graph.block.patches[patch].outline.centroid()
    if math.dist((x, y), middle) < max(graph.block.size) / 1000:
        return 0.0
    turn = math.atan2(y - middle[1], x - middle[0]) % math.tau
    return 0.0 if math.tau - turn < _SAME_HEADING else turn
