"""Papers and letters: equal sections are sewn from one paper, told once, and numbered alike."""

from blocklang.foundation.lines import Lay, patches_of
from blocklang.foundation.ordering import Added, order_section
from blocklang.foundation.peeling import last_line
from blocklang.foundation.sameness import Sameness
from blocklang.foundation.values import Paper, Section

#: Middles of sections that are nearer than this (1/100 in) are at one height.
_LEVEL = 7_200

Groups = tuple[tuple[int, ...], ...]


def group_alike(lay: Lay, division: tuple[int, ...]) -> Groups:
    """Return the sections of a division as bit masks, equal ones together, from the top of the block down."""
    sameness = Sameness(lay.graph)
    alike: dict[object, list[int]] = {}
    for members in sorted(division, key=lambda members: _from_top(lay, members)):
        alike.setdefault(sameness.key(patches_of(members))[0], []).append(members)
    return tuple(tuple(group) for group in alike.values())


def tell_sections(lay: Lay, groups: Groups) -> tuple[tuple[Section, ...], tuple[Paper, ...]]:
    """Return the sections with their letters and orders, and the papers that they are sewn from."""
    sameness = Sameness(lay.graph)
    sections: list[Section] = []
    papers: list[Paper] = []
    for place, group in enumerate(groups):
        orders = _orders(lay, sameness, group)
        first = len(sections)
        sections.extend(_section(letter_of(place), order) for order in orders)
        patches = tuple(tuple(added.patch for added in order) for order in orders)
        papers.append(Paper(tuple(range(first, len(sections))), patches))
    return tuple(sections), tuple(papers)


def letter_of(place: int) -> str:
    """Return A to Z, then AA, AB and so on."""
    letters = ""
    while place >= 0:
        letters = chr(ord("A") + place % 26) + letters
        place = place // 26 - 1
    return letters


def _section(letter: str, order: tuple[Added, ...]) -> Section:
    return Section(letter, tuple(added.patch for added in order), tuple(added.seam for added in order))


def _orders(lay: Lay, sameness: Sameness, group: tuple[int, ...]) -> list[tuple[Added, ...]]:
    """Return an order for each of equal sections, that of the first carried over to the others."""
    first = order_section(lay, group[0])
    place = {patch: at for at, patch in enumerate(sameness.key(patches_of(group[0]))[1])}
    others = (sameness.key(patches_of(members))[1] for members in group[1:])
    return [first, *(_carried(lay, [other[place[added.patch]] for added in first]) for other in others)]


def _carried(lay: Lay, patches: list[int]) -> tuple[Added, ...]:
    sewn = 0
    order: list[Added] = []
    for patch in patches:
        sewn |= 1 << patch
        order.append(Added(patch, last_line(lay, sewn, patch) if order else None))
    assert all(added.line is not None for added in order[1:]), "an equal section is sewn in an equal order"
    return tuple(order)


def _from_top(lay: Lay, members: int) -> tuple[int, int, int]:
    bounds = [lay.graph.block.patches[patch].outline.bounds() for patch in patches_of(members)]
    up = min(b[1] for b in bounds) + max(b[3] for b in bounds)
    along = min(b[0] for b in bounds) + max(b[2] for b in bounds)
    return -round(up / _LEVEL), round(along / _LEVEL), members
