"""The least that any sewing order needs: pivots from the junctions, partial seams from the rings of precedence."""

from blocklang.assembly.precedence import strong_parts
from blocklang.graph.values import Junction, PatchGraph


def fewest_pivots(graph: PatchGraph) -> int:
    """Return the number of junctions that every order closes by a bent seam: no seam runs straight through them."""
    return sum(junction.is_inner and junction.always_pivots for junction in graph.junctions)


def fewest_partials(graph: PatchGraph) -> int:
    """Return a lower bound on partial seams, for orders that bend only where they must.

    Straight pieces of seam are taken between crosses; a piece that ends on the side of another is sewn before it.
    Every ring of such precedences needs a partial seam, and separate strongly connected parts need separate ones.
    """
    piece = _pieces(graph)
    before: dict[int, set[int]] = {}
    for junction in graph.junctions:
        for a, b in _precedences(junction, piece):
            before.setdefault(a, set()).add(b)
    return sum(len(part) > 1 or part[0] in before.get(part[0], ()) for part in strong_parts(before))


def _pieces(graph: PatchGraph) -> list[int]:
    """Return, for each segment, the lowest segment of its straight piece between crosses."""
    parent = list(range(len(graph.segments)))

    def root(index: int) -> int:
        while parent[index] != index:
            parent[index] = parent[parent[index]]
            index = parent[index]
        return index

    for junction in graph.junctions:
        pairs = {tuple(sorted((e.segment, e.straight_on))) for e in junction.ends if e.straight_on is not None}
        if len(pairs) == 1 and junction.is_inner:
            a, b = sorted(root(index) for index in pairs.pop())
            parent[b] = a
    return [root(index) for index in range(len(parent))]


def _precedences(junction: Junction, piece: list[int]) -> list[tuple[int, int]]:
    through = {piece[e.segment] for e in junction.ends if e.straight_on is not None}
    if not junction.is_inner or len(through) != 1:
        return []
    over = through.pop()
    return [(piece[end.segment], over) for end in junction.ends if end.straight_on is None]
