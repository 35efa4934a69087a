"""What blocks can be chosen by on the first page: a few ranges each, of which only those are offered that some block is in."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import Final

from blocklang.block import LengthUnit
from blocklang.catalogue.difficulty import Difficulty
from blocklang.catalogue.facts import Facts
from blocklang.cutting.words import with_unit
from blocklang.geometry import TICKS_PER_INCH
from blocklang_gallery import words

#: The last of each range but the highest.
PATCHES: Final = (9, 24, 60)
FABRICS: Final = (2, 3, 4)
SIZES: Final = {
    LengthUnit.INCH: (6, 9, 12),
    LengthUnit.CENTIMETRE: (15, 25, 30),
    LengthUnit.MILLIMETRE: (150, 250, 300),
}
#: A block this much larger (ticks) still counts as of a size: no ruler shows it.
_NEAR: Final = TICKS_PER_INCH // 32

Choice = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Filter:
    """One question about blocks: its choices (value and words), and which of them a block falls under."""

    name: str
    label: str
    choices: tuple[Choice, ...]
    value_of: Callable[[Facts], str]

    def among(self, facts: Iterable[Facts]) -> tuple[Choice, ...]:
        """Return the choices that some block falls under."""
        there = {self.value_of(one) for one in facts}
        return tuple(choice for choice in self.choices if choice[0] in there)


def filters_for(all_facts: tuple[Facts, ...], unit: LengthUnit) -> tuple[Filter, ...]:
    """Return every question, in the order in which the page asks."""
    families = sorted({facts.family for facts in all_facts}, key=family_order)
    levels = [level.value for level in Difficulty]
    sizes = SIZES[unit]
    return (
        Filter("family", words.FIND_FAMILY, _same(families, words.family_title), lambda facts: facts.family or "-"),
        Filter("difficulty", words.FIND_DIFFICULTY, _same(levels, words.difficulty), lambda facts: facts.difficulty),
        Filter("patches", words.FIND_PATCHES, _ranges(PATCHES), lambda facts: _range_of(facts.patches, PATCHES)),
        Filter("setin", words.FIND_SET_IN, _same(words.HOW_MANY, words.HOW_MANY.__getitem__), _set_in),
        Filter("size", words.FIND_SIZE, _lengths(sizes, unit), lambda facts: _size(facts, sizes, unit)),
        Filter("fabrics", words.FIND_FABRICS, _ranges(FABRICS), lambda facts: _range_of(facts.fabrics, FABRICS)),
    )


def family_order(family: str) -> tuple[bool, str]:
    """Return what families are sorted by: the nameless one comes last."""
    return family == "", family


def _same(values: Iterable[str], said: Callable[[str], str]) -> tuple[Choice, ...]:
    return tuple((value or "-", said(value)) for value in values)


def _ranges(lasts: tuple[int, ...]) -> tuple[Choice, ...]:
    """Name the ranges of whole numbers that end with these; one number alone is named as it is."""
    named = [words.at_most(str(lasts[0]))]
    for before, last in zip(lasts, lasts[1:], strict=False):
        named.append(str(last) if last == before + 1 else words.from_to(str(before + 1), str(last)))
    return tuple((str(number), name) for number, name in enumerate([*named, words.more_than(str(lasts[-1]))]))


def _lengths(lasts: tuple[int, ...], unit: LengthUnit) -> tuple[Choice, ...]:
    said = [with_unit(str(last), unit) for last in lasts]
    between = [words.over_to(before, last) for before, last in zip(said, said[1:], strict=False)]
    return tuple(
        (str(number), name) for number, name in enumerate([words.at_most(said[0]), *between, words.more_than(said[-1])])
    )


def _range_of(number: float, lasts: Iterable[float]) -> str:
    return str(sum(number > last for last in lasts))


def _size(facts: Facts, sizes: tuple[int, ...], unit: LengthUnit) -> str:
    lasts = (size * TICKS_PER_INCH / unit.per_inch + _NEAR for size in sizes)
    return _range_of(max(facts.width, facts.height), lasts)


def _set_in(facts: Facts) -> str:
    return words.SOME if facts.set_in else words.NO
