"""Giving measured values that differ by no more than noise one number."""

from dataclasses import dataclass, field
from math import floor


@dataclass(slots=True)
class Marks:
    """Numbers real values by first sight; values within `tolerance` of a known one share its number."""

    tolerance: float
    values: list[float] = field(default_factory=list)
    _exact: dict[int, int] = field(default_factory=dict)
    _cells: dict[int, list[int]] = field(default_factory=dict)

    def number(self, value: float) -> int:
        """Return the number of a value, new if no known value is the same."""
        fine = floor(64 * value / self.tolerance)
        known_number = self._exact.get(fine)
        if known_number is None:
            known_number = self._exact[fine] = self._find_or_add(value)
        return known_number

    def _find_or_add(self, value: float) -> int:
        cell = int(value // (4 * self.tolerance))
        for near in (cell, cell - 1, cell + 1):
            for known in self._cells.get(near, ()):
                if abs(self.values[known] - value) <= self.tolerance:
                    return known
        self.values.append(value)
        self._cells.setdefault(cell, []).append(len(self.values) - 1)
        return len(self.values) - 1
