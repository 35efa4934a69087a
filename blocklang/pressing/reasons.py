"""Why a junction that could lock does not, and what the author's lines cost, in sentences for people who sew."""

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import Final

from blocklang.pressing.costs import against, kept
from blocklang.pressing.crossings import Crossing
from blocklang.pressing.lines import MOST_NAMES, PressingWish, say_junction, say_line, say_seam
from blocklang.pressing.nearby import only_locks
from blocklang.pressing.preferences import DEFAULTS, TOWARD_SET_IN, PressingPreference
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule
from blocklang.pressing.tracing import Holds, holds_of, rings_of, shortest_ring
from blocklang.pressing.values import Reason
from blocklang.pressing.ways_out import WaysOut
from blocklang.wording import Message, Saying, joined, listed, message, say, say_number

_SPINS = (Rank.CENTRES, Rank.CROSSES)
_COSTS: Final[dict[Rank, Message]] = {
    Rank.CLIPS: message("{count} join has to be clipped", "{count} joins have to be clipped"),
    Rank.LOCKS: message("{count} junction does not lock", "{count} junctions do not lock"),
    Rank.CENTRES: message("{count} centre is not spun", "{count} centres are not spun"),
    Rank.LIKENESS: message(
        "{count} unit is pressed unlike its fellows", "{count} units are pressed unlike their fellows"
    ),
    Rank.CROSSES: message("{count} plain cross is not spun", "{count} plain crosses are not spun"),
    Rank.PREFERENCES: message(
        "{count} seam is pressed against a preference", "{count} seams are pressed against a preference"
    ),
}


def reasons_for(question: Question, left: Sequence[bool]) -> tuple[Reason, ...]:
    """Return a sentence for each junction that could lock and does not, and for each line that costs something.

    Where no line is to blame, a ring of junctions that cannot all be spun is named once.
    """
    by_line = holds_of(question, left)
    ways = WaysOut(only_locks(question), left)
    broken = [rule for rule in question.rules if not kept(rule, left)]
    return (
        *question.lines.clashes,
        *_about_preferences(question, left),
        *_about_open(question, by_line, ways),
        *_about_locks(question, broken, by_line, left, ways),
        *_about_rings(question, broken, by_line, left),
        *_about_lines(question, broken, by_line, left),
    )


def _about_preferences(question: Question, left: Sequence[bool]) -> Iterator[Reason]:
    """Name the preferences that fail, and say of each one that was added how many seams it turned round."""
    own = [one.weights for one in question.weighed if one.preference in DEFAULTS and one.weights is not None]
    for one in question.weighed:
        if one.weights is None:
            yield Reason(None, say("The preference “{name}” fails and is left out.", name=one.preference.name))
        elif one.preference.technique or (one.preference not in DEFAULTS and one.preference.name != TOWARD_SET_IN):
            turned = sum(
                _turns_round(one.weights[seam], sum(w[seam] for w in own), left[seam]) for seam in question.seams
            )
            if turned:
                yield Reason(None, _say_turned(one.preference, turned))


def _say_turned(preference: PressingPreference, turned: int) -> Saying:
    return say_number(
        "By “{name}”, {count} seam goes the other way than the colours ask: {summary}",
        "By “{name}”, {count} seams go the other way than the colours ask: {summary}",
        turned,
        name=preference.name,
        summary=preference.summary,
    )


def _turns_round(weight: int, without: int, left: bool) -> bool:
    """Tell whether a seam goes where one preference wants it and the built-in ones do not."""
    return weight * without < 0 and (weight > 0) == left


def _about_open(question: Question, by_line: Holds, ways: WaysOut) -> Iterator[Reason]:
    for crossing in question.crossings:
        seam = next((end.segment for end in crossing.arriving if end.segment in question.opened), None)
        if crossing.both_sides and seam is not None:
            between = say_seam(question.graph, question.graph.segments[seam])
            line = by_line.by_segment[seam]
            way = "" if line is None else ways.without_open(line, seam, crossing.junction)
            why = say("the seam between {patches} is pressed open, as you ask", patches=between)
            yield _no_lock(question, crossing.junction, why, way)


def _about_locks(
    question: Question, broken: list[Rule], by_line: Holds, left: Sequence[bool], ways: WaysOut
) -> Iterator[Reason]:
    rings = rings_of(question.rules, (Rank.LOCKS,))
    staying = rings_of([rule for rule in question.rules if not rule.instead], (Rank.LOCKS, Rank.CLIPS))
    for rule in broken:
        if rule.rank is Rank.LOCKS:
            lines = by_line.apart(rule.ties, left)
            ring = () if lines else shortest_ring(rings, rule) or shortest_ring(staying, rule)
            yield _no_lock(question, rule.junction, _why(question, lines, ring), ways.best(rule, lines))


