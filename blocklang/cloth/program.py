"""The program that chooses how often each strip is cut."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING

from blocklang.cloth.columns import add_column, add_row, only_whole
from blocklang.cloth.values import Filling, Order
from blocklang.solver import silent_solver

if TYPE_CHECKING:
    import highspy

#: Prices are whole multiples of one part in so many of a unit of length.
PARTS = 10**7
#: How many nodes the choice of whole strips may look at: a bound in counts repeats, one in seconds does not.
_NODES = 5
_HALF = 0.5  # lengths are whole numbers


Strips = dict[Filling, int]


def length_of(strips: Strips) -> int:
    """Return what strips take of the cloth, each cut so many times."""
    return sum(filling.height * times for filling, times in strips.items())


@dataclass(frozen=True, slots=True)
class Relaxed:
    """What a linear program gave: how often each filling is cut, and the price of a shape and of each least count."""

    times: tuple[float, ...]
    shapes: tuple[int, ...]
    counts: tuple[int, ...]


@dataclass(slots=True)
class StripProgram:
    """Choose strips so that all shapes of an order are cut from the least length of cloth.

    `least` says that so many strips of a height or more are needed at least, whatever they hold.
    """

    order: Order
    least: tuple[tuple[int, int], ...] = ()
    fillings: dict[Filling, int] = field(default_factory=dict)
    _solver: "highspy.Highs | None" = None

    def add(self, filling: Filling) -> bool:
        """Let one more filling be used; return whether it is new."""
        if filling in self.fillings:
            return False
        self.fillings[filling] = len(self.fillings)
        rows = sorted(self._rows(filling).items())
        add_column(self._loaded(), float(filling.height), float(max(self.order.wanted)), rows)
        return True

    def relax(self) -> Relaxed:
        """Return the cheapest choice when strips may be cut in part."""
        solver = self._loaded()
        solver.run()
        found = solver.getSolution()
        prices = [max(0, round(price * PARTS)) for price in found.row_dual]
        kinds = len(self.order.wanted)
        return Relaxed(tuple(found.col_value), tuple(prices[:kinds]), tuple(prices[kinds:]))

    def choose(self, start: Strips) -> tuple[Strips, bool]:
        """Return how often each filling is cut when strips are whole, and whether that is proven best among them.

        `start` is a choice that is known.
        """
        import highspy

        solver = self._loaded()
        only_whole(solver, len(self.fillings))
        known = highspy.HighsSolution()
        known.col_value = [float(start.get(filling, 0)) for filling in self.fillings]
        solver.setSolution(known)
        solver.run()
        found = self._read(solver.getSolution().col_value)
        if not self._cuts_everything(found):
            return start, False
        is_so = abs(solver.getInfo().objective_function_value - length_of(found)) < _HALF
        proven = is_so and solver.getModelStatus() == highspy.HighsModelStatus.kOptimal
        return (found if length_of(found) < length_of(start) else start), proven

    def _read(self, values: Sequence[float]) -> Strips:
        times = (round(value) for value in values)
        return {filling: count for filling, count in zip(self.fillings, times, strict=False) if count}

    def _cuts_everything(self, strips: Strips) -> bool:
        """Tell whether strips hold all shapes that are wanted; of a solver that found nothing they do not."""
        counts = [0] * len(self.order.wanted)
        for filling, times in strips.items():
            for place, count in filling.runs:
                counts[self.order.ways[place].kind] += count * times
        return all(count >= wanted for count, wanted in zip(counts, self.order.wanted, strict=True))

    def _rows(self, filling: Filling) -> dict[int, int]:
        rows: dict[int, int] = {}
        for place, count in filling.runs:
            kind = self.order.ways[place].kind
            rows[kind] = rows.get(kind, 0) + count
        kinds = len(self.order.wanted)
        return rows | {kinds + row: 1 for row, (height, _) in enumerate(self.least) if height <= filling.height}

    def _loaded(self) -> "highspy.Highs":
        if self._solver is None:
            self._solver = silent_solver(_NODES)
            self._solver.setOptionValue("mip_allow_restart", False)
            # With a known start, the presolve of HiGHS 1.16 takes it for better than it is (2736 for 2760).
            self._solver.setOptionValue("presolve", "off")
            for amount in (*self.order.wanted, *(count for _, count in self.least)):
                add_row(self._solver, float(amount), math.inf)
        return self._solver
