"""Comparing two packs: which blocks changed, and what that means to whoever sews them."""

from collections.abc import Iterator, Mapping
from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple

from blocklang.block import Block, LengthUnit
from blocklang.catalogue.facts import Facts
from blocklang.cutting import format_measure
from blocklang.geometry import TICKS_PER_INCH


class How(StrEnum):
    """What happened to a block between two packs."""

    ADDED = "new"
    REMOVED = "gone"
    CHANGED = "changed"


class Version(NamedTuple):
    """A block as it stands in one of the packs; `facts` is None when no order of sewing was found."""

    data: bytes
    block: Block
    facts: Facts


class Change(NamedTuple):
    """What happened to one block, told in short phrases."""

    name: str
    how: How
    phrases: tuple[str, ...]


def compare(old: Mapping[str, Version], new: Mapping[str, Version]) -> tuple[Change, ...]:
    """Return what changed from one pack to the other, in order of names; blocks that stayed as they were are left out."""
    changes = []
    for name in sorted({*old, *new}):
        if name not in old:
            changes.append(Change(name, How.ADDED, (_told(new[name].facts),)))
        elif name not in new:
            changes.append(Change(name, How.REMOVED, ()))
        elif phrases := tuple(_changes(old[name], new[name])):
            changes.append(Change(name, How.CHANGED, phrases))
    return tuple(changes)


def _told(facts: Facts) -> str:
    return f"{_count(facts.patches, 'patch', 'patches')}, finished {_size(facts)}, {facts.difficulty}"


def _changes(old: Version, new: Version) -> Iterator[str]:
    said = [*_about_size(old, new), *_about_sewing(old.facts, new.facts), *_about_fabrics(old.block, new.block)]
    if not said and _outlines(old.block) != _outlines(new.block):
        said.append("patches drawn differently")
    if not said and _wishes(old.block) != _wishes(new.block):
        said.append("sewn or pressed in another way")
    said += _about_credit(old.facts, new.facts)
    if not said and old.data != new.data:
        said.append("only its words or its layout")
    yield from said


def _about_size(old: Version, new: Version) -> Iterator[str]:
    if old.facts.title != new.facts.title:
        yield f"now called “{new.facts.title}”"
    if (old.facts.width, old.facts.height) != (new.facts.width, new.facts.height):
        yield f"finished {_size(new.facts)} instead of {_size(old.facts)}"
    if old.block.seam_allowance != new.block.seam_allowance:
        unit = LengthUnit(new.facts.unit)
        yield f"seam allowance {_length(new.block.seam_allowance, unit)} instead of {_length(old.block.seam_allowance, unit)}"


def _about_sewing(old: Facts, new: Facts) -> Iterator[str]:
    yield from _more(old.patches, new.patches, "patch", "patches")
    yield from _now(old.set_in, new.set_in, "set in")
    if old.set_in == new.set_in:
        yield from _more(old.pivots, new.pivots, "turn of the needle", "turns of the needle")
    yield from _now(old.partials, new.partials, "sewn in part first")
    yield from _now(old.curves, new.curves, "curved")
    if (old.patches, old.set_in, old.partials, old.curves) == (new.patches, new.set_in, new.partials, new.curves):
        yield from _more(old.seams, new.seams, "seam", "seams")
    yield from _more(old.steps, new.steps, "different step", "different steps")
    if old.difficulty != new.difficulty:
        yield f"now {new.difficulty}, was {old.difficulty}"


def _about_fabrics(old: Block, new: Block) -> Iterator[str]:
    before, after = ({fabric.id: fabric for fabric in block.fabrics} for block in (old, new))
    yield from _more(len(before), len(after), "fabric", "fabrics")
    for name in after:
        if name in before and before[name] != after[name]:
            if before[name].colour != after[name].colour:
                yield f"{name} is {after[name].colour} instead of {before[name].colour}"
            else:
                yield f"{name} is {after[name].value} and {after[name].role}"
    cut = [[patch.fabric for patch in block.patches] for block in (old, new)]
    if set(before) == set(after) and len(cut[0]) == len(cut[1]) and cut[0] != cut[1]:
        moved = sum(a != b for a, b in zip(*cut, strict=True))
        yield f"{_count(moved, 'patch', 'patches')} of another fabric"


def _about_credit(old: Facts, new: Facts) -> Iterator[str]:
    if old.author != new.author:
        yield f"by {new.author or 'nobody'} instead of {old.author or 'nobody'}"
    if old.licence != new.licence:
        yield f"licence {new.licence or 'none'} instead of {old.licence or 'none'}"


def _outlines(block: Block) -> list[object]:
    return sorted((repr(patch.outline) for patch in block.patches), key=str)


def _wishes(block: Block) -> list[str]:
    """Return what the author says about the sewing, without the places in the file."""
    names = ("patches", "patch", "between", "name", "at", "sense", "toward", "fabric", "away", "columns")
    return [f"{type(wish).__name__} {[getattr(wish, name, None) for name in names]}" for wish in block.wishes]


def _more(before: int, after: int, one: str, many: str) -> Iterator[str]:
    if after != before:
        yield f"{_count(abs(after - before), one, many)} {'more' if after > before else 'fewer'}"


def _now(before: int, after: int, what: str) -> Iterator[str]:
    """Tell how many seams are of a kind now, or are of it no more."""
    if after > before:
        yield f"{_count(after - before, 'seam', 'seams')} {'now' if not before else 'more'} {what}"
    elif after < before:
        yield f"{_count(before - after, 'seam', 'seams')} no longer {what}"


def _count(count: int, one: str, many: str) -> str:
    return f"{count} {one if count == 1 else many}"


def _size(facts: Facts) -> str:
    unit = LengthUnit(facts.unit)
    width, height = _length(facts.width, unit), _length(facts.height, unit)
    return width if width == height else f"{width} × {height}"


def _length(ticks: int, unit: LengthUnit) -> str:
    """Return a length to the nearest sixteenth of an inch or millimetre."""
    mark = Fraction(1, 16) if unit is LengthUnit.INCH else Fraction(10, 254)
    return format_measure(round(Fraction(ticks, TICKS_PER_INCH) / mark) * mark, unit)
