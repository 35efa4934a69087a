"""What there is to say about the thickness of a plan."""

from dataclasses import dataclass

from blocklang_drawing import lies_of

from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph import OUTSIDE
from blocklang.plan import SewingPlan
from blocklang.thickness import Ring, Thickness, fold, measure
from blocklang_thickness import words


@dataclass(frozen=True, slots=True)
class Facts:
    """The thickness and the sentences about it; `levels` pairs a number of layers with its share of the block."""

    thickness: Thickness
    sentences: tuple[str, ...]
    levels: tuple[tuple[int, float], ...]


def facts_of(plan: SewingPlan) -> Facts:
    """Work out how thick a plan's block becomes."""
    thickness = measure(plan.graph, fold(plan.assembly, lies_of(plan)))
    most = thickness.highest.layers
    places = [_names(plan, pile.junction) for pile in thickness.piles if pile.layers == most]
    return Facts(thickness, (words.highest(most, places), words.mean(thickness.mean)), _levels(thickness))


def _names(plan: SewingPlan, junction: int) -> tuple[str, ...]:
    """Return the name that the file gives a junction, else the patches that meet there."""
    name = plan.junction_names[junction]
    if any(point.name == name for point in plan.block.points):
        return (words.quoted(name),)
    ends = plan.graph.junctions[junction].ends
    meeting = {p for end in ends for p in plan.graph.segments[end.segment].patches if p != OUTSIDE}
    return tuple(plan.block.patches[patch].id for patch in sorted(meeting))


def _levels(thickness: Thickness) -> tuple[tuple[int, float], ...]:
    areas: dict[int, float] = {}
    for region in thickness.regions:
        areas[region.layers] = areas.get(region.layers, 0.0) + sum(map(area_of, region.rings))
    return tuple((level, areas[level] / TICKS_PER_INCH**2 / thickness.area) for level in sorted(areas))


def area_of(ring: Ring) -> float:
    """Return the area within a ring, negative when it is travelled clockwise: a hole."""
    ox, oy = ring[0]
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return sum((ax - ox) * (by - oy) - (ay - oy) * (bx - ox) for (ax, ay), (bx, by) in pairs) / 2
