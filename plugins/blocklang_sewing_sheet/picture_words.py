"""What the pictures show, in words, for those who cannot see them."""

from typing import Final

from blocklang_drawing import Mark

from blocklang.block import SpinSense
from blocklang.plan import PlanStep, SewingPlan
from blocklang.wording import Saying, say, say_number
from blocklang.wording import listed as listed_of
from blocklang_sewing_sheet.contents import FabricEntry, StepEntry
from blocklang_sewing_sheet.naming import listed

MARKS: Final = {
    Mark.SEAM: say("A dashed line."),
    Mark.STOP: say("A dashed line that ends in a dot, short of the edge."),
    Mark.RAW_EDGE: say("A dashed line that ends in a bar at the edge."),
    Mark.PIVOT: say("A dashed line that turns at a small diamond."),
    Mark.QUARTER: say("A dashed line with three short strokes across it."),
    Mark.PRESS: say("An arrow across a seam."),
    Mark.OPEN: say("An arrow with two heads across a seam."),
}


CORNER: Final = say(
    "The corner from close by: on both pieces a dashed line along each edge, and a small diamond where it turns."
)
CORNER_CAPTION: Final = say("The corner from close by")


def tell_block(plan: SewingPlan, fabrics: tuple[FabricEntry, ...]) -> Saying:
    """Say what the finished block is made of."""
    return say_number(
        "{block}, finished: {count} patch in {fabrics}.",
        "{block}, finished: {count} patches in {fabrics}.",
        len(plan.block.patches),
        block=plan.block.name,
        fabrics=listed_of(fabric.title for fabric in fabrics),
    )


def tell_swatch(fabric: FabricEntry) -> Saying:
    """Say whose swatch it is."""
    return say("A swatch of {fabric}.", fabric=fabric.title)


def tell_step(plan: SewingPlan, step: PlanStep, entry: StepEntry) -> Saying:
    """Say what lies on either side of the arrow."""
    whole = step.makes[0] == plan.units[-1].name
    return say(
        "Before: {before}, laid apart, with the sewing lines marked. "
        "After: {after}, with an arrow for each pressed seam.",
        before=entry.parts or say("the pieces of step {number}", number=step.number),
        after=say("the finished block") if whole else listed(plan, step.makes[0]),
    )


def tell_pressing(plan: SewingPlan) -> Saying:
    """Say what the map of the back shows."""
    spun = sum(spin.sense is not SpinSense.NONE for spin in plan.pressing.spins)
    if not spun:
        return say(
            "The back of {block}: each seam allowance with an arrow the way it is pressed.", block=plan.block.name
        )
    return say_number(
        "The back of {block}: each seam allowance with an arrow the way it is pressed, and {count} spun junction ringed.",
        "The back of {block}: each seam allowance with an arrow the way it is pressed, and {count} spun junctions ringed.",
        spun,
        block=plan.block.name,
    )
