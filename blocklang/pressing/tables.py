"""Costs as tables over a few yes-or-no choices, and the least sum of many, found by settling choice after choice.

Bucket elimination (Dechter, Artificial Intelligence 113, 1999): exact, and quick while each choice touches few others.
"""

from dataclasses import dataclass
from heapq import heapify, heappop, heappush
from operator import add, gt

#: A choice that touches more than this many others at once makes the tables too long.
WIDEST = 22

#: All entries of all tables, at about eighty million a second.
MOST_ENTRIES = 100_000_000

#: Up to here plain lists, at about ten million entries a second, are quicker than loading numpy.
FEW_ENTRIES = 150_000

#: Numbers in plain lists have no limit; where they are too large for numpy, so many entries are still tried.
MOST_PLAIN = 12_000_000

#: An answer for each choice.
Answers = dict[int, bool]


@dataclass(frozen=True, slots=True)
class Table:
    """A cost for every way to answer the choices in `scope`; the first one is the highest bit of the index."""

    scope: tuple[int, ...]
    costs: list[int]


def least(tables: list[Table]) -> Answers | None:
    """Return the answers with the least sum of costs, "no" first where it is all the same; None when it is too much."""
    found = _order(tables)
    if found is None:
        return None
    order, entries = found
    if entries > FEW_ENTRIES:
        from blocklang.pressing.long_tables import LARGEST, settle_all

        if sum(max(table.costs) for table in tables) < LARGEST:
            return settle_all(order, tables)
    return _settle_all(order, tables) if entries <= MOST_PLAIN else None


def _settle_all(order: list[int], tables: list[Table]) -> Answers:
    place = {choice: number for number, choice in enumerate(order)}
    buckets: list[list[Table]] = [[] for _ in order]
    for table in tables:
        _drop(buckets, place, _sorted(table, place))
    settled = [_settle(bucket, buckets, place) for bucket in buckets]
    answers = Answers()
    for choice, (scope, yes) in zip(reversed(order), reversed(settled), strict=True):
        index = 0
        for other in scope:
            index = 2 * index + answers[other]
        answers[choice] = yes[index]
    return answers


def _settle(
    bucket: list[Table], buckets: list[list[Table]], place: dict[int, int]
) -> tuple[tuple[int, ...], list[bool]]:
    """Settle the first choice of a bucket for every way to answer the choices it touches."""
    scope = tuple(sorted({choice for table in bucket for choice in table.scope}, key=place.__getitem__))
    costs = _spread(bucket[0].costs, bucket[0].scope, scope)
    for table in bucket[1:]:
        costs = list(map(add, costs, _spread(table.costs, table.scope, scope)))
    half = len(costs) // 2
    no, yes = costs[:half], costs[half:]
    _drop(buckets, place, Table(scope[1:], list(map(min, no, yes))))
    return scope[1:], list(map(gt, no, yes))


def _drop(buckets: list[list[Table]], place: dict[int, int], table: Table) -> None:
    if table.scope:
        buckets[place[table.scope[0]]].append(table)


def _spread(costs: list[int], scope: tuple[int, ...], wider: tuple[int, ...]) -> list[int]:
    if scope == wider:
        return costs
    if scope and scope[0] == wider[0]:
        half = len(costs) // 2
        return _spread(costs[:half], scope[1:], wider[1:]) + _spread(costs[half:], scope[1:], wider[1:])
    return 2 * _spread(costs, scope, wider[1:])


def _sorted(table: Table, place: dict[int, int]) -> Table:
    """Return the table with its choices in the order in which they are settled."""
    scope = tuple(sorted(table.scope, key=place.__getitem__))
    if scope == table.scope:
        return table
    shifts = [len(scope) - 1 - table.scope.index(choice) for choice in scope]
    top = len(scope) - 1
    costs = [
        table.costs[sum((index >> (top - bit) & 1) << shift for bit, shift in enumerate(shifts))]
        for index in range(len(table.costs))
    ]
    return Table(scope, costs)


def _order(tables: list[Table]) -> tuple[list[int], int] | None:
    """Return the choices, the one that touches the fewest always next, and all entries; None when they are too many."""
    beside: dict[int, set[int]] = {}
    for table in tables:
        for choice in table.scope:
            beside.setdefault(choice, set()).update(table.scope)
    for choice, others in beside.items():
        others.discard(choice)
    waiting = [(len(others), choice) for choice, others in beside.items()]
    heapify(waiting)
    order: list[int] = []
    entries = 0
    while waiting:
        width, choice = heappop(waiting)
        if choice not in beside or len(beside[choice]) != width:
            continue
        others = beside.pop(choice)
        entries += 2 << width
        if width > WIDEST or entries > MOST_ENTRIES:
            return None
        order.append(choice)
        for other in others:
            beside[other] |= others
            beside[other] -= {choice, other}
            heappush(waiting, (len(beside[other]), other))
    return order, entries
