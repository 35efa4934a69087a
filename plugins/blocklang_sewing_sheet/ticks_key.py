"""Under which name a browser keeps the ticks of a sheet: another plan, other ticks; another paper or unit, the same."""

from collections.abc import Iterator
from hashlib import sha256

from blocklang.plan import SewingPlan


def ticks_key(plan: SewingPlan) -> str:
    """Return the block's name and a digest of what is sewn to what, in which order."""
    digest = sha256("\n".join(_told(plan)).encode("utf-8", "replace")).hexdigest()[:16]
    return f"blocklang sewing-sheet {plan.block.name} {digest}"


def _told(plan: SewingPlan) -> Iterator[str]:
    for patch in plan.block.patches:
        yield f"{patch.id} {patch.fabric} {' '.join(f'{e.start.x},{e.start.y}' for e in patch.outline.edges)}"
    for step in plan.steps:
        yield f"{step.number} {step.kind.value} {step.times} {step.title}"
        yield from (f"{' '.join(join.units)} {join.makes} {join.start_stops} {join.end_stops}" for join in step.joins)
