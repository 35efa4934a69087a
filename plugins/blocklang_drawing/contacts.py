"""Where the units of a step touch once they are sewn: one contact for each seam segment of each join."""

from dataclasses import dataclass

from blocklang.plan import PlanJoin, SewingPlan


@dataclass(frozen=True, slots=True)
class Contact:
    """One seam segment of a join, with the unit on its left and on its right, in the direction of the path."""

    join: int
    segment: int
    forward: bool
    left: int
    right: int


def contacts_of(plan: SewingPlan, join: PlanJoin, owner: dict[int, int]) -> list[Contact]:
    """Return the contacts of a join in order along its path; `owner` gives the unit of each patch."""
    found = []
    for travelled in plan.assembly.joins[join.index].path:
        segment = plan.graph.segments[travelled.segment]
        left, right = segment.patches if travelled.forward else (segment.right, segment.left)
        found.append(Contact(join.index, travelled.segment, travelled.forward, owner[left], owner[right]))
    return found
