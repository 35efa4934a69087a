"""From a sewing order to the pressing of every seam."""

import time
from functools import partial

from blocklang.assembly.values import Assembly
from blocklang.pressing.bulk import CountLayers, less_bulk
from blocklang.pressing.lines import follow
from blocklang.pressing.outcome import directions_of, locked_in, spun_in
from blocklang.pressing.parts import follow_ties
from blocklang.pressing.polishing import polish
from blocklang.pressing.preferences import DEFAULTS, PressingPreference, asked_for, set_in_preference
from blocklang.pressing.reasons import reasons_for
from blocklang.pressing.rules import Question, ask
from blocklang.pressing.search import LARGE, Answer, search
from blocklang.pressing.values import Pressing
from blocklang.pressing.versions import press_in_versions


def press(
    assembly: Assembly,
    preferences: tuple[PressingPreference, ...] = DEFAULTS,
    time_limit: float | None = None,
    techniques: tuple[str, ...] = (),
    layers: CountLayers | None = None,
) -> Pressing:
    """Say which way every seam is pressed.

    `time_limit` is in seconds; without one the search ends after a fixed amount of work, so that the same block
    always gives the same pressing. Where the best could not be proven, `gap` says by how much it might be beaten.
    Preferences of a technique count only when it is among `techniques`. `layers` counts the layers of cloth at a junction;
    with it, the flatter of two equally good choices is taken.
    """
    preferences = asked_for(preferences, techniques)
    lines = follow(assembly.graph)
    question = ask(assembly, (*preferences, set_in_preference(assembly)), lines)
    answer, versions = press_in_versions(
        question, partial(decide, time_limit=time_limit), partial(decide, quickly=True)
    )
    left = answer.left if layers is None else less_bulk(question, layers, answer.left)
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
        diagnostics=lines.warnings,
    )


def decide(question: Question, time_limit: float | None = None, quickly: bool = False) -> Answer:
    """Choose the directions: by following ties where they agree, by search where they do not."""
    deadline = None if time_limit is None else time.monotonic() + time_limit
    followed = follow_ties(question)
    left, gap = list(followed.left), 0.0
    for part in followed.disputed:
        answer = search(part, deadline, quickly)
        if answer.gap and deadline is None and not quickly and len(part.seams) > LARGE:
            answer = polish(part, answer)
        gap += answer.gap
        for seam in part.seams:
            left[seam] = answer.left[seam]
    return Answer(tuple(left), gap)
