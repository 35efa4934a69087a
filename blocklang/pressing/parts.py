"""Taking a question apart: what can be settled by following ties, and the parts that need a search."""

from dataclasses import dataclass, replace

from blocklang.pressing.costs import kept
from blocklang.pressing.parity import ParityForest
from blocklang.pressing.rules import Question, Rule


@dataclass(frozen=True, slots=True)
class Followed:
    """Directions by following ties, right wherever the ties agree, and the parts where they do not."""

    left: tuple[bool, ...]
    disputed: tuple[Question, ...]


def follow_ties(question: Question) -> Followed:
    """Follow every tie from segment to segment.

    A part in which all ties agree loses nothing at any rank above the preferences, and has one choice left: to turn
    all its directions round. So the better of the two is proven best.
    """
    forest = tied_to_settled(question)
    broken = [rule for rule in question.rules if not rule.instead and not tie_all(forest, rule)]
    left = choose(question, forest)
    broken += [rule for rule in question.rules if rule.instead and not kept(rule, left)]
    return Followed(left, _disputed(question, broken) if broken else ())


def tied_to_settled(question: Question) -> ParityForest:
    """Return a forest with what must hold; the author's own directions are tied to a last item, "left"."""
    size = len(question.graph.segments)
    forest = ParityForest(size + 1)
    for segment, left in question.settled:
        forest.tie(segment, size, not left)
    for tie in question.alike:
        forest.tie(*tie)
    return forest


def tie_all(forest: ParityForest, rule: Rule) -> bool:
    """Tie all that a rule ties; return whether it agrees."""
    agrees = True
    for one, other, differ in rule.ties:
        agrees &= forest.tie(one, other, differ)
    return agrees


def choose(question: Question, forest: ParityForest) -> tuple[bool, ...]:
    """Return the better way round for each group: by preferences, then by its first segment's first choice."""
    size = len(question.graph.segments)
    gains: dict[int, int] = {}
    firsts: dict[int, bool] = {}
    found = [forest.find(seam) for seam in question.seams]
    for seam, (head, differs) in zip(question.seams, found, strict=True):
        weight = question.weights[seam]
        gains[head] = gains.get(head, 0) + (-weight if differs else weight)
        firsts.setdefault(head, question.first_choice[seam] ^ differs)
    head_left = {head: gain > 0 if gain else firsts[head] for head, gain in gains.items()}
    fixed, fixed_differs = forest.find(size)
    head_left[fixed] = not fixed_differs
    left = [True] * size
    for seam, (head, differs) in zip(question.seams, found, strict=True):
        left[seam] = head_left[head] ^ differs
    return tuple(left)


def follow_most(question: Question) -> tuple[bool, ...]:
    """Follow the ties of each rule that agrees with those before it; a good choice, not a proven one."""
    forest = tied_to_settled(question)
    for rule in question.rules:
        may_be_spun = bool(rule.instead) and forest.fits(rule.instead)
        if not may_be_spun and forest.fits(rule.ties):
            tie_all(forest, rule)
    return choose(question, forest)


def _disputed(question: Question, broken: list[Rule]) -> tuple[Question, ...]:
    groups = ParityForest(len(question.graph.segments))
    for rule in question.rules:
        first = rule.ties[0].one
        for one, other, _ in (*rule.ties, *rule.instead):
            groups.tie(first, one, False)
            groups.tie(first, other, False)
    for tie in question.alike:
        groups.tie(tie.one, tie.other, False)
    heads = sorted({groups.find(rule.ties[0].one)[0] for rule in broken})
    seams: dict[int, list[int]] = {head: [] for head in heads}
    rules: dict[int, list[Rule]] = {head: [] for head in heads}
    for seam in question.seams:
        seams.get(groups.find(seam)[0], []).append(seam)
    for rule in question.rules:
        rules.get(groups.find(rule.ties[0].one)[0], []).append(rule)
    return tuple(_part(question, seams[head], rules[head]) for head in heads)


def _part(question: Question, seams: list[int], rules: list[Rule]) -> Question:
    inside = set(seams)
    settled = tuple((segment, left) for segment, left in question.settled if segment in inside)
    alike = tuple(tie for tie in question.alike if tie.one in inside)
    return replace(question, seams=tuple(seams), settled=settled, rules=tuple(rules), alike=alike)
