"""The cutting plan of every fabric, as frozen values; all lengths in inches."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from blocklang.cutting import Cutting


class Turning(StrEnum):
    """When shapes may lie with their longer side along the cloth instead of across it, or the other way about."""

    NEVER = "never"
    TO_BUY_LESS = "to-buy-less"  # only where a shop would have to cut less
    ALWAYS = "always"  # wherever it makes the plan shorter


class Precut(StrEnum):
    """What cloth is kept as beside lengths off the bolt."""

    FAT_QUARTER = "fat quarter"
    STRIP = "strip"
    SQUARE = "square"


@dataclass(frozen=True, slots=True)
class Stock:
    """So many equal pieces of a fabric that are there already, `width` along the strips cut from them, `height` up.

    What is measured is what can be used; `width` lies across the cloth as it came from the bolt.
    """

    fabric: str
    precut: Precut
    width: Fraction
    height: Fraction
    count: int


@dataclass(frozen=True, slots=True)
class ClothOptions:
    """What may be chosen about cloth beyond the cutting list.

    `shrinkage` is the part of its length that cloth loses in the wash (3/100), `reserve` inches that are bought beyond
    the plan. Fabrics that the block says are printed one way are never turned, whatever `turning` says. `stock` is cut
    first where less has to be bought then; it is not washed again.
    """

    shrinkage: Fraction = Fraction(0)
    reserve: Fraction = Fraction(0)
    turning: Turning = Turning.TO_BUY_LESS
    stock: tuple[Stock, ...] = ()


@dataclass(frozen=True, slots=True)
class SubCuts:
    """Equal shapes side by side in a strip; `piece` indexes `Cutting.pieces`.

    They stand `width` inches across the strip and take `length` inches along it together. `mirrored` shapes are the
    mirror image of the piece's outline; `turned` ones lie the other way than the cutting list has them.
    """

    piece: int
    count: int
    width: Fraction
    length: Fraction
    mirrored: bool = False
    turned: bool = False


@dataclass(frozen=True, slots=True)
class PlannedStrip:
    """Strips that are cut alike; `first` is the number of the first of them in the order of cutting.

    `offcut` is the length left over at the end of each. `strip_set` indexes `Cutting.strip_sets` when the whole strip
    goes into a strip set.
    """

    first: int
    count: int
    width: Fraction
    cuts: tuple[SubCuts, ...]
    offcut: Fraction
    strip_set: int | None = None

    @property
    def last(self) -> int:
        """The number of the last of these strips."""
        return self.first + self.count - 1


@dataclass(frozen=True, slots=True)
class CutStock:
    """Pieces of stock that are cut alike; `first` is the number of the first of them among the equal ones.

    `strips` are numbered within each piece, the widest first; `left` is the height that no strip is cut from. `fullest`
    says that by area no strips and sub-cuts take more out of such a piece, of the shapes that were still to be cut.
    """

    stock: Stock
    first: int
    count: int
    strips: tuple[PlannedStrip, ...]
    left: Fraction
    fullest: bool

    @property
    def last(self) -> int:
        """The number of the last of these pieces."""
        return self.first + self.count - 1


@dataclass(frozen=True, slots=True)
class FabricPlan:
    """All strips of one fabric, the widest first.

    `strips`, and all that is said about their length, are what is cut beside `cut_stock`. `stock` is what was there;
    with all of it no plan of strips and sub-cuts buys less than `least_beside_stock`, without it this plan would be
    `to_buy_without` (both in inches before rounding up; without stock they are what the bound comes to, and `to_buy`).

    `length` is what they take of the cloth. `area` is the bound by area alone; `relaxed` that of the linear program
    over strips, `bound` the best that is proven for plans of strips and sub-cuts: no such plan is shorter.
    `yards` is what to buy: the length with reserve and shrinkage, up to the next eighth; `to_buy` the same in inches
    before rounding up; `least_yards` is what the bound would come to. `waste` is the part of the length that is not in any shape.
    """

    fabric: str
    strips: tuple[PlannedStrip, ...]
    length: Fraction
    area: float
    relaxed: Fraction
    bound: Fraction
    to_buy: Fraction
    yards: Fraction
    least_yards: Fraction
    least_beside_stock: Fraction
    to_buy_without: Fraction
    stock: tuple[Stock, ...] = ()
    cut_stock: tuple[CutStock, ...] = ()

    @property
    def proven(self) -> bool:
        """Whether no plan of strips and sub-cuts is shorter."""
        return self.length == self.bound

    @property
    def least_to_buy(self) -> bool:
        """Whether no plan of strips and sub-cuts needs less from the shop."""
        return self.yards == self.least_yards

    def used(self, stock: Stock) -> int:
        """Return how many pieces of a stock are cut."""
        return sum(cut.count for cut in self.cut_stock if cut.stock == stock)

    @property
    def waste(self) -> float:
        """The part of the cloth in the plan that is in no shape, 0 to 1."""
        return max(0.0, 1.0 - self.area / float(self.length)) if self.length else 0.0


@dataclass(frozen=True, slots=True)
class ClothPlan:
    """The cutting plan; `too_large` are pieces (as indices) that no strip of this width can hold."""

    cutting: Cutting
    options: ClothOptions
    fabrics: tuple[FabricPlan, ...]
    too_large: tuple[int, ...]

    def fabric(self, fabric: str) -> FabricPlan:
        """Return the plan of one fabric."""
        return next(plan for plan in self.fabrics if plan.fabric == fabric)
