"""Why a block is sewn in this order, in plain text."""

from collections.abc import Iterator

from blocklang.assembly import StraightVersion, Why, straight_version
from blocklang.paper_piecing import offer_papers
from blocklang.plan import PlanJoin, PlanStep, SewingPlan

_SENTENCES = {
    Why.ONLY_WAY: "It comes apart in no other way that is as easy.",
    Why.ASKED: "The file asks for it.",
    Why.FINISHED_UNITS: "Units that are finished stay whole until they meet.",
    Why.ROUND_A_BODY: "Equal pieces go round one middle piece, one after the other.",
    Why.EASY_TO_MEASURE: "The units are rectangles, so each can be measured.",
    Why.FEW_KINDS: "It needs fewer different units.",
    Why.LONG_ROW: "More equal seams are sewn in one go.",
    Why.FEW_JOINS: "It comes together in fewer joins.",
    Why.ROWS_FIRST: "Rows come before columns.",
    Why.FEW_PIVOTS: "It turns at fewer corners.",
    Why.SMALL_SET_IN: "The piece that is set in is the smallest.",
    Why.FEW_TURNS: "The seam of the piece that is set in turns least often.",
    Why.OUTSIDE_LAST: "Pieces on the outside go in last.",
    Why.MANY_AT_ONCE: "More equal pieces go in as one step.",
    Why.FIRST_IN_FILE: "Other ways are as good as this one.",
    Why.RING: "The strips run round in a ring, so one seam is left half open and finished last.",
}


def why_lines(step: PlanStep) -> Iterator[str]:
    """Tell why a step comes as it does, and why its seams stop or turn."""
    yield f"Why: {_SENTENCES[step.why]}"
    for join in step.joins[: len(step.joins) // step.times]:
        yield from _stops(join)
    yield from _turns(step.joins[0])
    if step.kind == "set-in" or step.needle.patches > 1:
        yield f"The largest piece under the needle is {step.needle.unit}, {_patches(step.needle.patches)}."
    if step.chained:
        seams = "Both" if len(step.joins) == 2 else f"All {len(step.joins)}"
        yield f"{seams} seams can be chain-pieced."


def _stops(join: PlanJoin) -> Iterator[str]:
    for stop in join.stops:
        seam = "the rest of this seam is sewn" if stop.resumes else "a partial seam is finished there"
        later = f"{stop.unit} goes in there" if stop.unit else seam
        yield f"It stops short: {later} in step {stop.step}."


def _turns(join: PlanJoin) -> Iterator[str]:
    if join.pivots:
        corners = "the corner" if len(join.pivots) == 1 else f"each of {len(join.pivots)} corners"
        yield f"It turns at {corners} of {join.units[0]} that {join.units[-1]} is set into."


def _patches(count: int) -> str:
    return "1 patch" if count == 1 else f"{count} patches"


def order_lines(plan: SewingPlan) -> Iterator[str]:
    """Tell what the order costs, in the order in which the costs count."""
    order = plan.order
    yield "What counts, in this order: pivots, partial seams, the size of what is set in, how many different steps."
    if order.largest_set_in:
        yield f"The largest piece that is set in has {_patches(order.largest_set_in)}."
    yield _different_units(order.different_steps, order.awkward_units)
    offer = offer_papers(plan.assembly)
    if offer.offered:
        yield f"{offer.reason} `blocklang make paper-pieces` has them."
    version = straight_version(plan.graph)
    if version is not None:
        yield from _straight_lines(plan, version)


def _different_units(steps: int, awkward: int) -> str:
    made = "1 different unit is made" if steps == 1 else f"{steps} different units are made"
    if awkward == 0:
        return f"{made}, and {'it' if steps == 1 else 'each'} can be measured along two sides."
    return (
        f"{made}; {awkward} of them cannot be measured along two sides."
        if steps > 1
        else f"{made}; it has no two sides to measure."
    )


def _straight_lines(plan: SewingPlan, version: StraightVersion) -> Iterator[str]:
    """Tell how the block could be redrawn without set-in seams."""
    counts: dict[str, int] = {}
    for patch in plan.block.patches:
        if patch.id in version.cut:
            counts[patch.name] = counts.get(patch.name, 0) + 1
    cut = [f"the {name} patch" if count == 1 else f"{count} {name} patches" for name, count in counts.items()]
    listed = " and ".join([", ".join(cut[:-1]), cut[-1]] if len(cut) > 1 else cut)
    patches = len(version.block.patches)
    yield f"To sew it with straight seams only, cut {listed} where a seam would run on: {patches} patches then."
