"""Between choices that are equally good the flatter one is taken: counted by folding the whole block both ways."""

import pytest

from blocklang.assembly import Assembly
from blocklang.pressing import press
from blocklang.pressing.bulk import _draws
from blocklang.pressing.lines import follow
from blocklang.pressing.outcome import directions_of, spun_in
from blocklang.pressing.preferences import DEFAULTS, set_in_preference
from blocklang.pressing.rules import Question, ask
from blocklang.thickness import Lies, fold, layer_counter, measure
from tests.library.plans import plan_of


def _layers(question: Question, assembly: Assembly, left: tuple[bool, ...], junctions: set[int]) -> tuple[int, int]:
    spun = [spin.junction for spin in spun_in(question, left)]
    thickness = measure(assembly.graph, fold(assembly, Lies.of(directions_of(question, left), spun)))
    counts = [pile.layers for pile in thickness.piles if pile.junction in junctions]
    return max(counts), sum(counts)


@pytest.mark.parametrize(
    "name", ["log-cabin", "roman-stripe", "hourglass", "nine-patch", "pinwheel", "four-pointed-star"]
)
def test_no_draw_would_be_flatter_turned_round(name: str) -> None:
    assembly = plan_of(name).assembly
    question = ask(assembly, (*DEFAULTS, set_in_preference(assembly)), follow(assembly.graph))
    pressing = press(assembly, layers=layer_counter(assembly))
    left = [True] * len(assembly.graph.segments)
    for one in pressing.directions:
        left[one.segment] = one.toward == assembly.graph.segments[one.segment].left
    chosen = tuple(left)
    draws = _draws(question, chosen)
    assert draws
    for seams in draws:
        turned = tuple(not one if seam in seams else one for seam, one in enumerate(chosen))
        ends = {j for seam in seams for j in (assembly.graph.segments[seam].start, assembly.graph.segments[seam].end)}
        assert _layers(question, assembly, chosen, ends) <= _layers(question, assembly, turned, ends)
