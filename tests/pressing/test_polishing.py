"""Arrangements too large to be searched as a whole are made better place by place."""

from blocklang.assembly import assemble
from blocklang.graph import build_graph
from blocklang.pressing import DEFAULTS, press
from blocklang.pressing.costs import costs_of
from blocklang.pressing.lines import follow
from blocklang.pressing.parts import follow_most, follow_ties
from blocklang.pressing.polishing import polish
from blocklang.pressing.preferences import set_in_preference
from blocklang.pressing.ranks import Rank
from blocklang.pressing.rules import ask
from blocklang.pressing.search import Answer
from tests.pressing.fields import block_of, field_text


def test_polishing_makes_the_part_better_and_never_worse() -> None:
    graph = build_graph(block_of(field_text("ohio-star", 4, cell=6))).graph
    assert graph is not None
    assembly = assemble(graph).assembly
    assert assembly is not None
    question = ask(assembly, (*DEFAULTS, set_in_preference(assembly)), follow(graph))
    part = max(follow_ties(question).disputed, key=lambda one: len(one.seams))
    before = Answer(follow_most(part), 1.0)
    after = polish(part, before)
    first, then = (costs_of(part, answer.left, part.seams) for answer in (before, after))
    assert then < first
    assert sum(then[: Rank.LOCKS + 1]) < sum(first[: Rank.LOCKS + 1])
    assert polish(part, before) == after


def test_a_large_field_that_is_not_searched_is_not_called_proven() -> None:
    graph = build_graph(block_of(field_text("ohio-star", 4, cell=6))).graph
    assert graph is not None
    assembly = assemble(graph).assembly
    assert assembly is not None
    pressing = press(assembly)
    assert pressing.proven == (pressing.gap == 0.0)
    assert len(pressing.locked) < len(pressing.lockable) and not pressing.proven
