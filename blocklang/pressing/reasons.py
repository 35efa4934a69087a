"""Why a junction that could lock does not, and what the author's lines cost, in sentences for people who sew."""

from collections import Counter
from collections.abc import Iterator, Sequence

from blocklang.pressing.costs import against, kept
from blocklang.pressing.crossings import Crossing
from blocklang.pressing.lines import MOST_NAMES, PressingWish, listed, say_junction, say_line, say_seam
from blocklang.pressing.nearby import only_locks
from blocklang.pressing.preferences import DEFAULTS, TOWARD_SET_IN
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule
from blocklang.pressing.tracing import Holds, holds_of, rings_of, shortest_ring
from blocklang.pressing.values import Reason
from blocklang.pressing.ways_out import WaysOut

_SPINS = (Rank.CENTRES, Rank.CROSSES)
_COSTS = {
    Rank.CLIPS: ("{} join has to be clipped", "{} joins have to be clipped"),
    Rank.LOCKS: ("{} junction does not lock", "{} junctions do not lock"),
    Rank.CENTRES: ("{} centre is not spun", "{} centres are not spun"),
    Rank.LIKENESS: ("{} unit is pressed unlike its fellows", "{} units are pressed unlike their fellows"),
    Rank.CROSSES: ("{} plain cross is not spun", "{} plain crosses are not spun"),
    Rank.PREFERENCES: ("{} seam is pressed against a preference", "{} seams are pressed against a preference"),
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
            yield Reason(None, f"The preference “{one.preference.name}” fails and is left out.")
        elif one.preference.technique or (one.preference not in DEFAULTS and one.preference.name != TOWARD_SET_IN):
            turned = sum(
                _turns_round(one.weights[seam], sum(w[seam] for w in own), left[seam]) for seam in question.seams
            )
            if turned:
                seams = "1 seam goes" if turned == 1 else f"{turned} seams go"
                said = (
                    f"By “{one.preference.name}”, {seams} the other way than the colours ask: {one.preference.summary}"
                )
                yield Reason(None, said)


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
            yield _no_lock(question, crossing.junction, f"the seam between {between} is pressed open, as you ask", way)


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


def _why(question: Question, lines: tuple[PressingWish, ...], ring: tuple[int, ...]) -> str:
    if len(lines) > 1:
        return f"the lines {' and '.join(map(say_line, lines))} hold its seams so that they cannot"
    if lines:
        return f"the line {say_line(lines[0])} holds its seams so that they cannot"
    if ring:
        odd = "a ring of an odd number" if len(ring) % 2 else "this ring"
        return f"it stands in a ring of {len(ring)} junctions ({_say_places(question, ring)}), and in {odd} one cannot lock"
    return "to lock it, a join would have to be clipped, or another junction would not lock"


def _no_lock(question: Question, junction: int, why: str, way: str) -> Reason:
    text = f"The seams do not lock where {say_junction(question.graph, junction)} meet: {why}. {way}"
    return Reason(junction, text.rstrip())


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


def _say_ring(question: Question, ring: tuple[int, ...]) -> str:
    return (
        f"The {len(ring)} junctions of a ring ({_say_places(question, ring)}) cannot all be spun: "
        "each turns the other way from the next, which does not come out in a ring of an odd number."
    )


def _say_places(question: Question, ring: tuple[int, ...]) -> str:
    places = [f"where {say_junction(question.graph, junction)} meet" for junction in ring[:MOST_NAMES]]
    more = len(ring) - len(places)
    return "; ".join(places) + (f"; and {more} more" if more else "")


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
            yield Reason(line.junction, f"With the line {say_line(line.wish)}, {_say_costs(costs[line.wish])}.")


def _cost_of_open(question: Question, segment: int) -> "Counter[Rank]":
    touched = [crossing for crossing in question.crossings if _touches(crossing, segment)]
    locks = sum(any(end.segment == segment for end in crossing.arriving) for crossing in touched if crossing.both_sides)
    spins = sum(crossing.can_spin for crossing in touched)
    return Counter({rank: n for rank, n in ((Rank.LOCKS, locks), (Rank.CROSSES, spins)) if n})


def _touches(crossing: Crossing, segment: int) -> bool:
    return any(end.segment == segment for end in crossing.ends)


def _say_costs(costs: "Counter[Rank]") -> str:
    said = [_COSTS[rank][n > 1].format(n) for rank, n in sorted(costs.items())]
    return listed(said, len(said))
