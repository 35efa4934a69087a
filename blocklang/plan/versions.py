"""Which units of a step are pressed as which version."""

from blocklang.assembly.values import Assembly
from blocklang.plan.names import letter
from blocklang.plan.values import PlanVersion
from blocklang.pressing.values import Pressed, Pressing

Making = tuple[int, ...]  # the joins that make a unit once


def versions_of(
    assembly: Assembly,
    pressing: Pressing,
    pressed: dict[int, Pressed],
    made: tuple[Making, ...],
    names: tuple[str, ...],
) -> tuple[PlanVersion, ...]:
    """Return the ways in which the units of a step are pressed, that of the first unit first; none when all are alike."""
    ways: dict[tuple[bool | None, ...], list[Making]] = {}
    for joins in made:
        ways.setdefault(_sides(assembly, pressed, joins), []).append(joins)
    if len(ways) < 2:
        return ()
    first = next(iter(ways))
    opposite = tuple(None if side is None else not side for side in first)
    letters = _letters(assembly, pressing, list(ways.values()))
    return tuple(
        PlanVersion(
            letter=letter,
            makes=tuple(names[assembly.joins[joins[-1]].makes] for joins in alike),
            as_first=sides == first,
            opposite=sides == opposite,
        )
        for letter, (sides, alike) in zip(letters, ways.items(), strict=True)
    )


def _letters(assembly: Assembly, pressing: Pressing, ways: list[list[Making]]) -> list[str]:
    """Return a letter for each way: that of its copies where they have one of their own, else the next one free."""
    own = [{_letter(assembly, pressing, assembly.joins[joins[-1]].makes) for joins in alike} for alike in ways]
    found = [next(iter(one)) if len(one) == 1 and sum(one == other for other in own) == 1 else None for one in own]
    free = (letter(place) for place in range(len(ways) + len(own)) if letter(place) not in found)
    return [next(free) if one is None else one for one in found]


def _letter(assembly: Assembly, pressing: Pressing, unit: int) -> str | None:
    """Return the version of the copy that a whole unit lies in; None when it lies in no copy or in several."""
    patches = assembly.graph.block.patches
    letters = {pressing.version_of(patches[patch].group) for patch in assembly.unit_patches[unit]}
    groups = {patches[patch].group[:1] for patch in assembly.unit_patches[unit]}
    return letters.pop() if len(letters) == len(groups) == 1 else None


def _sides(assembly: Assembly, pressed: dict[int, Pressed], joins: Making) -> tuple[bool | None, ...]:
    """Return for each seam of some joins whether it is pressed to the left as it is sewn; None when open."""
    found: list[bool | None] = []
    for index in joins:
        for step in assembly.joins[index].path:
            segment, toward = assembly.graph.segments[step.segment], pressed[step.segment].toward
            on_left = segment.left if step.forward else segment.right
            found.append(None if toward is None else toward == on_left)
    return tuple(found)
