"""All sets of patches that can be one section, as far as a counted number of trials goes."""

from dataclasses import dataclass

from blocklang.foundation.lines import Lay, patches_of
from blocklang.foundation.peeling import additions

#: So many sets are grown before the search stops; a block of forty patches seldom has a thousand.
MOST_SETS = 6_000


@dataclass(frozen=True, slots=True)
class Grown:
    """Sets that can be sections, as bit masks in the order of their sizes; `all_of_them` when none is missing."""

    sets: tuple[int, ...]
    all_of_them: bool


def grow(lay: Lay, most: int = MOST_SETS) -> Grown:
    """Return the sets that can be sections; every one is reached patch by patch from a single one."""
    singles = [1 << patch for patch in range(len(lay.near))]
    known = dict.fromkeys(singles)
    layer = singles
    while layer and len(known) <= most:
        larger: dict[int, None] = {}
        for members in layer:
            for patch, _ in additions(lay, members):
                larger.setdefault(members | 1 << patch)
        layer = [members for members in larger if members not in known]
        known.update(dict.fromkeys(layer))
    return Grown(tuple(known), not layer)


def covering(sets: tuple[int, ...], patches: int) -> list[list[int]]:
    """Return, for each patch, the places of the sets that hold it."""
    holding: list[list[int]] = [[] for _ in range(patches)]
    for place, members in enumerate(sets):
        for patch in patches_of(members):
            holding[patch].append(place)
    return holding
