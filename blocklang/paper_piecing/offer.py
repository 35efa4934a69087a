"""When piecing over papers is worth offering: where a machine would have to turn more often than there are patches."""

from dataclasses import dataclass

from blocklang.assembly.values import Assembly


@dataclass(frozen=True, slots=True)
class Offer:
    """Whether papers are offered, and why or why not in one plain sentence."""

    offered: bool
    pivots: int
    patches: int
    reason: str


def offer_papers(assembly: Assembly) -> Offer:
    """Return whether papers are offered: they are when the machine order has more pivots than the block has patches."""
    pivots, patches = assembly.pivots.count, len(assembly.graph.block.patches)
    if pivots > patches:
        reason = (
            f"By machine this block takes {pivots} pivots for its {patches} patches; over papers nothing is set in."
        )
        return Offer(True, pivots, patches, reason)
    return Offer(False, pivots, patches, _why_not(pivots))


def _why_not(pivots: int) -> str:
    if not pivots:
        return "This block can be sewn by machine without a set-in seam; the sewing sheet shows how."
    turns = "one pivot" if pivots == 1 else f"{pivots} pivots"
    return f"This block can also be sewn by machine, its set-in seams with {turns} in all; the sewing sheet shows how."
