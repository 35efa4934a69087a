"""Working out the facts about a block from its drawing and its sewing order."""

from blocklang.assembly.values import Assembly, JoinKind
from blocklang.catalogue.difficulty import Hardness, difficulty_of
from blocklang.catalogue.facts import Facts
from blocklang.catalogue.shapes import narrowest, shape_of, sharpest
from blocklang.graph.counting import count_seams


def facts_of(assembly: Assembly) -> Facts:
    """Return the facts about a block whose sewing order is known."""
    block, kinds = assembly.graph.block, [join.kind for join in assembly.joins]
    hardness = Hardness(
        patches=len(block.patches),
        set_in=kinds.count(JoinKind.SET_IN),
        pivots=assembly.pivots.count,
        partials=assembly.partials.count,
        curves=_curved_joins(assembly),
        steps=len(assembly.steps),
        narrowest=min((narrowest(patch.outline) for patch in block.patches), default=0),
        meeting=max((len(junction.ends) for junction in assembly.graph.junctions if junction.is_inner), default=0),
        sharpest=min((sharpest(patch.outline) for patch in block.patches), default=90),
    )
    difficulty, because = difficulty_of(hardness, block.unit)
    width, height = block.size
    credit = block.credits[0] if block.credits else None
    return Facts(
        block.name, block.family, shape_of(block.outline), block.unit.value, width, height, len(block.fabrics),
        hardness.patches, count_seams(assembly.graph), hardness.set_in, hardness.pivots, hardness.partials,
        hardness.curves, hardness.steps, hardness.narrowest, difficulty.value, because,
        credit.author if credit else "", credit.licence if credit else "", credit.source if credit else "",
    )  # fmt: skip


def _curved_joins(assembly: Assembly) -> int:
    """Count the joins with a curve in their path, whatever else they are."""
    segments = assembly.graph.segments
    return sum(any(segments[t.segment].edge.arc is not None for t in join.path) for join in assembly.joins)
