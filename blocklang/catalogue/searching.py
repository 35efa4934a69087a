"""Which blocks a person asks for: words, ranges of numbers, sizes, shapes."""

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import NamedTuple

from blocklang.block import LengthUnit
from blocklang.catalogue.facts import Facts
from blocklang.geometry import TICKS_PER_INCH

_RANGE = re.compile(r"(\d{0,9})(\.\.)?(\d{0,9})", re.ASCII)
_LENGTH = re.compile(
    r"\s*(?:(\d{1,5})(?:[ -](?=\d+/))?)?(?:(\d{1,3})/(\d{1,3})|\.(\d{1,4}))?\s*(in|cm|mm|)\s*", re.ASCII
)
#: A size as asked for may differ this much from the block's, in ticks: what a ruler cannot show.
_NEAR = TICKS_PER_INCH // 32


class Refused(NamedTuple):
    """Why something asked for cannot be understood, in one sentence."""

    found: str


class Range(NamedTuple):
    """Numbers from one to another, both included."""

    least: float
    most: float

    def has(self, number: float) -> bool:
        """Say whether a number lies in it."""
        return self.least <= number <= self.most


ANYTHING = Range(float("-inf"), float("inf"))


@dataclass(frozen=True, slots=True)
class Asked:
    """What a person asks for; a block must have all of it. `size` is of the longer side, in ticks."""

    words: tuple[str, ...] = ()
    family: str = ""
    shape: str = ""
    difficulty: str = ""
    size: Range = ANYTHING
    patches: Range = ANYTHING
    set_in: Range = ANYTHING
    partial: Range = ANYTHING
    curved: Range = ANYTHING

    def fits(self, name: str, facts: Facts) -> bool:
        """Say whether a block is asked for."""
        return (
            self.family in ("", facts.family)
            and self.shape in ("", facts.shape)
            and self.difficulty in ("", facts.difficulty)
            and self.patches.has(facts.patches)
            and self.set_in.has(facts.set_in)
            and self.partial.has(facts.partials)
            and self.curved.has(facts.curves)
            and self.size.has(max(facts.width, facts.height))
            and self.has_words(f"{name} {facts.title} {facts.family} {facts.author}")
        )

    def has_words(self, text: str) -> bool:
        """Say whether every word stands somewhere in a text."""
        lower = text.lower()
        return all(word in lower for word in self.words)

    @property
    def only_words(self) -> bool:
        """Whether a file that cannot be read could still be meant."""
        return self == Asked(self.words)


def read_range(text: str) -> Range | Refused:
    """Return the numbers that are meant: `no`, `some`, `4`, `..40`, `9..`, `4..12`."""
    word = text.strip().lower()
    if word in ("no", "none"):
        return Range(0, 0)
    if word in ("some", "yes"):
        return Range(1, ANYTHING.most)
    match = _RANGE.fullmatch(word)
    if match is None or not (match[1] or match[3]):
        return Refused(f"`{text}` is no number of seams or patches: write `no`, `some`, `4`, `..40`, `9..` or `4..12`.")
    least = int(match[1]) if match[1] else 0
    most = int(match[3]) if match[3] else ANYTHING.most if match[2] else least
    return Range(least, most) if least <= most else Refused(f"`{text}` ends before it begins.")


def read_sizes(text: str) -> Range | Refused:
    """Return the finished sizes that are meant, in ticks: `12in`, `..9in`, `6 1/2in..12in`, `15cm..`."""
    first, dots, last = text.partition("..")
    if not dots:
        last = first
    elif last and not _has_unit(first):
        first = f"{first} {_unit_of(last)}" if first else first
    least = _ticks(first) if first else 0
    most = _ticks(last) if last else ANYTHING.most
    if least is None or most is None or not (first or last):
        return Refused(f"`{text}` is no size: write `12in`, `..9in`, `6 1/2in..12in` or `15cm..`.")
    return Range(least - _NEAR, most + _NEAR) if least <= most else Refused(f"`{text}` ends before it begins.")


def _has_unit(text: str) -> bool:
    return bool(_unit_of(text))


def _unit_of(text: str) -> str:
    return next((unit for unit in ("in", "cm", "mm") if text.strip().endswith(unit)), "")


def _ticks(text: str) -> float | None:
    match = _LENGTH.fullmatch(text)
    if match is None or not (match[1] or match[2] or match[4]) or (match[3] and not int(match[3])):
        return None
    value = Fraction(int(match[1] or 0))
    if match[2]:
        value += Fraction(int(match[2]), int(match[3]))
    if match[4]:
        value += Fraction(int(match[4]), 10 ** len(match[4]))
    unit = LengthUnit(match[5] or "in")
    return float(value) / unit.per_inch * TICKS_PER_INCH
