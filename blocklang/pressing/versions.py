"""In how many ways the equal copies of a placed block are pressed: as few as lock as well as any."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from string import ascii_uppercase

from blocklang.pressing.copies import Copies, Copy, copies_of, ties_between
from blocklang.pressing.cores import least_broken
from blocklang.pressing.costs import costs_of
from blocklang.pressing.nearby import only_locks
from blocklang.pressing.parts import tie_all, tied_to_settled
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import Question, Rule, Tie
from blocklang.pressing.search import Answer
from blocklang.pressing.values import PlacedVersions, Version
from blocklang.wording import Saying, joined, listed, say, say_number

#: All seams of all trials; a quilt so large that it would take more is pressed as it comes.
_MOST_SEAMS = 60_000
#: More versions than this are not told by their letters.
_MOST_LETTERS = 4
_NEAR = 64  # ticks; copies whose centres are nearer stand in one row, or in one column

Decide = Callable[[Question], Answer]
Classes = tuple[tuple[Copy, ...], ...]


@dataclass(slots=True)
class _Trials:
    """The rules about clips and locks alone, what they must lose, and the copies that are tied so far."""

    question: Question
    decide: Decide
    best: tuple[int, ...] = ()
    proven: bool = True
    ties: tuple[Tie, ...] = ()
    seams: int = _MOST_SEAMS

    def lose_no_more(self, tied: Question) -> bool:
        """Tell whether a question's ties clip no more and lock as much, as far as that is found out."""
        if self.are_worse(tied):
            return False
        self.seams -= len(tied.seams)
        return self.seams >= 0 and lost_of(tied, self.decide(tied)) <= self.best

    def are_worse(self, tied: Question) -> bool:
        """Tell by counting whether it is certain that a question's ties clip more, or lose more locks."""
        forest, clips = tied_to_settled(tied), 0
        for rule in tied.rules:
            if rule.rank is Rank.CLIPS and not rule.instead:
                clips += not tie_all(forest, rule)
        if clips or self.best[Rank.CLIPS]:
            return False  # a clip may be worth its locks: that takes more than counting
        locks = tuple(rule for rule in tied.rules if rule.rank is Rank.LOCKS)
        return least_broken(locks, forest) > self.best[Rank.LOCKS]


def lost_of(question: Question, answer: Answer) -> tuple[int, ...]:
    """Return what an answer loses of clips and locks."""
    return costs_of(question, answer.left)[: Rank.LOCKS + 1]


def press_in_versions(question: Question, decide: Decide, quickly: Decide) -> tuple[Answer, tuple[PlacedVersions, ...]]:
    """Decide, with equal copies pressed alike as far as that loses no lock and clips no join more than otherwise.

    `quickly` is what trials are decided with. Where copies are not all alike, units with them are not equal any more,
    and need not be like the first of a step.
    """
    kinds = copies_of(question.graph)
    if not kinds:
        return decide(question), ()
    trials = _Trials(only_locks(question), quickly)
    free = decide(trials.question)
    trials.best, trials.proven = lost_of(question, free), free.gap == 0.0
    unlike = frozenset(patch for kind in kinds for patch in _tie(trials, kind))
    rules = tuple(
        rule for rule in question.rules if rule.rank is not Rank.LIKENESS or not _touches(question, rule, unlike)
    )
    answer = decide(replace(question, rules=rules, alike=trials.ties))
    if trials.ties and not answer.gap:
        answer = Answer(answer.left, free.gap)
    return answer, tuple(_placed(trials, kind, _versions(question, kind, answer)) for kind in kinds)


def _tie(trials: _Trials, kind: Copies) -> tuple[int, ...]:
    """Tie the copies by the first pattern that loses no more; return their patches where it is not all alike."""
    for classes in _patterns(kind):
        ties = (*trials.ties, *_ties(trials.question, classes))
        if trials.lose_no_more(replace(trials.question, alike=ties)):
            trials.ties = ties
            return tuple(patch for copy in kind.copies for patch in copy.patches) if len(classes) > 1 else ()
    return ()


def _touches(question: Question, rule: Rule, patches: frozenset[int]) -> bool:
    segments = question.graph.segments
    return any(not patches.isdisjoint(segments[end].patches) for tie in rule.ties for end in (tie.one, tie.other))


def _ties(question: Question, classes: Classes) -> tuple[Tie, ...]:
    return tuple(tie for copies in classes for tie in ties_between(copies, question.opened))


def _patterns(kind: Copies) -> Iterator[Classes]:
    """Yield ways to share out the copies, the fewest versions first: all alike, chequered, by rows, by columns."""
    rows, columns = (_ranks([copy.centre[axis] for copy in kind.copies]) for axis in (1, 0))
    places = list(zip(rows, columns, strict=True))
    for colours in (
        [0 for _ in places],
        [(row + column) % 2 for row, column in places],
        [row % 2 for row, _ in places],
        [column % 2 for _, column in places],
        [row % 2 + 2 * (column % 2) for row, column in places],
    ):
        yield tuple(
            tuple(copy for copy, own in zip(kind.copies, colours, strict=True) if own == colour)
            for colour in dict.fromkeys(colours)
        )


