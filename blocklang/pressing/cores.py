"""Rules that cannot all be kept: a quick count of how many must be broken."""

from collections import deque

from blocklang.pressing.parity import ParityForest
from blocklang.pressing.rules import Rule

#: Ties of rules between heads of what is tied above: the other head, and the place of the rule in its list.
Links = dict[int, list[tuple[int, int]]]

#: Beyond this many the count stops; it stays a true lower bound.
_MOST_CORES = 200


def least_broken(rules: tuple[Rule, ...], above: ParityForest) -> int:
    """Return a weight that is lost in every choice: the sum over cores that share no rule of their lightest one."""
    left, lost = list(rules), 0
    for _ in range(_MOST_CORES):
        core = _core(left, above)
        if core is None:
            break
        lost += min(left[place].weight for place in core)
        left = [rule for place, rule in enumerate(left) if place not in core]
    return lost


def _core(rules: list[Rule], above: ParityForest) -> set[int] | None:
    """Return the places of a few rules that contradict each other, or None when none do."""
    forest, links = above.copy(), Links()
    for place, rule in enumerate(rules):
        for one, other, differ in rule.ties:
            a, b = above.find(one)[0], above.find(other)[0]
            if not forest.tie(one, other, differ):
                return {place, *_between(links, a, b)}
            links.setdefault(a, []).append((b, place))
            links.setdefault(b, []).append((a, place))
    return None


def _between(links: Links, start: int, end: int) -> set[int]:
    """Return the rules on a shortest way from one head to another."""
    came: dict[int, tuple[int, int]] = {start: (start, -1)}
    waiting = deque([start])
    while waiting and end not in came:
        here = waiting.popleft()
        for there, place in links.get(here, ()):
            if there not in came:
                came[there] = (here, place)
                waiting.append(there)
    places: set[int] = set()
    while end != start:
        end, place = came[end]
        places.add(place)
    return places
