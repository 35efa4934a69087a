"""Piecing over papers as frozen values; patches, segments and junctions are indices into the patch graph."""

from dataclasses import dataclass

from blocklang.geometry import Outline


@dataclass(frozen=True, slots=True)
class PaperShape:
    """Equal papers: as they are finished, no allowance, drawn as the first of `patches` lies in the block.

    Mirror images are one paper, since a paper has two sides. `fabric` is the outline with the seam allowance all round,
    as the fabric is cut that is folded over it; `curved` tells that an edge is an arc.
    """

    outline: Outline
    fabric: Outline
    patches: tuple[int, ...]
    curved: bool


@dataclass(frozen=True, slots=True)
class Joining:
    """One patch whip-stitched to what is there, edge after edge along one chain without a break.

    `edges` are seam segments in the order in which they are stitched, none for the patch that the work begins with.
    `neighbours` are the patches across them; `folds` the junctions between two edges where the work is folded,
    because the chain turns there.
    """

    patch: int
    edges: tuple[int, ...]
    neighbours: tuple[int, ...]
    folds: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Round:
    """The patches that are joined on the way once round the middle."""

    number: int
    joinings: tuple[Joining, ...]


@dataclass(frozen=True, slots=True)
class PaperOrder:
    """The whole order: every patch in one joining, every seam segment in one chain."""

    rounds: tuple[Round, ...]

    @property
    def joinings(self) -> tuple[Joining, ...]:
        """All joinings in order."""
        return tuple(joining for each in self.rounds for joining in each.joinings)

    @property
    def edges(self) -> int:
        """How many edges are whip-stitched."""
        return sum(len(joining.edges) for joining in self.joinings)
