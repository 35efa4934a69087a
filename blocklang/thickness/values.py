"""Folded cloth and its thickness as frozen values; places in ticks of the finished block, seen from the front."""

from dataclasses import dataclass

Place = tuple[float, float]
Ring = tuple[Place, ...]


@dataclass(frozen=True, slots=True)
class Layer:
    """One piece of a patch's cloth as it lies in the finished block.

    `rings` has the shell first (counterclockwise), then holes (clockwise); no first place is repeated. A `turned`
    piece shows its right side at the back. `is_body` marks what is seen from the front, `is_loose` an allowance that
    no seam of the block has caught.
    """

    patch: int
    rings: tuple[Ring, ...]
    turned: bool
    is_body: bool
    is_loose: bool = False


@dataclass(frozen=True, slots=True)
class Folded:
    """All layers of a block, the front first: painted in order they show the back of the block."""

    layers: tuple[Layer, ...]


@dataclass(frozen=True, slots=True)
class Region:
    """A stretch of the block that is equally thick; `rings` as those of a layer."""

    layers: int
    rings: tuple[Ring, ...]


@dataclass(frozen=True, slots=True)
class Pile:
    """The most layers within a seam allowance of a junction, and a place (ticks) in the thickest part."""

    junction: int
    layers: int
    at: Place


@dataclass(frozen=True, slots=True)
class Thickness:
    """How thick the finished block is.

    `regions` cover the block with its raw edges, thin ones first; `piles` has one entry a junction, by index;
    `highest` is the first of the greatest piles. `cloth` is the area of all layers together and `area` what they
    cover, both in square inches.
    """

    regions: tuple[Region, ...]
    piles: tuple[Pile, ...]
    highest: Pile
    cloth: float
    area: float

    @property
    def mean(self) -> float:
        """How many layers lie at a place on average."""
        return self.cloth / self.area
