"""Parts of a relation that lead back to themselves."""


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
