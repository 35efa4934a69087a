"""Filling one panel with what is worth most: prices give a bound, and a search proves what is best, in whole numbers.

Every shape has a price, and what its worth is above that price counts once for each copy. So a choice of strips is
worth no more than what is in them at these prices, and all that its shapes are worth above them; and it loses the price
of every shape too many. A strip that loses more than the bound is above the best choice known is never looked at.
"""

from dataclasses import dataclass, field

from blocklang.cloth.fillings import Knapsack, weigh
from blocklang.cloth.panel_program import PARTS, price, shelf_of, worth_of
from blocklang.cloth.searching import TooManyError, worthy_fillings
from blocklang.cloth.values import FilledPanel, Filling, Panel

#: More strips than this are never searched; no panel of a size that is cut from cloth comes near.
_MOST_FILLINGS = 10**6
#: How often a strip is tried after others at most.
_MOST_TRIES = 10**9


def fill_panel(panel: Panel, fillings: int = _MOST_FILLINGS, tries: int = _MOST_TRIES) -> FilledPanel:
    """Return the strips of a panel that are worth most; trimming is allowed, turning only by ways that are given.

    No way may be higher than the panel. A strip runs across it, sub-cuts go across the strip. The answer is proven
    unless it would take listing more than so many fillings or trying more than so many strips.
    """
    if not panel.ways:
        return FilledPanel((), 0)
    prices, known = price(panel)
    knapsack = weigh(shelf_of(panel), [prices[way.kind] for way in panel.ways])
    above = sum(
        max(0, worth * PARTS - paid) * copies
        for worth, paid, copies in zip(panel.worth, prices, panel.copies, strict=True)
    )
    stacked = stack(panel.height, knapsack)
    search = _Search(panel, prices, above, stacked, known, worth_of(panel, known), [0] * len(panel.copies), tries)
    whole, goal = stacked[max(stacked)], search.goal()
    try:
        found = worthy_fillings(knapsack, lambda height: goal - whole[panel.height - height], fillings)
    except TooManyError:
        return FilledPanel(search.best, search.worth, proven=False)
    search.groups = _by_height(found, knapsack)
    search.go_on(0, 0, panel.height, 0)
    return FilledPanel(search.best, search.worth, proven=search.tries > 0)


def stack(height: int, knapsack: Knapsack) -> dict[int, list[int]]:
    """Return for every height of strip what strips no higher are worth at most in a panel of each height up to this."""
    found, rows = [0] * (height + 1), {}
    for high, top in knapsack.shelf.tops():
        found, best = found[:], knapsack.best(top)
        for room in range(high, height + 1):
            found[room] = max(found[room], found[room - high] + best)
        rows[high] = found
    return rows


_Priced = tuple[int, Filling]


def _by_height(fillings: tuple[Filling, ...], knapsack: Knapsack) -> tuple[tuple[int, tuple[_Priced, ...]], ...]:
    groups: dict[int, list[_Priced]] = {}
    for filling in fillings:
        priced = sum(knapsack.worths[place] * count for place, count in filling.runs)
        groups.setdefault(filling.height, []).append((priced, filling))
    return tuple(
        (height, tuple(sorted(groups[height], key=lambda pair: (-pair[0], pair[1].runs))))
        for height in sorted(groups, reverse=True)
    )


@dataclass(slots=True)
class _Search:
    """Tries strips from the highest to the lowest; `best` is the best choice so far, `counts` what is in `chosen`."""

    panel: Panel
    prices: tuple[int, ...]
    above: int
    stacked: dict[int, list[int]]
    best: tuple[Filling, ...]
    worth: int
    counts: list[int]
    tries: int
    groups: tuple[tuple[int, tuple[_Priced, ...]], ...] = ()
    chosen: list[Filling] = field(default_factory=list)

    def goal(self) -> int:
        """Return what strips must be worth at the prices to be worth more than the best choice."""
        return (self.worth + 1) * PARTS - self.above

    def go_on(self, group: int, place: int, room: int, priced: int) -> None:
        """Try what may follow the strips chosen so far, which are worth `priced` at the prices."""
        self._note()
        for index in range(group, len(self.groups)):
            height, fillings = self.groups[index]
            if height > room:
                continue
            stacked = self.stacked[height]
            if priced + stacked[room] < self.goal():
                return
            for number in range(place if index == group else 0, len(fillings)):
                if priced + fillings[number][0] + stacked[room - height] < self.goal():
                    break
                self._try(index, number, room, priced)

    def _try(self, index: int, number: int, room: int, priced: int) -> None:
        if not self.tries:
            return
        self.tries -= 1
        height, fillings = self.groups[index]
        worth, filling = fillings[number]
        priced += worth - self._too_many(filling)
        if priced + self.stacked[height][room - height] < self.goal():
            return
        self._count(filling, 1)
        self.chosen.append(filling)
        self.go_on(index, number, room - height, priced)
        self.chosen.pop()
        self._count(filling, -1)

    def _note(self) -> None:
        kinds = zip(self.panel.worth, self.counts, self.panel.copies, strict=True)
        worth = sum(each * min(count, copies) for each, count, copies in kinds)
        if worth > self.worth:
            self.worth, self.best = worth, tuple(self.chosen)

    def _count(self, filling: Filling, sign: int) -> None:
        for place, count in filling.runs:
            self.counts[self.panel.ways[place].kind] += sign * count

    def _too_many(self, filling: Filling) -> int:
        """Return the price of the shapes that would be more than there are copies."""
        lost = 0
        for place, count in filling.runs:
            kind = self.panel.ways[place].kind
            over = self.counts[kind] + count - self.panel.copies[kind]
            if over > 0:
                lost += min(over, count) * self.prices[kind]
        return lost