def _ranks(places: list[float]) -> list[int]:
    """Return for each place how many distinct places lie before it."""
    steps: list[float] = []
    for place in sorted(places):
        if not steps or place - steps[-1] > _NEAR:
            steps.append(place)
    return [sum(step + _NEAR < place for step in steps) for place in places]


def _placed(trials: _Trials, kind: Copies, versions: tuple[Version, ...]) -> PlacedVersions:
    fewest, turned = len(versions) == 1, tuple[tuple[str, ...], ...]()
    if len(versions) == 2:
        alike = replace(trials.question, alike=_ties(trials.question, (kind.copies,)))
        fewest = trials.proven and trials.are_worse(alike)
        turned = _turned(trials, kind, versions)
    return PlacedVersions(kind.block, versions, fewest, turned, _say(kind, versions, fewest, turned))


def _versions(question: Question, kind: Copies, answer: Answer) -> tuple[Version, ...]:
    """Return the copies by what their seams show, in the order in which a version is first met."""
    shown: dict[tuple[bool | None, ...], list[tuple[str, ...]]] = {}
    for copy in kind.copies:
        look = tuple(
            None if slot.segment in question.opened else answer.left[slot.segment] == slot.first_is_left
            for slot in copy.slots
        )
        shown.setdefault(look, []).append(copy.group)
    return tuple(Version(_letter(number), tuple(groups)) for number, groups in enumerate(shown.values()))


def _letter(number: int) -> str:
    """Return A to Z, then AA, AB and so on."""
    before, last = divmod(number, len(ascii_uppercase))
    return (_letter(before - 1) if before else "") + ascii_uppercase[last]


def _turned(trials: _Trials, kind: Copies, versions: tuple[Version, ...]) -> tuple[tuple[str, ...], ...]:
    """Return the copies that make a second version needless when they are turned a quarter; none if it does not help.

    A turned copy is sewn as it would be unturned, so that inside it locks what locks in the others.
    """
    if not kind.quarter:
        return ()
    by_group = {copy.group: copy for copy in kind.copies}
    plain, turned = (tuple(by_group[group] for group in version.copies) for version in versions)
    own = {slot.segment for copy in kind.copies for slot in copy.slots}
    others = tuple(tie for tie in trials.ties if tie.one not in own)
    question = _without_inside(trials.question, turned)
    inner = replace(question, rules=tuple(rule for rule in question.rules if _is_inside(rule, plain[0])))
    for quarter in (kind.quarter, _back(kind.quarter)):
        alike = (*ties_between(plain, question.opened), *ties_between((plain[0], *turned), question.opened, quarter))
        trials.seams -= len(question.seams)
        if trials.seams < 0:
            return ()
        trial = trials.decide(replace(question, alike=(*others, *alike)))
        first, rest = lost_of(inner, trial), lost_of(question, trial)
        if tuple(r + f * len(turned) for r, f in zip(rest, first, strict=True)) <= trials.best:
            return versions[1].copies
    return ()


def _is_inside(rule: Rule, copy: Copy) -> bool:
    inner = {slot.segment for slot in copy.slots}
    return all(end in inner for tie in rule.ties for end in (tie.one, tie.other))


def _without_inside(question: Question, copies: tuple[Copy, ...]) -> Question:
    """Return the question without the rules inside some copies."""
    of = {slot.segment: number for number, copy in enumerate(copies) for slot in copy.slots}
    kept = []
    for rule in question.rules:
        homes = {of.get(end) for tie in rule.ties for end in (tie.one, tie.other)}
        if len(homes) > 1 or None in homes:
            kept.append(rule)
    return replace(question, rules=tuple(kept))


def _back(quarter: tuple[tuple[int, bool], ...]) -> tuple[tuple[int, bool], ...]:
    """Return the turn the other way round."""
    found = {there: (here, changes) for here, (there, changes) in enumerate(quarter)}
    return tuple(found[place] for place in range(len(quarter)))


def _say(kind: Copies, versions: tuple[Version, ...], fewest: bool, turned: tuple[tuple[str, ...], ...]) -> Saying:
    number = len(kind.copies)
    if len(versions) == 1:
        return say_number(
            "Press all {count} copies of {block} alike.",
            "Press all {count} copies of {block} alike.",
            number,
            block=kind.block,
        )
    if len(versions) > _MOST_LETTERS:
        return say(
            "Press the {count} copies of {block} in {ways} ways, so that as many seams lock as can.",
            count=number,
            block=kind.block,
            ways=len(versions),
        )
    counted = (say("{number} as {letter}", number=len(one.copies), letter=one.letter) for one in versions)
    said = [
        say(
            "Press {versions} of the {count} copies of {block}, so that the seams lock where the copies meet.",
            versions=listed(counted),
            count=number,
            block=kind.block,
        )
    ]
    if turned:
        said.append(_say_turned(number, len(turned)))
    if not fewest:
        said.append(say("Fewer versions may be enough: that is not settled."))
    return joined(said)


def _say_turned(number: int, turned: int) -> Saying:
    return say_number(
        "Or press all {number} as A, and turn the {count} marked B a quarter before you join them: "
        "the picture stays the same, and the seams lock as well.",
        "Or press all {number} as A, and turn the {count} marked B a quarter before you join them: "
        "the picture stays the same, and the seams lock as well.",
        turned,
        number=number,
    )
