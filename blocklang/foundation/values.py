"""Foundations as frozen values: sections, the order in each, their papers and joins, and what is proven."""

from dataclasses import dataclass

from blocklang.graph.values import PatchGraph


@dataclass(frozen=True, slots=True)
class Section:
    """Patches that are sewn to one piece of paper.

    `letter` is "A", "B" ...; `patches` are in the order of sewing, so that the third is told as "A3". `seams[i]` are the
    segments of the one straight line along which patch i is added; the first has none.
    """

    letter: str
    patches: tuple[int, ...]
    seams: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class Paper:
    """A foundation to print: `sections` are the places of those that are sewn from it, equal when turned.

    `orders[i]` are the patches of the i-th of them, each where the first has its own; the first is the one drawn.
    """

    sections: tuple[int, ...]
    orders: tuple[tuple[int, ...], ...]


@dataclass(frozen=True, slots=True)
class SectionJoin:
    """Two finished parts of the block sewn to each other; each part is the places of its sections, ascending.

    `pivots` are the junctions where the needle turns: a join with one is a set-in seam. `curved` when an arc is sewn.
    """

    first: tuple[int, ...]
    second: tuple[int, ...]
    segments: tuple[int, ...]
    pivots: tuple[int, ...]
    curved: bool

    @property
    def is_set_in(self) -> bool:
        """Whether the seam turns a corner."""
        return bool(self.pivots)


@dataclass(frozen=True, slots=True)
class SectionCount:
    """How many sections there are, the least that any division can have, and whether they are equal."""

    count: int
    minimum: int
    proven: bool


@dataclass(frozen=True, slots=True)
class Foundation:
    """A block divided into sections; `joins` sew them together in order, and are empty when no order was found."""

    graph: PatchGraph
    sections: tuple[Section, ...]
    papers: tuple[Paper, ...]
    joins: tuple[SectionJoin, ...]
    fewest: SectionCount

    @property
    def set_in_joins(self) -> int:
        """How many of the joins between sections are set-in seams."""
        return sum(join.is_set_in for join in self.joins)

    @property
    def is_sensible(self) -> bool:
        """Whether any two patches share a paper; otherwise there is nothing to gain from one."""
        return len(self.sections) < len(self.graph.block.patches) or len(self.graph.block.patches) == 1
