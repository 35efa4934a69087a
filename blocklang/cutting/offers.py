"""Ways to make several units at once: what a method is shown, and what it offers beside the plain cutting."""

from collections.abc import Callable
from dataclasses import dataclass

from blocklang.block import LengthUnit
from blocklang.cutting.values import CuttingOptions, Measure, Piece
from blocklang.geometry import Outline


@dataclass(frozen=True, slots=True)
class UnitPatch:
    """A patch of a unit: its fabric, its finished outline as it lies in the block, and its line of the cutting list."""

    patch: int
    fabric: str
    outline: Outline
    piece: Piece


@dataclass(frozen=True, slots=True)
class EqualUnits:
    """Units of the sewing order that are equal: turned, never mirrored, in the same fabrics.

    `units` are those of one block, each with its patches; `count` is how many are made for all copies. `size` is the
    finished width and height in inches, the shorter first, of units that are rectangles; None of all others.
    `allowance` is the seam allowance in inches, `unit` what lengths are shown in.
    """

    units: tuple[tuple[UnitPatch, ...], ...]
    count: int
    size: tuple[float, float] | None
    allowance: float
    options: CuttingOptions
    unit: LengthUnit


@dataclass(frozen=True, slots=True)
class StartPiece:
    """What is cut to begin with, for all rounds: `count` squares (one side) or rectangles (two) of a fabric."""

    fabric: str
    sides: tuple[Measure, ...]
    count: int

    @property
    def area(self) -> float:
        """The area of all of them, in square inches."""
        return float(self.sides[0].shown * self.sides[-1].shown) * self.count


@dataclass(frozen=True, slots=True)
class Work:
    """What a way to cut takes: square inches of fabric, cuts (strips not counted), bias edges handled unsewn."""

    area: float
    cuts: int
    bias: int


@dataclass(frozen=True, slots=True)
class Offer:
    """Another way to cut and sew equal units, several at once.

    `patches` are those of one block that would be made in this way, `needed` the units for all copies. One round takes
    `starts` divided by `rounds` and gives `yields` units, which are trimmed to `trim`, width and height with the seam
    allowance. `steps` are sentences, one action each. `plain` and `work` compare the plain cutting with this way.
    `beware` is a sentence about what to watch, "" when there is nothing.
    """

    method: str
    title: str
    patches: tuple[int, ...]
    needed: int
    rounds: int
    yields: int
    starts: tuple[StartPiece, ...]
    trim: tuple[Measure, Measure]
    steps: tuple[str, ...]
    plain: Work
    work: Work
    beware: str = ""

    @property
    def left_over(self) -> int:
        """How many units are made beyond those that are needed."""
        return self.rounds * self.yields - self.needed


Offers = Callable[[EqualUnits], Offer | None]


def offers_nothing(units: EqualUnits) -> Offer | None:
    """Offer nothing: the answer of methods that cut single patches only."""
    del units
    return None
