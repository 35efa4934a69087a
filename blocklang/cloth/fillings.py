"""The fillings of a strip that are worth most: a bounded knapsack for every height at once."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from blocklang.cloth.values import Filling, Way

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


@dataclass(frozen=True, slots=True)
class Shelf:
    """What may lie in a strip: its ways from the lowest to the highest, and at most how many shapes of each."""

    width: int
    ways: tuple[Way, ...]
    most: tuple[int, ...]

    def tops(self) -> Iterator[tuple[int, int]]:
        """Yield every height with the last way that is no higher."""
        for place, way in enumerate(self.ways):
            if place + 1 == len(self.ways) or self.ways[place + 1].height != way.height:
                yield way.height, place


@dataclass(frozen=True, slots=True)
class Knapsack:
    """`tables[j][k]` is the most that the first j ways are worth in a length k; worths are those of each way."""

    shelf: Shelf
    worths: tuple[int, ...]
    tables: "tuple[NDArray[np.int64], ...]"

    def best(self, top: int) -> int:
        """Return what the best filling is worth that uses no way after `top`."""
        return int(self.tables[top + 1][self.shelf.width])

    def filling(self, height: int, top: int) -> Filling:
        """Return that filling; of equal ones the one with the fewest shapes of the highest ways."""
        room, runs = self.shelf.width, []
        for place in range(top, -1, -1):
            count = self._count(place, room)
            if count:
                runs.append((place, count))
                room -= self.shelf.ways[place].takes[count]
        return Filling(height, tuple(reversed(runs)))

    def _count(self, place: int, room: int) -> int:
        wanted = self.tables[place + 1][room]
        before, worth, takes = self.tables[place], self.worths[place], self.shelf.ways[place].takes
        count = 0
        while before[room - takes[count]] + count * worth != wanted:
            count += 1
        return count


def weigh(shelf: Shelf, worths: Sequence[int]) -> Knapsack:
    """Return the tables of a shelf for the worth of one shape of each way."""
    import numpy as np

    table = np.zeros(shelf.width + 1, dtype=np.int64)
    tables = [table]
    for way, most, worth in zip(shelf.ways, shelf.most, worths, strict=True):
        if worth > 0 and most:
            table = table.copy()
            before = tables[-1]
            for count in range(1, most + 1):
                taken = way.takes[count]
                np.maximum(table[taken:], before[: shelf.width + 1 - taken] + count * worth, out=table[taken:])
        tables.append(table)
    return Knapsack(shelf, tuple(worths), tuple(tables))


def tallest_of(filling: Filling, ways: Sequence[Way]) -> int:
    """Return how high the strip of a filling must be."""
    return max(ways[place].height for place, _ in filling.runs)
