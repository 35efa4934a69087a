"""What a step does, in a few words."""

from collections.abc import Sequence

from blocklang.assembly.values import Assembly, JoinKind, Step
from blocklang.cutting.called import PatchName, several, the
from blocklang.plan.names import instances
from blocklang.wording import Saying, say, say_number


def step_title(assembly: Assembly, step: Step, names: tuple[str, ...], labels: tuple[str, ...]) -> Saying:
    """Say in a few words what a step does."""
    joins = [assembly.joins[index] for index in instances(step)[0]]
    parts = [
        labels[unit] if unit < len(labels) else unit_label(names[unit])
        for unit in (joins[0].units[0], *(j.units[-1] for j in joins))
    ]
    match step.kind:
        case JoinKind.PARTIAL_FINISH:
            return say("Finish the partial seam")
        case _ if len(joins[0].units) == 1:
            return say("Close the ring of {parts}", parts=parts[0])
        case JoinKind.PARTIAL:
            return say("Sew {first} to {second} with a partial seam", first=_the(parts[0]), second=_the(parts[1]))
        case JoinKind.SET_IN:
            return say("Set in {parts}", parts=_counted(parts[1:]))
        case JoinKind.CURVED if len(joins) == 1:
            return say("Sew the curve: {first} to {second}", first=_the(parts[0]), second=_the(parts[1]))
    return _joined(parts)


def unit_label(name: str) -> Saying:
    """Return what to call a unit: by its letter."""
    return say("unit {letter}", letter=name.removeprefix("unit ").split(".")[0].split("-")[0])


def _joined(parts: list[str]) -> Saying:
    if len(parts) == 2 and parts[0] != parts[1]:
        return say("Sew {first} to {second}", first=_the(parts[0]), second=_the(parts[1]))
    if len(set(parts)) == 1:
        return say("Sew {parts} together", parts=_counted(parts))
    if len(set(parts[1:])) == 1:
        return say("Sew {first} to {second}", first=_counted(parts[1:]), second=_the(parts[0]))
    return say_number("Sew a row of {count}", "Sew a row of {count}", len(parts))


def _counted(parts: Sequence[str]) -> Saying:
    """Say parts together: "the corner", "two diamonds", "4 of unit A"."""
    if len(set(parts)) > 1:
        return say_number("{count} parts", "{count} parts", len(parts))
    if len(parts) == 1:
        return _the(parts[0])
    return _units(parts[0], len(parts)) if _is_unit(parts[0]) else several(parts[0], len(parts))


def _the(part: str) -> Saying:
    if not _is_unit(part):
        return the(part)
    return say("unit {letter}", context="in a sentence, where a noun has: the", letter=part.removeprefix("unit "))


def _units(unit: str, count: int) -> Saying:
    letter = unit.removeprefix("unit ")
    if count == 2:
        return say("two of unit {letter}", letter=letter)
    return say("{count} of unit {letter}", count=count, letter=letter)


def _is_unit(part: str) -> bool:
    return part.startswith("unit ") and not isinstance(part, PatchName)
