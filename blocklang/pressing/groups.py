"""Rules that hang together because they are about the same open choices."""

from collections.abc import Sequence

from blocklang.pressing.parity import ParityForest
from blocklang.pressing.rules import Question, Rule


def groups_of(question: Question, forest: ParityForest, rules: Sequence[Rule]) -> list[tuple[Rule, ...]]:
    """Return the rules group by group; two groups share at most what the forest ties to the settled seams."""
    fixed = forest.find(len(question.graph.segments))[0]
    linked = ParityForest(len(question.graph.segments) + 1)
    firsts: list[int | None] = []
    for rule in rules:
        free = [head for head in heads_of(rule, forest) if head != fixed]
        for head in free:
            linked.tie(free[0], head, False)
        firsts.append(free[0] if free else None)
    groups: dict[int, list[Rule]] = {}
    for place, (rule, first) in enumerate(zip(rules, firsts, strict=True)):
        groups.setdefault(-1 - place if first is None else linked.find(first)[0], []).append(rule)
    return [tuple(group) for group in groups.values()]


def heads_of(rule: Rule, forest: ParityForest) -> list[int]:
    """Return the heads of all segments that a rule is about, with repeats."""
    return [forest.find(end)[0] for tie in (*rule.ties, *rule.instead) for end in (tie.one, tie.other)]
