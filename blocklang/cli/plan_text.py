"""A plan as plain text for a terminal."""

from collections.abc import Iterator

from blocklang.assembly.values import Count
from blocklang.block import LengthUnit
from blocklang.cli.lengths import shown_size
from blocklang.cli.why_text import order_lines, why_lines
from blocklang.plan import PlanStep, SewingPlan


def plan_to_text(plan: SewingPlan, why: bool = False) -> str:
    """Return the steps in order, then what is proven about them; on request, why they come in this order."""
    unit = plan.block.unit
    reasons = order_lines(plan) if why else ()
    return "\n".join([*_heading(plan, unit), "", *_steps(plan, unit, why), "", *_proofs(plan), *reasons])


def _heading(plan: SewingPlan, unit: LengthUnit) -> Iterator[str]:
    yield f"{plan.block.name}, finished {shown_size(plan.block.size, unit)}"
    yield f"{_counted(len(plan.block.patches), 'patch', 'patches')}, {_counted(len(plan.steps), 'step', 'steps')}"


def _steps(plan: SewingPlan, unit: LengthUnit, why: bool) -> Iterator[str]:
    for step in plan.steps:
        yield f"{step.number:>3}. {step.title}{'' if step.times == 1 else f' ({step.times} times)'}"
        yield from (f"     {line}" for line in _below(plan, step, unit))
        if why:
            yield from (f"     {line}" for line in why_lines(step))


def _below(plan: SewingPlan, step: PlanStep, unit: LengthUnit) -> Iterator[str]:
    """Tell one instance of the step: the others are the same."""
    for join in step.joins[: max(1, len(step.joins) // step.times)]:
        if len(join.units) == 2:
            yield f"Sew {join.units[0]} to {join.units[1]}."
        toward = sorted({plan.block.patches[p.toward].fabric for p in join.press if p.toward is not None})
        if toward:
            yield f"Press toward {' and '.join(toward)}."
        if any(pressed.toward is None for pressed in join.press):
            yield "Press open." if not toward else "Press the rest open."
    for version in step.versions:
        how = ", pressed the other way" if version.opposite else ""
        verb = "is" if len(version.makes) == 1 else "are"
        yield f"{len(version.makes)} of them {verb} version {version.letter}{how}."
    if step.measures is not None:
        yield f"It now measures {shown_size(step.measures, unit)}."


def _proofs(plan: SewingPlan) -> Iterator[str]:
    yield _counted_cost("set-in corner", plan.assembly.pivots)
    yield _counted_cost("partial seam", plan.assembly.partials)
    if plan.pressing.techniques:
        yield f"Pressed for {' and '.join(plan.pressing.techniques)}."
    locked, lockable = len(plan.pressing.locked), len(plan.pressing.lockable)
    yield _locks(locked, lockable)


def _locks(locked: int, lockable: int) -> str:
    """Say how many junctions lock."""
    if lockable == 0:
        return "No seams cross, so nothing has to lock."
    if locked == lockable:
        return (
            "The one junction that can lock does." if lockable == 1 else f"All {lockable} junctions that can lock do."
        )
    return f"{locked} of the {_counted(lockable, 'junction', 'junctions')} that can lock {'does' if locked == 1 else 'do'}."


def _counted_cost(what: str, count: Count) -> str:
    fewest = "no order needs fewer" if count.proven else f"at least {count.minimum} are needed"
    return f"{_counted(count.count, what, f'{what}s')}; {fewest}." if count.count else f"No {what}s."


def _counted(count: int, one: str, many: str) -> str:
    return f"{count} {one if count == 1 else many}"
