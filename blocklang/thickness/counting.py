"""Counting the layers at junctions for whoever chooses directions: set up when the first is asked for."""

from collections.abc import Callable, Mapping

from blocklang.assembly.values import Assembly
from blocklang.thickness.lying import Lies
from blocklang.thickness.nearby import Nearby


def layer_counter(assembly: Assembly) -> Callable[[int, Mapping[int, int | None], frozenset[int]], int]:
    """Return what counts the layers at a junction, given where allowances lie and which junctions are spun."""
    nearby: list[Nearby] = []

    def count(junction: int, toward: Mapping[int, int | None], spun: frozenset[int]) -> int:
        if not nearby:
            nearby.append(Nearby(assembly))
        return nearby[0].layers(junction, Lies(toward, spun))

    return count
