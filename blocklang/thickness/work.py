"""The cloth of a block while it is sewn on paper."""

from dataclasses import dataclass, field

from blocklang.graph.values import PatchGraph
from blocklang.thickness.cloth import Piece
from blocklang.thickness.wedges import Wedge, wedge_of

Members = frozenset[int]


@dataclass(slots=True)
class Work:
    """Cloth while a block is sewn: the allowance of each patch in pieces."""

    graph: PatchGraph
    pieces: list[list[Piece]]
    around: tuple[Members, ...]  # the patches at each junction
    _wedges: dict[tuple[int, int], Wedge] = field(default_factory=dict)  # known so far, by patch and junction
    _touching: dict[int, Members] = field(default_factory=dict)

    @property
    def allowance(self) -> float:
        """The seam allowance in ticks."""
        return float(self.graph.block.seam_allowance)

    def touching(self, patch: int) -> Members:
        """Return the patches that touch a patch, itself included."""
        if patch not in self._touching:
            segments = [self.graph.segments[index] for index, _ in self.graph.sides[patch]]
            ends = (self.around[end] for segment in segments for end in (segment.start, segment.end))
            self._touching[patch] = frozenset().union(*ends)
        return self._touching[patch]

    def wedge(self, patch: int, junction: int) -> Wedge:
        """Return the corner of a patch at a junction."""
        if (patch, junction) not in self._wedges:
            self._wedges[patch, junction] = wedge_of(self.graph, patch, junction)
        return self._wedges[patch, junction]
