"""What a cutting method is, and what it answers when it is shown a patch."""

from collections.abc import Callable
from dataclasses import dataclass

from blocklang.cutting.offers import Offers, offers_nothing
from blocklang.cutting.values import Lay
from blocklang.geometry import Outline


@dataclass(frozen=True, slots=True)
class Claim:
    """How a method would cut a patch; lengths are exact inches, seam allowances included.

    `cut`, `yields` and `angle` are those of `Piece`. `lay` says how the shapes lie along a strip: its width is
    `cut[0]` (for upright shapes whichever side wastes less). `handed` tells that the mirror image is cut another way,
    so that the two cannot come from one shape. `along` is the edge of the patch that lies along the strip.
    `lean` is how far the straight grain is turned from that edge, in radians counterclockwise. `marks` are lengths that
    are marked on the shape before its corners are cut off. `pose` is how a patch of a fabric that is
    never turned lies in its shape, "" for all others; methods leave it alone. `how` goes into the sentence that says how to cut, for
    methods that the program has no words for.
    """

    cut: tuple[float, ...]
    lay: Lay
    grain: str
    yields: int = 1
    angle: float | None = None
    handed: bool = False
    along: int | None = None
    how: str = ""
    marks: tuple[float, ...] = ()
    lean: float = 0.0
    pose: str = ""


Claims = Callable[[Outline, float, tuple[int, ...]], Claim | None]


def claims_nothing(outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
    """Claim no patch: the answer of methods that make several units at once."""
    del outline, allowance, outside
    return None


@dataclass(frozen=True, slots=True)
class CuttingMethod:
    """A way to cut patches, or to make several units at once.

    `claims` is given the finished outline of a patch (counterclockwise, in ticks, no corner on a straight run), the
    seam allowance in inches, and the edges that must lie on the straight grain: those on the outside of the block, or
    of a small unit that is handled alone. It answers None when the method does not suit. Methods are asked from the
    highest priority down, and by name where those are equal; the first that claims a patch cuts it.

    `offers` is given the units of the sewing order that are equal (see `EqualUnits`) and answers with another way to cut
    and sew them, or None. An offer changes nothing: it is told beside the cutting list.
    """

    name: str
    summary: str
    priority: int
    claims: Claims = claims_nothing
    offers: Offers = offers_nothing


def ask(
    methods: tuple[CuttingMethod, ...], outline: Outline, allowance: float, outside: tuple[int, ...]
) -> tuple[str, Claim] | None:
    """Return the name of the first method that claims a patch, and its claim."""
    for method in methods:
        claim = method.claims(outline, allowance, outside)
        if claim is not None:
            return method.name, claim
    return None


def in_order(methods: tuple[CuttingMethod, ...]) -> tuple[CuttingMethod, ...]:
    """Return methods in the order in which they are asked."""
    return tuple(sorted(methods, key=lambda method: (-method.priority, method.name)))
