"""The pressing as a question about equal and unequal pairs: what must hold, what should, and how much it counts."""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise
from typing import NamedTuple

from blocklang.assembly.values import Assembly, Step
from blocklang.block import SpinSense
from blocklang.graph.values import PatchGraph, SegmentEnd
from blocklang.pressing.crossings import Crossing, crossings_of
from blocklang.pressing.lines import AuthorLines
from blocklang.pressing.preferences import PressingPreference
from blocklang.pressing.ranks import MANY_SEAMS, Rank
from blocklang.pressing.shades import lightness_of

#: Weights of preferences are counted in thousandths, so that sums are exact.
_GRAIN = 1000


class Tie(NamedTuple):
    """Two seam segments pressed to sides of one name (left and left), or to sides of different names."""

    one: int
    other: int
    differ: bool


@dataclass(frozen=True, slots=True)
class Rule:
    """Something that holds when all its ties hold, or all of `instead`; otherwise it costs `weight` at `rank`."""

    rank: Rank
    weight: int
    ties: tuple[Tie, ...]
    junction: int = -1
    instead: tuple[Tie, ...] = ()


@dataclass(frozen=True, slots=True)
class Question:
    """What is asked about a block.

    `seams` are the segments pressed to one side, `settled` those of them that the author settles, each with whether
    it goes to its left patch; `alike` are ties that must hold as far as they do not go against those. `weights[s]` is
    what pressing segment s to the left gains, `first_choice[s]` the side it takes when nothing else matters.
    """

    graph: PatchGraph
    seams: tuple[int, ...]
    opened: frozenset[int]
    settled: tuple[tuple[int, bool], ...]
    rules: tuple[Rule, ...]
    weights: tuple[int, ...]
    first_choice: tuple[bool, ...]
    crossings: tuple[Crossing, ...]
    lines: AuthorLines
    weighed: "tuple[Weighed, ...]"
    alike: tuple[Tie, ...] = ()


def rules_of(assembly: Assembly, crossings: tuple[Crossing, ...], lines: AuthorLines) -> tuple[Rule, ...]:
    """Return all rules, the most important first."""
    opened = frozenset(s.segment for s in lines.settled if s.left is None)
    found = [*rules_at(crossings, dict(lines.spins), opened), *_of_steps(assembly, opened)]
    return tuple(sorted(found, key=lambda rule: rule.rank))


@dataclass(frozen=True, slots=True)
class Weighed:
    """What a preference gains for each segment pressed to its left, in thousandths; None when it fails."""

    preference: PressingPreference
    weights: tuple[int, ...] | None


def weigh(graph: PatchGraph, preference: PressingPreference) -> Weighed:
    """Ask a preference about every seam; one that fails anywhere is left out altogether."""
    weights = [0] * len(graph.segments)
    try:
        for seam in graph.seams:
            weights[seam.index] = round(_GRAIN * preference.weigh(graph, seam))
    except Exception:  # noqa: BLE001 - a plugin's preference may do anything
        return Weighed(preference, None)
    return Weighed(preference, tuple(weights))


def rules_at(crossings: tuple[Crossing, ...], wished: dict[int, SpinSense], opened: frozenset[int]) -> Iterator[Rule]:
    """Yield the rules about junctions that joins pass straight through."""
    for crossing in crossings:
        wish = wished.get(crossing.junction)
        is_open = [end.segment in opened for end in crossing.ends]
        spun: tuple[Tie, ...] = ()
        if crossing.can_spin and wish is not SpinSense.NONE and not any(is_open):
            spun = _all_alike(crossing.ends)
            seams = len(crossing.ends)
            many = seams >= MANY_SEAMS
            rank, weight = (Rank.CENTRES, seams) if many else (Rank.CROSSES, 1)
            yield Rule(rank, weight, spun, crossing.junction)
        if crossing.both_sides and not any(end.segment in opened for end in crossing.arriving):
            yield Rule(Rank.LOCKS, 1, _all_alike(crossing.arriving), crossing.junction)
        if wish in (None, SpinSense.NONE) and not any(is_open[:2]):
            yield Rule(Rank.CLIPS, 1, (_constancy(*crossing.through),), crossing.junction, spun)


def _all_alike(ends: tuple[SegmentEnd, ...]) -> tuple[Tie, ...]:
    """Return the ties by which all allowances lie the same way round."""
    return tuple(Tie(a.segment, b.segment, a.at_start != b.at_start) for a, b in pairwise(ends))


def _constancy(a: SegmentEnd, b: SegmentEnd) -> Tie:
    return Tie(a.segment, b.segment, a.at_start == b.at_start)


def _of_steps(assembly: Assembly, opened: frozenset[int]) -> Iterator[Rule]:
    for step in assembly.steps:
        if step.times > 1:
            yield from _of_step(assembly, step, opened)


def _of_step(assembly: Assembly, step: Step, opened: frozenset[int]) -> Iterator[Rule]:
    size = len(step.joins) // step.times
    times = [
        [travelled for number in step.joins[i * size : (i + 1) * size] for travelled in assembly.joins[number].path]
        for i in range(step.times)
    ]
    for other in times[1:]:
        if len(other) != len(times[0]):
            continue
        ties = tuple(
            Tie(a.segment, b.segment, a.forward != b.forward)
            for a, b in zip(times[0], other, strict=True)
            if a.segment != b.segment and a.segment not in opened and b.segment not in opened
        )
        if ties:
            yield Rule(Rank.LIKENESS, 1, ties)


def ask(assembly: Assembly, preferences: tuple[PressingPreference, ...], lines: AuthorLines) -> Question:
    """Return the question for an assembly, with the author's lines as they are followed."""
    graph = assembly.graph
    crossings = crossings_of(assembly)
    opened = frozenset(s.segment for s in lines.settled if s.left is None)
    weighed = tuple(weigh(graph, preference) for preference in preferences)
    usable = [one.weights for one in weighed if one.weights is not None]
    darkness = [(*lightness_of(graph, patch), patch) for patch in range(len(graph.block.patches))]
    return Question(
        graph=graph,
        seams=tuple(seam.index for seam in graph.seams if seam.index not in opened),
        opened=opened,
        settled=tuple((s.segment, s.left) for s in lines.settled if s.left is not None),
        rules=rules_of(assembly, crossings, lines),
        weights=tuple(map(sum, zip(*usable, strict=True))) if usable else (0,) * len(graph.segments),
        first_choice=tuple(not s.is_seam or darkness[s.left] < darkness[s.right] for s in graph.segments),
        crossings=crossings,
        lines=lines,
        weighed=weighed,
    )
