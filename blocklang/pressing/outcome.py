"""What a choice of directions comes to: which junctions lock, which are spun, where each allowance lies."""

from collections.abc import Sequence

from blocklang.block import SpinSense
from blocklang.graph.values import SegmentEnd
from blocklang.pressing.crossings import Crossing, sense
from blocklang.pressing.rules import Question
from blocklang.pressing.values import Pressed, Spun


def locked_in(question: Question, left: Sequence[bool]) -> tuple[int, ...]:
    """Return the junctions that lock, by index."""
    return tuple(
        sorted(c.junction for c in question.crossings if c.both_sides and _one_sense(question, c.arriving, left))
    )


def spun_in(question: Question, left: Sequence[bool]) -> tuple[Spun, ...]:
    """Return the junctions that are spun, by index."""
    wished = dict(question.lines.spins)
    spins = {j: turn for j, turn in wished.items() if turn is not SpinSense.NONE}
    for crossing in question.crossings:
        if crossing.junction not in wished and is_spun(question, crossing, left):
            end = crossing.ends[0]
            turned = sense(end, left[end.segment])
            spins[crossing.junction] = SpinSense.COUNTERCLOCKWISE if turned else SpinSense.CLOCKWISE
    return tuple(Spun(junction, spins[junction]) for junction in sorted(spins))


def is_spun(question: Question, crossing: Crossing, left: Sequence[bool]) -> bool:
    """Tell whether all seams of a junction that can spin lie the same way round."""
    return crossing.can_spin and _one_sense(question, crossing.ends, left)


def _one_sense(question: Question, ends: tuple[SegmentEnd, ...], left: Sequence[bool]) -> bool:
    if any(end.segment in question.opened for end in ends):
        return False
    return len({sense(end, left[end.segment]) for end in ends}) == 1


def directions_of(question: Question, left: Sequence[bool]) -> tuple[Pressed, ...]:
    """Return which way every seam segment lies."""
    return tuple(
        Pressed(seam.index, None if seam.index in question.opened else seam.left if left[seam.index] else seam.right)
        for seam in question.graph.seams
    )
