"""Names for units, junctions and steps: from the names in the file, never from the order of discovery."""

import re

from blocklang.assembly.values import Assembly, JoinKind, Step
from blocklang.graph.values import OUTSIDE, PatchGraph

#: Ends in a letter of its own ("unit A", "patch B"), so that it has no plural.
_LETTERED = re.compile(r" [A-Z]+$")


def unit_names(assembly: Assembly) -> tuple[str, ...]:
    """Return a name for each unit: a patch's own id, "A.3" for the third unit that step A makes, "A.3-2" on the way."""
    patches = assembly.graph.block.patches
    names = [patch.id for patch in patches]
    names.extend("" for _ in assembly.joins)
    for place, step in enumerate(assembly.steps):
        for turn, joins in enumerate(instances(step)):
            name = letter(place) + (f".{turn + 1}" if step.times > 1 else "")
            for number, join in enumerate(joins, 1):
                last = number == len(joins)
                names[assembly.joins[join].makes] = name if last else f"{name}-{number}"
    taken = {patch.id for patch in patches}
    return tuple(
        f"unit {name}" if name in taken and place >= len(patches) else name for place, name in enumerate(names)
    )


def instances(step: Step) -> tuple[tuple[int, ...], ...]:
    """Return the joins of each time that a step is made."""
    size = len(step.joins) // step.times
    return tuple(step.joins[start : start + size] for start in range(0, len(step.joins), size))


def letter(place: int) -> str:
    """Return A to Z, then AA, AB and so on."""
    name = ""
    while place >= 0:
        name = chr(ord("A") + place % 26) + name
        place = place // 26 - 1
    return name


def junction_names(graph: PatchGraph) -> tuple[str, ...]:
    """Return a name for each junction: the point that the file names there, or the patches that meet."""
    named: dict[tuple[int, int], str] = {}
    for point in graph.block.points:
        named.setdefault(point.at, point.name)
    raw = [_junction_name(graph, index, named) for index in range(len(graph.junctions))]
    seen: dict[str, int] = {}
    for place, name in enumerate(raw):
        seen[name] = seen.get(name, 0) + 1
        raw[place] = name if seen[name] == 1 else f"{name}~{seen[name]}"
    return tuple(raw)


def _junction_name(graph: PatchGraph, index: int, named: dict[tuple[int, int], str]) -> str:
    junction = graph.junctions[index]
    if junction.at in named:
        return named[junction.at]
    sides = {side for end in junction.ends for side in graph.segments[end.segment].patches if side != OUTSIDE}
    return "+".join(sorted(graph.block.patches[side].id for side in sides))


def step_title(assembly: Assembly, step: Step, names: tuple[str, ...], labels: tuple[str, ...]) -> str:
    """Say in a few words what a step does."""
    joins = [assembly.joins[index] for index in instances(step)[0]]
    parts = [
        labels[unit] if unit < len(labels) else _lettered(names[unit])
        for unit in (joins[0].units[0], *(j.units[-1] for j in joins))
    ]
    match step.kind:
        case JoinKind.PARTIAL_FINISH:
            return "Finish the partial seam"
        case _ if len(joins[0].units) == 1:
            return f"Close the ring of {parts[0]}"
        case JoinKind.PARTIAL:
            return f"Sew {_the(parts[0])} to {_the(parts[1])} with a partial seam"
        case JoinKind.SET_IN:
            return f"Set in {_counted(parts[1:])}"
        case JoinKind.CURVED if len(joins) == 1:
            return f"Sew the curve: {_the(parts[0])} to {_the(parts[1])}"
    if len(joins) == 1:
        if parts[0] == parts[1]:
            return f"Sew {_counted(parts)} together"
        return f"Sew {_the(parts[0])} to {_the(parts[1])}"
    if len(set(parts[1:])) == 1 and parts[0] != parts[1]:
        return f"Sew {_counted(parts[1:])} to {_the(parts[0])}"
    return f"Sew {_counted(parts)} together" if len(set(parts)) == 1 else f"Sew a row of {len(parts)}"


def _lettered(name: str) -> str:
    """Return what to call a unit in a title: by its letter."""
    return "unit " + name.removeprefix("unit ").split(".")[0].split("-")[0]


def _counted(parts: list[str]) -> str:
    """Say parts together: "the corner", "two diamonds", "4 of unit A"."""
    if len(parts) == 1:
        return _the(parts[0])
    if len(set(parts)) > 1:
        return f"{len(parts)} parts"
    number = "two" if len(parts) == 2 else str(len(parts))
    return f"{number} of {parts[0]}" if _LETTERED.search(parts[0]) else f"{number} {_plural(parts[0])}"


def _the(part: str) -> str:
    return part if part.startswith("unit ") else f"the {part}"


def _plural(name: str) -> str:
    if name.endswith(("x", "ch", "sh")):
        return f"{name}es"
    return name if name.endswith("s") else f"{name}s"
