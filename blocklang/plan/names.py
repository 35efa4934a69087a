"""Names for units and junctions: from the names in the file, never from the order of discovery."""

from blocklang.assembly.values import Assembly, Step
from blocklang.graph.values import OUTSIDE, PatchGraph


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
