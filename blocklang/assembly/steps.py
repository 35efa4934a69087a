"""Telling equal joins as one step, small units before large ones, one placed block after another."""

from blocklang.assembly.choosing import Chooser
from blocklang.assembly.joining import Made, Sewing
from blocklang.assembly.likeness import Key
from blocklang.assembly.values import Step


def steps_of(sewing: Sewing, chooser: Chooser) -> tuple[Step, ...]:
    """Return the steps; making equal units, wherever they go, is one step."""
    alike: dict[Key, list[Made]] = {}
    for made in sewing.made:
        alike.setdefault(_sameness(sewing, chooser, made), []).append(made)
    groups = sorted(alike.values(), key=lambda group: _rank(chooser, group))
    return tuple(_step(sewing, group) for group in groups)


def _sameness(sewing: Sewing, chooser: Chooser, made: Made) -> Key:
    kinds = tuple(sewing.joins[index].kind for index in made.joins)
    if made.region.open or len(sewing.joins[made.joins[0]].units) == 1:
        return "once", made.unit
    return (*chooser.likeness.key(made.region.patches)[0], kinds)


def _rank(chooser: Chooser, group: list[Made]) -> tuple[int, int, int]:
    """A unit is larger than what it is made of, so ranking by size keeps every step after the steps it needs."""
    places = [_group_place(chooser, made) for made in group]
    return min(places), len(group[0].region.patches), group[0].joins[0]


def _group_place(chooser: Chooser, made: Made) -> int:
    names = {chooser.group_of(patch) for patch in made.region.patches}
    return chooser.group_place(names.pop()) if len(names) == 1 else chooser.group_place("")


def _step(sewing: Sewing, group: list[Made]) -> Step:
    joins = tuple(index for made in group for index in made.joins)
    return Step(sewing.joins[joins[0]].kind, joins, len(group), tuple(made.unit for made in group))
