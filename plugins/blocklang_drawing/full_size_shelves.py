"""Laying small pieces on pages in shelves: tall pieces first, each on the first shelf that has room for it."""

from collections.abc import Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a piece lies: the page, counted from 0, and its upper left corner in the room of that page."""

    page: int
    left: float
    top: float


@dataclass(slots=True)
class _Shelf:
    page: int
    top: float
    height: float
    used: float


def shelve(sizes: Sequence[tuple[float, float]], width: float, height: float, gap: float) -> tuple[Spot, ...]:
    """Return a spot for each piece (width, height), in the order given; every piece must fit in a room by itself."""
    shelves: list[_Shelf] = []
    spots: dict[int, Spot] = {}
    # Rounding keeps equal pieces in their order when they differ by noise.
    for index in sorted(range(len(sizes)), key=lambda i: (-round(sizes[i][1], 1), -round(sizes[i][0], 1), i)):
        wide, high = sizes[index]
        shelf = _with_room(shelves, wide, high, width) or _new_shelf(shelves, high, height, gap)
        spots[index] = Spot(shelf.page, shelf.used, shelf.top)
        shelf.used += wide + gap
    return tuple(spots[index] for index in range(len(sizes)))


def _with_room(shelves: list[_Shelf], wide: float, high: float, width: float) -> _Shelf | None:
    fitting = (shelf for shelf in shelves if shelf.height >= high - 0.1 and shelf.used + wide <= width + 0.01)
    return next(fitting, None)


def _new_shelf(shelves: list[_Shelf], high: float, height: float, gap: float) -> _Shelf:
    below: dict[int, float] = {}
    for shelf in shelves:
        below[shelf.page] = shelf.top + shelf.height + gap
    page = next((page for page, top in below.items() if top + high <= height + 0.01), len(below))
    made = _Shelf(page, below.get(page, 0.0), high, 0.0)
    shelves.append(made)
    return made
