"""Reasons to press a seam one way rather than the other, when locks and spins leave it open."""

import math
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from blocklang.assembly.values import Assembly, JoinKind
from blocklang.graph.values import Junction, PatchGraph, Segment
from blocklang.pressing.shades import darker_side, is_background
from blocklang.wording import say

TOWARD_SET_IN = "toward-set-in"


@dataclass(frozen=True, slots=True)
class PressingPreference:
    """A reason to press a seam one way rather than the other.

    `weigh` returns how much better it is to press a seam segment toward its left patch than toward its right one:
    positive toward the left, negative toward the right, 0 when it does not matter. Weights of several preferences
    are added; the built-in ones weigh 8, 4, 2 and 1. Thousandths count, anything finer does not.

    One with a `technique` counts only where the person asks for that technique by name.
    """

    name: str
    summary: str
    weigh: Callable[[PatchGraph, Segment], float]
    technique: str = ""


def weigh_background(graph: PatchGraph, segment: Segment) -> float:
    """Weigh against a background patch on one side only: 8."""
    return 8.0 * (is_background(graph, segment.right) - is_background(graph, segment.left))


def weigh_dark(graph: PatchGraph, segment: Segment) -> float:
    """Weigh toward the darker patch: 4 by its value, 2 by its lightness alone."""
    return 2.0 * darker_side(graph, segment.left, segment.right)


def weigh_plain(graph: PatchGraph, segment: Segment) -> float:
    """Weigh toward the side on which fewer seams meet the ends of this one: 2."""
    left = right = 0
    for number, on_left in ((segment.start, True), (segment.end, False)):
        ahead, behind = _seams_beside(graph, graph.junctions[number], segment.index)
        left, right = (left + ahead, right + behind) if on_left else (left + behind, right + ahead)
    return 2.0 * ((right > left) - (left > right))


def set_in_preference(assembly: Assembly) -> PressingPreference:
    """Return the preference that presses the seams of a set-in patch toward it: 1."""
    toward_left: dict[int, bool] = {}
    for join in assembly.joins:
        if join.kind is not JoinKind.SET_IN or len(join.units) < 2:
            continue
        left, right = (len(assembly.unit_patches[unit]) for unit in join.units)
        if left != right:
            toward_left.update((step.segment, step.forward == (left < right)) for step in join.path)

    def weigh(_: PatchGraph, segment: Segment) -> float:
        return {None: 0.0, True: 1.0, False: -1.0}[toward_left.get(segment.index)]

    return PressingPreference(TOWARD_SET_IN, say("Press the seams of a set-in patch toward that patch."), weigh)


def _seams_beside(graph: PatchGraph, junction: Junction, segment: int) -> tuple[int, int]:
    own = next(end for end in junction.ends if end.segment == segment)
    turns = [
        (end.heading - own.heading) % (2 * math.pi)
        for end in junction.ends
        if end.segment not in (segment, own.straight_on) and graph.segments[end.segment].is_seam
    ]
    ahead = sum(turn < math.pi for turn in turns)
    return ahead, len(turns) - ahead


DEFAULTS = (
    PressingPreference("away-from-background", say("Press away from the background."), weigh_background),
    PressingPreference("toward-darker", say("Press toward the darker fabric."), weigh_dark),
    PressingPreference("toward-plain", say("Press away from the side where many seams meet."), weigh_plain),
)


def asked_for(preferences: Iterable[PressingPreference], techniques: Iterable[str]) -> tuple[PressingPreference, ...]:
    """Return the preferences that count: those of no technique, and those of the techniques that are asked for."""
    wanted = frozenset(techniques)
    return tuple(one for one in preferences if not one.technique or one.technique in wanted)
