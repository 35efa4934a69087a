"""Seam segments tied to each other, side to side or side to opposite side."""

from collections.abc import Iterable


class ParityForest:
    """Groups of things whose two-valued states are known relative to each other."""

    __slots__ = ("_differs", "_parent")

    def __init__(self, size: int) -> None:
        self._parent = list(range(size))
        self._differs = [False] * size

    def find(self, item: int) -> tuple[int, bool]:
        """Return the head of an item's group, and whether the item differs from it."""
        parent, differs = self._parent, self._differs
        trail = []
        while parent[item] != item:
            trail.append(item)
            item = parent[item]
        known = False
        for step in reversed(trail):
            known ^= differs[step]
            parent[step], differs[step] = item, known
        return item, known

    def tie(self, one: int, other: int, differ: bool) -> bool:
        """Tie two items; return whether that agrees with what is known, and leave everything as it is if not."""
        a, a_differs = self.find(one)
        b, b_differs = self.find(other)
        if a == b:
            return (a_differs ^ b_differs) == differ
        low, high = min(a, b), max(a, b)
        self._parent[high] = low
        self._differs[high] = a_differs ^ b_differs ^ differ
        return True

    def fits(self, ties: Iterable[tuple[int, int, bool]]) -> bool:
        """Tell whether ties agree with what is known, each for itself."""
        for one, other, differ in ties:
            a, a_differs = self.find(one)
            b, b_differs = self.find(other)
            if a == b and (a_differs ^ b_differs) != differ:
                return False
        return True

    def copy(self) -> "ParityForest":
        """Return an independent copy."""
        twin = ParityForest(0)
        twin._parent, twin._differs = self._parent[:], self._differs[:]
        return twin
