"""Telling equal joins as one step, small units before large ones, one placed block after another."""

from blocklang.assembly.choosing import Chooser
from blocklang.assembly.joining import Made, Sewing
from blocklang.assembly.likeness import Key
from blocklang.assembly.values import Step


def steps_of(sewing: Sewing, chooser: Chooser) -> tuple[Step, ...]:
    """Return the steps; making equal units, wherever they go, is one step."""
    alike: dict[int, list[Made]] = {}
    for made, structure in zip(sewing.made, _structures(sewing, chooser), strict=True):
        alike.setdefault(structure, []).append(made)
    groups = sorted(alike.values(), key=lambda group: _rank(chooser, group))
    return tuple(_step(sewing, group) for group in groups)


def _structures(sewing: Sewing, chooser: Chooser) -> list[int]:
    """Return a number for each unit made, equal for equal units that are put together in the same way."""
    numbers: dict[Key, int] = {}
    of_unit: dict[int, int] = {}
    for made in sewing.made:
        of_unit[made.unit] = numbers.setdefault(_structure(sewing, chooser, made, of_unit), len(numbers))
    return [of_unit[made.unit] for made in sewing.made]


def _structure(sewing: Sewing, chooser: Chooser, made: Made, of_unit: dict[int, int]) -> Key:
    joins = [sewing.joins[index] for index in made.joins]
    if made.region.open or len(joins[0].units) == 1:
        return "once", made.unit
    parts = tuple(sorted(of_unit.get(unit, -1) for join in joins for unit in join.units))
    kinds = tuple((join.kind, len(join.pivots)) for join in joins)
    return (*chooser.likeness.key(made.region.patches)[0], parts, kinds)


def _rank(chooser: Chooser, group: list[Made]) -> tuple[int, int, int]:
    """A unit is larger than what it is made of, so ranking by size keeps every step after the steps it needs."""
    places = [_group_place(chooser, made) for made in group]
    return min(places), len(group[0].region.patches), group[0].joins[0]


def _group_place(chooser: Chooser, made: Made) -> int:
    names = {chooser.wholes.group_of(patch) for patch in made.region.patches}
    return chooser.wholes.group_place(names.pop()) if len(names) == 1 else chooser.wholes.group_place("")


def _step(sewing: Sewing, group: list[Made]) -> Step:
    joins = tuple(index for made in group for index in made.joins)
    return Step(sewing.joins[joins[0]].kind, joins, len(group), tuple(made.unit for made in group), group[0].why)
