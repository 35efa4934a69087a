"""The units of a step laid apart with a gap, and where they touch once they are sewn."""

from dataclasses import dataclass

from blocklang.plan import PlanJoin, PlanStep, SewingPlan
from blocklang_drawing.contacts import Contact, contacts_of
from blocklang_drawing.moving_apart import move_apart
from blocklang_drawing.placing import Placed, place_unit


@dataclass(frozen=True, slots=True)
class LaidApart:
    """The units of one making of a step, in order of joining, and where they touch once sewn."""

    units: tuple[Placed, ...]
    contacts: tuple[Contact, ...]
    joins: tuple[PlanJoin, ...]


def lay_apart(plan: SewingPlan, step: PlanStep) -> LaidApart:
    """Lay apart the units that the first making of a step joins."""
    joins = step.joins[: len(step.joins) // max(step.times, 1)]
    patches = {unit.name: unit.patches for unit in plan.units}
    names = _parts(joins)
    owner = {patch: index for index, name in enumerate(names) for patch in patches[name]}
    contacts = tuple(contact for join in joins for contact in contacts_of(plan, join, owner))
    moves = move_apart(plan, joins, [patches[name] for name in names], contacts)
    units = tuple(place_unit(plan.graph, name, patches[name], moves[index]) for index, name in enumerate(names))
    return LaidApart(units, contacts, joins)


def _parts(joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    made: set[str] = set()
    parts: dict[str, None] = {}
    for join in joins:
        parts.update((name, None) for name in join.units if name not in made)
        made.add(join.makes)
    return tuple(parts)
