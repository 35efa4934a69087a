"""Rings of precedence: parts of a relation that lead back to themselves, and the fewest members that break them."""

from itertools import combinations

_TRIED_AT_ONCE = 3


def strong_parts(before: dict[int, set[int]]) -> list[list[int]]:
    """Return the strongly connected parts of a relation (Tarjan's method, without recursion)."""
    number: dict[int, int] = {}
    low: dict[int, int] = {}
    stack: list[int] = []
    on_stack: set[int] = set()
    parts: list[list[int]] = []
    for start in sorted(before):
        if start in number:
            continue
        work = [(start, iter(sorted(before.get(start, ()))))]
        number[start] = low[start] = len(number)
        stack.append(start)
        on_stack.add(start)
        while work:
            node, following = work[-1]
            other = next(following, None)
            if other is None:
                work.pop()
                if work:
                    low[work[-1][0]] = min(low[work[-1][0]], low[node])
                if low[node] == number[node]:
                    part: list[int] = []
                    while not part or part[-1] != node:
                        part.append(stack.pop())
                        on_stack.discard(part[-1])
                    parts.append(part)
            elif other not in number:
                number[other] = low[other] = len(number)
                stack.append(other)
                on_stack.add(other)
                work.append((other, iter(sorted(before.get(other, ())))))
            elif other in on_stack:
                low[node] = min(low[node], number[other])
    return parts


def last_ring(before: dict[int, set[int]]) -> list[int]:
    """Return a strongly connected part with a ring from which nothing leads on to another, ascending; [] when none."""
    for part in strong_parts(before):
        inside = set(part)
        if all(before.get(node, set()) <= inside for node in part) and any(before.get(node) for node in part):
            return sorted(part)
    return []


def breakers(before: dict[int, set[int]], ring: list[int]) -> list[int]:
    """Return the members of all smallest sets that break every ring in a part; all members when none that small do."""
    for size in range(1, _TRIED_AT_ONCE + 1):
        found = {node for chosen in combinations(ring, size) if _breaks(before, ring, chosen) for node in chosen}
        if found:
            return sorted(found)
    return ring


def _breaks(before: dict[int, set[int]], ring: list[int], chosen: tuple[int, ...]) -> bool:
    left = set(ring).difference(chosen)
    rest = {node: before.get(node, set()) & left for node in sorted(left)}
    return all(len(part) == 1 and part[0] not in rest[part[0]] for part in strong_parts(rest))
