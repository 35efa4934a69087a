"""The last word between choices that are equally good: the one that makes less bulk.

Where a group of seams that hang together can be turned round with nothing lost and nothing won, the layers at its
junctions are counted both ways. Counting costs more than all the rest of pressing, so large draws are left alone.
"""

from collections.abc import Callable, Mapping, Sequence

from blocklang.block import SpinSense
from blocklang.pressing.costs import against
from blocklang.pressing.outcome import directions_of, spun_in
from blocklang.pressing.parity import ParityForest
from blocklang.pressing.rules import Question

#: Counts the layers at a junction, given the patch that each seam is pressed toward and the junctions that are spun.
CountLayers = Callable[[int, Mapping[int, int | None], frozenset[int]], int]

#: A block with more seam segments in draws than this is pressed as it comes.
_MOST_SEAMS = 16


def less_bulk(question: Question, layers: CountLayers, left: tuple[bool, ...]) -> tuple[bool, ...]:
    """Turn draws round where that makes fewer layers; everything else stays."""
    draws = _draws(question, left)
    if not draws or sum(map(len, draws)) > _MOST_SEAMS:
        return left
    best = left
    for seams in draws:
        turned = tuple(not one if seam in seams else one for seam, one in enumerate(best))
        if _layers(question, layers, seams, turned) < _layers(question, layers, seams, best):
            best = turned
    return best


def _draws(question: Question, left: Sequence[bool]) -> list[frozenset[int]]:
    """Return the groups of seams that no preference and no line holds on their side."""
    groups = ParityForest(len(question.graph.segments) + 1)
    for rule in question.rules:
        first = rule.ties[0].one
        for one, other, _ in (*rule.ties, *rule.instead):
            groups.tie(first, one, False)
            groups.tie(first, other, False)
    for one, other, _ in question.alike:
        groups.tie(one, other, False)
    settled = {groups.find(segment)[0] for segment, _ in question.settled}
    members: dict[int, list[int]] = {}
    for seam in question.seams:
        members.setdefault(groups.find(seam)[0], []).append(seam)
    return [
        frozenset(seams) for head, seams in members.items() if head not in settled and _is_even(question, seams, left)
    ]


def _is_even(question: Question, seams: list[int], left: Sequence[bool]) -> bool:
    turned = [not one for one in left]
    return sum(against(question, s, left) for s in seams) == sum(against(question, s, turned) for s in seams)


def _layers(question: Question, layers: CountLayers, seams: frozenset[int], left: Sequence[bool]) -> tuple[int, int]:
    """Return the highest pile at the junctions of some seams, and all their layers together."""
    spun = frozenset(spin.junction for spin in spun_in(question, left) if spin.sense is not SpinSense.NONE)
    toward = {pressed.segment: pressed.toward for pressed in directions_of(question, left)}
    segments = question.graph.segments
    junctions = sorted({end for seam in seams for end in (segments[seam].start, segments[seam].end)})
    counts = [layers(junction, toward, spun) for junction in junctions]
    return max(counts), sum(counts)
