"""Lists, numbers and sayings one after the other."""

from collections.abc import Iterable
from typing import Final

from blocklang.wording.sayings import LookUp, Saying, message, say

_DECIMAL_MARK: Final = message(".", context="the decimal mark")
_THOUSANDS_MARK: Final = message(",", context="the mark between thousands")


class _Joined(Saying):
    __slots__ = ("_between", "_parts")
    _between: str
    _parts: tuple[str, ...]

    def said(self, look_up: LookUp) -> str:
        parts = (part.said(look_up) if isinstance(part, Saying) else part for part in self._parts)
        between = self._between
        return (between.said(look_up) if isinstance(between, Saying) else between).join(parts)


class _Decimal(Saying):
    __slots__ = ()

    def said(self, look_up: LookUp) -> str:
        marks = {",": look_up(_THOUSANDS_MARK, None), ".": look_up(_DECIMAL_MARK, None)}
        return "".join(marks.get(sign, sign) for sign in self)


def say_decimal(number: str) -> Saying:
    """Say a number with a decimal point, and commas between thousands; other languages have other marks there."""
    return _Decimal(number)


def joined(parts: Iterable[str], between: str = " ") -> Saying:
    """Say sayings one after the other; what stands between them is the same in every language unless it is a saying."""
    own = tuple(parts)
    saying = _Joined(between.join(own))
    saying._between, saying._parts = between, own
    return saying


def listed(parts: Iterable[str]) -> str:
    """List one or more things: "a", "a and b", "a, b and c"."""
    *before, last = parts
    return say("{before} and {last}", before=joined(before, ", "), last=last) if before else last
