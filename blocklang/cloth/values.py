"""Orders for cloth, and how they are laid out: strips across the width, sub-cuts along them.

Lengths are whole numbers of one unit, which whoever makes the order chooses.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Way:
    """One way that shapes of a kind lie in a strip: how high they are, and what length `takes[n]` n of them take.

    `takes` begins with 0, never falls, and goes as far as a strip may hold; a kind may lie in several ways.
    """

    kind: int
    height: int
    takes: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Filling:
    """What is cut from one strip: pairs of a way (its index in the order) and a number of shapes, ways rising."""

    height: int
    runs: tuple[tuple[int, int], ...]


@dataclass(frozen=True, slots=True)
class Order:
    """How many shapes of each kind are wanted from cloth of a usable width; `ways` go from the lowest to the highest.

    A shape may be cut from a strip higher than itself and trimmed.
    """

    width: int
    ways: tuple[Way, ...]
    wanted: tuple[int, ...]

    def most(self, way: Way) -> int:
        """Return how many shapes of a way one strip can hold, and no more than are wanted."""
        return min(len(way.takes) - 1, self.wanted[way.kind])


@dataclass(frozen=True, slots=True)
class Layout:
    """The strips of an order, each with how often it is cut; `length` is what all of them take of the cloth.

    `relaxed` is the bound of the linear program over all strips, `bound` the best that is proven: no layout in strips
    can be shorter. `proven` says that this one is as short as can be.
    """

    strips: tuple[tuple[Filling, int], ...]
    length: int
    relaxed: Fraction
    bound: int

    @property
    def proven(self) -> bool:
        """Whether no layout is shorter."""
        return self.length == self.bound


@dataclass(frozen=True, slots=True)
class Panel:
    """One piece of cloth to fill with what is worth most: `worth` and `copies` of each kind, ways as in an order."""

    width: int
    height: int
    ways: tuple[Way, ...]
    worth: tuple[int, ...]
    copies: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class FilledPanel:
    """The strips that fill a panel, and what they are worth together; `proven` says that nothing is worth more."""

    strips: tuple[Filling, ...]
    worth: int
    proven: bool = True


def straight_way(kind: int, height: int, length: int, width: int) -> Way:
    """Return the way of shapes that are cut straight across, one after the other; `width` is that of the cloth."""
    return Way(kind, height, tuple(range(0, width + 1, length)))


def in_order(ways: Sequence[Way]) -> tuple[Way, ...]:
    """Return ways from the lowest to the highest, without those that no strip can hold."""
    kept = [way for way in ways if len(way.takes) > 1]
    return tuple(sorted(kept, key=lambda way: (way.height, way.kind, way.takes[1])))
