"""Fabrics with a print that must stand upright or be centred: what a ruler can still cut, and what follows from it.

The lengthwise grain of such a fabric runs up the block, so that patches of one shape that are turned against each
other are cut apart from each other.
"""

import math
from collections.abc import Hashable
from dataclasses import dataclass, field, replace

from blocklang.block import Print
from blocklang.cutting import grain_words
from blocklang.cutting.claims import Claim
from blocklang.cutting.sides import long_side_of_right_isosceles
from blocklang.cutting.triangles import half_square, quarter_square
from blocklang.cutting.values import Lay
from blocklang.geometry import Outline
from blocklang.geometry.congruence import SAME_LENGTH
from blocklang.geometry.tolerance import STRAIGHT_ANGLE
from blocklang.wording import Saying, joined, say, say_number

UPRIGHT = "upright"
RISING = "rising"  # a square cut from its lower left corner to its upper right
FALLING = "falling"  # a square cut from its upper left corner to its lower right
MOTIF = "motif"


def as_printed(name: str, claim: Claim, outline: Outline, allowance: float, printed: Print) -> tuple[str, Claim]:
    """Return the method and the claim for a patch of a fabric whose print matters: a ruler's where that keeps it right."""
    if printed is Print.ALL_OVER:
        return name, claim
    if printed is Print.MOTIFS:
        along = next((i for i, edge in enumerate(outline.edges) if edge.arc is None), None)
        return "template", Claim((), Lay.TEMPLATE, grain_words.MOTIF_IN_EACH, handed=True, along=along, pose=MOTIF)
    return _upright(name, claim, outline, allowance) or ("template", _by_template(outline))


def part_of(outline: Outline, claim: Claim) -> int:
    """Return which part of a divided square a patch is: for halves 0 or 1, for quarters 0 to 3."""
    if claim.yields == 1:
        return 0
    turns = round(_pointing(outline) / (math.pi / 2) - (0.5 if claim.yields == 2 else 0)) % 4
    return turns // 2 if claim.yields == 2 else turns


@dataclass(slots=True)
class Poses:
    """The ways that patches of each shape are turned, numbered as they turn up."""

    known: dict[Hashable, list[Outline]] = field(default_factory=dict)

    def of(self, outline: Outline, shape: Hashable) -> int:
        """Return the number of the way that an outline of a shape is turned."""
        ways = self.known.setdefault(shape, [])
        found = next((number for number, way in enumerate(ways) if _is_same_way_up(outline, way)), None)
        if found is not None:
            return found
        ways.append(outline)
        return len(ways) - 1


def _is_same_way_up(outline: Outline, other: Outline) -> bool:
    ring, goal = _from_low_left(outline), _from_low_left(other)
    return any(
        all(math.dist(a, b) <= SAME_LENGTH for a, b in zip(ring[turn:] + ring[:turn], goal, strict=True))
        for turn in range(len(ring))
    )


def _upright(name: str, claim: Claim, outline: Outline, allowance: float) -> tuple[str, Claim] | None:
    if claim.lay is not Lay.UPRIGHT or claim.angle is not None or claim.marks:
        return None
    headings = [edge.departs() for edge in outline.edges]
    if claim.yields == 1:
        return (name, _standing(outline, claim)) if all(map(_is_level_or_plumb, headings)) else None
    long_side = long_side_of_right_isosceles(outline)
    if long_side is None:
        return None
    if _is_level_or_plumb(headings[long_side]):
        quarter = quarter_square(outline, allowance, (long_side,))
        return ("quarter-square-triangle", replace(quarter, pose=UPRIGHT)) if quarter else None
    half = half_square(outline, allowance, ()) if _is_level_or_plumb(headings[long_side - 1]) else None
    pose = RISING if round(_pointing(outline) / (math.pi / 2) - 0.5) % 2 else FALLING
    return ("half-square-triangle", replace(half, pose=pose)) if half else None


def _standing(outline: Outline, claim: Claim) -> Claim:
    """Return the claim of a square or rectangle with its height first: that is how wide its strip is."""
    if len(claim.cut) == 1:
        return replace(claim, pose=UPRIGHT)
    left, low, right, high = outline.bounds()
    short, long = claim.cut
    return replace(claim, cut=(long, short) if high - low > right - left else (short, long), pose=UPRIGHT)


def _by_template(outline: Outline) -> Claim:
    straight = next((i for i, edge in enumerate(outline.edges) if edge.arc is None), None)
    lean = 0.0 if straight is None else math.pi / 2 - outline.edges[straight].departs()
    return Claim((), Lay.TEMPLATE, grain_words.UP_THE_FABRIC, handed=True, along=straight, lean=lean, pose=UPRIGHT)


def _pointing(outline: Outline) -> float:
    """Return the heading from the middle of the long side of a right triangle to its right angle."""
    long_side = long_side_of_right_isosceles(outline)
    assert long_side is not None
    edge, corner = outline.edges[long_side], outline.edges[(long_side + 2) % 3].start
    return math.atan2(corner.y - (edge.start.y + edge.end.y) / 2, corner.x - (edge.start.x + edge.end.x) / 2)


def _is_level_or_plumb(heading: float) -> bool:
    return abs(math.remainder(heading, math.pi / 2)) <= 2 * STRAIGHT_ANGLE


def _from_low_left(outline: Outline) -> list[tuple[float, float]]:
    left, low, _, _ = outline.bounds()
    return [(edge.start.x - left, edge.start.y - low) for edge in outline.edges]


def notes_on_print(fabric: str, printed: Print, left_over: int, motifs: int) -> tuple[Saying, ...]:
    """Return what follows from the print of a fabric; `left_over` triangles that stand another way, `motifs` patches."""
    if printed is Print.MOTIFS:
        return (_fussy_cut(fabric, motifs),)
    first = say(
        "{fabric} is printed one way: lay it with the print upright and turn no piece. Strips run across the print.",
        fabric=fabric,
    )
    if not left_over:
        return (first,)
    wasted = say_number(
        "Squares of {fabric} cut across give triangles that stand different ways, and {count} of them are left over; "
        "with a template less is wasted.",
        "Squares of {fabric} cut across give triangles that stand different ways, and {count} of them are left over; "
        "with a template less is wasted.",
        left_over,
        fabric=fabric,
    )
    return first, wasted


def _fussy_cut(fabric: str, motifs: int) -> Saying:
    found = say_number(
        "{fabric} is fussy-cut: find {count} motif, one for each patch, and cut a template with a window to centre them.",
        "{fabric} is fussy-cut: find {count} motifs, one for each patch, and cut a template with a window to centre them.",
        motifs,
        fabric=fabric,
    )
    bought = say("What to buy depends on how far apart the motifs lie; the length here is only what the patches cover.")
    return joined((found, bought))
