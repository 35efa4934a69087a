"""When piecing over papers is worth offering: where a machine would have to turn more often than there are patches."""

from dataclasses import dataclass

from blocklang.assembly.values import Assembly
from blocklang.wording import Saying, say, say_number


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
        return Offer(True, pivots, patches, _why(pivots, patches))
    return Offer(False, pivots, patches, _why_not(pivots))


def _why(pivots: int, patches: int) -> Saying:
    return say_number(
        "By machine this block takes {pivots} pivots for its {count} patches; over papers nothing is set in.",
        "By machine this block takes {pivots} pivots for its {count} patches; over papers nothing is set in.",
        patches,
        pivots=pivots,
    )


def _why_not(pivots: int) -> Saying:
    if not pivots:
        return say("This block can be sewn by machine without a set-in seam; the sewing sheet shows how.")
    return say_number(
        "This block can also be sewn by machine, its set-in seams with one pivot in all; the sewing sheet shows how.",
        "This block can also be sewn by machine, its set-in seams with {count} pivots in all; the sewing sheet shows how.",
        pivots,
    )
