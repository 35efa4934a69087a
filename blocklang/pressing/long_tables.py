"""Long tables, settled with numpy; loaded only where plain lists would take too long."""

from typing import TYPE_CHECKING

from blocklang.pressing.tables import Answers, Table

if TYPE_CHECKING:
    import numpy
    from numpy.typing import NDArray

    Costs = NDArray[numpy.int64]

#: Sums of costs up to here fit in 64 bits with room to spare.
LARGEST = 1 << 61


def settle_all(order: list[int], tables: list[Table]) -> Answers:
    """Return the answers with the least sum of costs, settling choices in an order; "no" first where all is the same.

    The sum of the largest cost of every table has to be below `LARGEST`.
    """
    import numpy

    place = {choice: number for number, choice in enumerate(order)}
    buckets: list[list[tuple[tuple[int, ...], Costs]]] = [[] for _ in order]
    for table in tables:
        if table.scope:
            axes = sorted(range(len(table.scope)), key=lambda axis: place[table.scope[axis]])
            costs = numpy.array(table.costs, dtype=numpy.int64).reshape((2,) * len(axes)).transpose(axes)
            scope = tuple(place[table.scope[axis]] for axis in axes)
            buckets[scope[0]].append((scope, costs))
    settled: list[tuple[tuple[int, ...], NDArray[numpy.bool_]]] = []
    for bucket in buckets:
        scope = tuple(sorted({choice for own, _ in bucket for choice in own}))
        no, yes = _both(bucket, scope)
        settled.append((scope[1:], no > yes))
        if scope[1:]:
            buckets[scope[1]].append((scope[1:], numpy.minimum(no, yes)))
        bucket.clear()
    answers = [False] * len(order)
    for number, (scope, better) in reversed(list(enumerate(settled))):
        answers[number] = bool(better[tuple(int(answers[other]) for other in scope)])
    return dict(zip(order, answers, strict=True))


def _both(bucket: list[tuple[tuple[int, ...], "Costs"]], scope: tuple[int, ...]) -> tuple["Costs", "Costs"]:
    """Return the costs of answering the first choice "no" and "yes", for all answers of the others."""
    halves = []
    for answer in (0, 1):
        total = None
        for own, costs in sorted(bucket, key=lambda item: len(item[0])):
            shape = tuple(2 if choice in own else 1 for choice in scope[1:])
            spread = costs[answer].reshape(shape)
            total = spread if total is None else total + spread
        assert total is not None
        halves.append(total)
    return halves[0], halves[1]
