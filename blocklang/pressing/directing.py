"""From a sewing order to the pressing of every seam."""

import time
from collections.abc import Sequence
from functools import partial

from blocklang.assembly.values import Assembly
from blocklang.block import SpinSense
from blocklang.graph.values import SegmentEnd
from blocklang.pressing.bulk import less_bulk
from blocklang.pressing.crossings import Crossing, sense
from blocklang.pressing.lines import follow
from blocklang.pressing.parts import follow_ties
from blocklang.pressing.preferences import DEFAULTS, PressingPreference, asked_for, set_in_preference
from blocklang.pressing.reasons import reasons_for
from blocklang.pressing.rules import Question, ask
from blocklang.pressing.search import Answer, search
from blocklang.pressing.values import Pressed, Pressing, Spun
from blocklang.pressing.versions import press_in_versions


def press(
    assembly: Assembly,
    preferences: tuple[PressingPreference, ...] = DEFAULTS,
    time_limit: float | None = None,
    techniques: tuple[str, ...] = (),
) -> Pressing:
    """Say which way every seam is pressed.

    `time_limit` is in seconds; without one the search ends after a fixed amount of work, so that the same block
    always gives the same pressing. Where the best could not be proven, `gap` says by how much it might be beaten.
    Preferences of a technique count only when it is among `techniques`.
    """
    preferences = asked_for(preferences, techniques)
    lines = follow(assembly.graph)
    question = ask(assembly, (*preferences, set_in_preference(assembly)), lines)
    answer, versions = press_in_versions(
        question, partial(decide, time_limit=time_limit), partial(decide, quickly=True)
    )
    left = less_bulk(question, assembly, answer.left)
    locked, spins = locked_in(question, left), spun_in(question, left)
    return Pressing(
        directions=directions_of(question, left),
        lockable=tuple(sorted(crossing.junction for crossing in question.crossings if crossing.both_sides)),
        locked=locked,
        spins=spins,
        proven=answer.gap == 0.0,
        gap=answer.gap,
        reasons=reasons_for(question, left),
        versions=versions,
        techniques=techniques,
    )


def decide(question: Question, time_limit: float | None = None, quickly: bool = False) -> Answer:
    """Choose the directions: by following ties where they agree, by search where they do not."""
    deadline = None if time_limit is None else time.monotonic() + time_limit
    followed = follow_ties(question)
    left, gap = list(followed.left), 0.0
    for part in followed.disputed:
        answer = search(part, deadline, quickly)
        gap += answer.gap
        for seam in part.seams:
            left[seam] = answer.left[seam]
    return Answer(tuple(left), gap)


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
