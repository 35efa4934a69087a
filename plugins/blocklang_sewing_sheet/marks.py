"""Which marks of the step pictures a sheet has to explain."""

from collections.abc import Iterator

from blocklang_drawing import Mark

from blocklang.plan import SewingPlan


def used_marks(plan: SewingPlan) -> tuple[Mark, ...]:
    """Return the marks that the pictures of a plan show, in the order of the key."""
    used = set(_used(plan))
    return tuple(mark for mark in Mark if mark in used)


def _used(plan: SewingPlan) -> Iterator[Mark]:
    yield Mark.SEAM
    for join in (join for step in plan.steps for join in step.joins):
        yield from (Mark.STOP if stops else Mark.RAW_EDGE for stops in (join.start_stops, join.end_stops))
        yield from (Mark.OPEN if pressed.toward is None else Mark.PRESS for pressed in join.press)
        if join.pivots:
            yield Mark.PIVOT
        if join.curve is not None:
            yield Mark.QUARTER
