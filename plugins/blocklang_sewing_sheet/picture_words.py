"""What the pictures show, in words, for those who cannot see them."""

from typing import Final

from blocklang_drawing import Mark

from blocklang.block import SpinSense
from blocklang.plan import PlanStep, SewingPlan
from blocklang_sewing_sheet.contents import FabricEntry, StepEntry
from blocklang_sewing_sheet.naming import listed

MARKS: Final = {
    Mark.SEAM: "A dashed line.",
    Mark.STOP: "A dashed line that ends in a dot, short of the edge.",
    Mark.RAW_EDGE: "A dashed line that ends in a bar at the edge.",
    Mark.PIVOT: "A dashed line that turns at a small diamond.",
    Mark.QUARTER: "A dashed line with three short strokes across it.",
    Mark.PRESS: "An arrow across a seam.",
    Mark.OPEN: "An arrow with two heads across a seam.",
}


def tell_block(plan: SewingPlan, fabrics: tuple[FabricEntry, ...]) -> str:
    """Say what the finished block is made of."""
    count = len(plan.block.patches)
    names = [fabric.title for fabric in fabrics]
    said = names[0] if len(names) == 1 else f"{', '.join(names[:-1])} and {names[-1]}"
    return f"{plan.block.name}, finished: {count} {'patch' if count == 1 else 'patches'} in {said}."


def tell_swatch(fabric: FabricEntry) -> str:
    """Say whose swatch it is."""
    return f"A swatch of {fabric.title}."


def tell_step(plan: SewingPlan, step: PlanStep, entry: StepEntry) -> str:
    """Say what lies on either side of the arrow."""
    before = entry.parts or f"the pieces of step {step.number}"
    after = "the finished block" if step.makes[0] == plan.units[-1].name else listed(plan, step.makes[0])
    return f"Before: {before}, laid apart, with the sewing lines marked. After: {after}, with an arrow for each pressed seam."


def tell_pressing(plan: SewingPlan) -> str:
    """Say what the map of the back shows."""
    spun = sum(spin.sense is not SpinSense.NONE for spin in plan.pressing.spins)
    rings = f", and {spun} spun {'junction' if spun == 1 else 'junctions'} ringed" if spun else ""
    return f"The back of {plan.block.name}: each seam allowance with an arrow the way it is pressed{rings}."
