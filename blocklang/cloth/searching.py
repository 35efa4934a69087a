"""All fillings of a strip that are worth enough, as full as can be."""

from collections.abc import Callable
from dataclasses import dataclass, field

from blocklang.cloth.fillings import Knapsack
from blocklang.cloth.values import Filling

#: How many steps of the search each filling that may be found allows.
_STEPS_A_FILLING = 60


class TooManyError(Exception):
    """There are more fillings than may be listed."""


@dataclass(slots=True)
class _Search:
    """A search among the fillings of strips of one height; `tables` are the knapsack's as plain lists."""

    knapsack: Knapsack
    tables: list[list[int]]
    limit: int
    found: list[Filling] = field(default_factory=list)
    steps: int = 0

    def among(self, height: int, top: int, enough: int) -> None:
        """Find the fillings that are worth enough, with a shape of the full height, into which no other shape goes."""
        self._go_on(height, top, enough, self.knapsack.shelf.width, 0, ())

    def _go_on(
        self, height: int, place: int, enough: int, room: int, worth: int, runs: tuple[tuple[int, int], ...]
    ) -> None:
        self.steps += 1
        if len(self.found) > self.limit or self.steps > self.limit * _STEPS_A_FILLING:
            raise TooManyError
        ways = self.knapsack.shelf.ways
        is_tall = bool(runs) and ways[runs[0][0]].height == height
        if place < 0:
            if is_tall and self._is_full(height, room, runs):
                self.found.append(Filling(height, tuple(reversed(runs))))
            return
        if worth + self.tables[place + 1][room] < enough or not (is_tall or ways[place].height == height):
            return
        takes, each = ways[place].takes, self.knapsack.worths[place]
        for count in range(_most_in(takes, self.knapsack.shelf.most[place], room), -1, -1):
            more = (*runs, (place, count)) if count else runs
            self._go_on(height, place - 1, enough, room - takes[count], worth + count * each, more)

    def _is_full(self, height: int, room: int, runs: tuple[tuple[int, int], ...]) -> bool:
        counts = dict(runs)
        shelf = self.knapsack.shelf
        for place, way in enumerate(shelf.ways):
            count = counts.get(place, 0)
            if way.height <= height and count < shelf.most[place] and way.takes[count + 1] - way.takes[count] <= room:
                return False
        return True


def worthy_fillings(knapsack: Knapsack, enough: Callable[[int], int], limit: int) -> tuple[Filling, ...]:
    """Return the full fillings of every height that are worth at least `enough(height)`.

    Raises TooManyError when there are more than `limit`, or when looking for them takes too long.
    """
    search = _Search(knapsack, [table.tolist() for table in knapsack.tables], limit)
    for height, top in knapsack.shelf.tops():
        search.among(height, top, enough(height))
    return tuple(search.found)


def _most_in(takes: tuple[int, ...], most: int, room: int) -> int:
    while most and takes[most] > room:
        most -= 1
    return most