def _why(question: Question, lines: tuple[PressingWish, ...], ring: tuple[int, ...]) -> Saying:
    if len(lines) > 1:
        all_lines = joined(map(say_line, lines), say(" and ", context="between lines of a file"))
        return say("the lines {lines} hold its seams so that they cannot", lines=all_lines)
    if lines:
        return say("the line {line} holds its seams so that they cannot", line=say_line(lines[0]))
    if ring:
        return _in_ring(len(ring), _say_places(question, ring))
    return say("to lock it, a join would have to be clipped, or another junction would not lock")


def _in_ring(junctions: int, places: Saying) -> Saying:
    if junctions % 2:
        return say_number(
            "it stands in a ring of {count} junctions ({places}), and in a ring of an odd number one cannot lock",
            "it stands in a ring of {count} junctions ({places}), and in a ring of an odd number one cannot lock",
            junctions,
            places=places,
        )
    return say_number(
        "it stands in a ring of {count} junctions ({places}), and in this ring one cannot lock",
        "it stands in a ring of {count} junctions ({places}), and in this ring one cannot lock",
        junctions,
        places=places,
    )


def _no_lock(question: Question, junction: int, why: Saying, way: str) -> Reason:
    around = say_junction(question.graph, junction)
    text = say("The seams do not lock where {patches} meet: {why}.", patches=around, why=why)
    return Reason(junction, joined((text, way)) if way else text)


def _about_rings(question: Question, broken: list[Rule], by_line: Holds, left: Sequence[bool]) -> Iterator[Reason]:
    """Name each odd ring once; one that keeps a junction from locking is told of there."""
    rings, told = rings_of(question.rules), set[int]()
    unlocked = {rule.junction for rule in broken if rule.rank is Rank.LOCKS}
    for rule in broken:
        if rule.rank not in _SPINS or rule.junction in told or by_line.apart(rule.ties, left):
            continue
        ring = shortest_ring(rings, rule)
        if ring and unlocked.isdisjoint(ring):
            told.update(ring)
            yield Reason(rule.junction, _say_ring(question, ring))


def _say_ring(question: Question, ring: tuple[int, ...]) -> Saying:
    return say_number(
        "The {count} junctions of a ring ({places}) cannot all be spun: "
        "each turns the other way from the next, which does not come out in a ring of an odd number.",
        "The {count} junctions of a ring ({places}) cannot all be spun: "
        "each turns the other way from the next, which does not come out in a ring of an odd number.",
        len(ring),
        places=_say_places(question, ring),
    )


def _say_places(question: Question, ring: tuple[int, ...]) -> Saying:
    places = [
        say("where {patches} meet", patches=say_junction(question.graph, junction)) for junction in ring[:MOST_NAMES]
    ]
    more = len(ring) - len(places)
    return joined((*places, say_number("and {count} more", "and {count} more", more)) if more else places, "; ")


def _about_lines(question: Question, broken: list[Rule], by_line: Holds, left: Sequence[bool]) -> Iterator[Reason]:
    """Tell what each line costs; what two lines cost only together is told of both."""
    costs: dict[PressingWish, Counter[Rank]] = {line.wish: Counter() for line in question.lines.lines}
    for rule in broken:
        for wish in by_line.apart(rule.ties, left):
            costs[wish][rule.rank] += 1
    for line in question.lines.lines:
        for settled in line.settles:
            if settled.left is None:
                costs[line.wish] += _cost_of_open(question, settled.segment)
            elif against(question, settled.segment, left):
                costs[line.wish][Rank.PREFERENCES] += 1
    for line in question.lines.lines:
        if costs[line.wish]:
            told = say("With the line {line}, {costs}.", line=say_line(line.wish), costs=_say_costs(costs[line.wish]))
            yield Reason(line.junction, told)


def _cost_of_open(question: Question, segment: int) -> "Counter[Rank]":
    touched = [crossing for crossing in question.crossings if _touches(crossing, segment)]
    locks = sum(any(end.segment == segment for end in crossing.arriving) for crossing in touched if crossing.both_sides)
    spins = sum(crossing.can_spin for crossing in touched)
    return Counter({rank: n for rank, n in ((Rank.LOCKS, locks), (Rank.CROSSES, spins)) if n})


def _touches(crossing: Crossing, segment: int) -> bool:
    return any(end.segment == segment for end in crossing.ends)


def _say_costs(costs: "Counter[Rank]") -> str:
    return listed(_COSTS[rank].number(n) for rank, n in sorted(costs.items()))
