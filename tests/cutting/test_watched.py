"""A cutting method that fails while it is asked is named once, and the plan is made without it."""

import pytest

from blocklang.calling import Watched
from blocklang.cutting import METHODS, Claim, CuttingMethod, Lay
from blocklang.plan import PlanOptions
from blocklang.route import Checked, Techniques, plan
from tests.cutting.shapes import graph
from tests.support import blocks


def sinks(*_):
    raise ValueError("the tide came in")


def claims_all(outline, allowance, outside):
    return Claim((4.0,), Lay.UPRIGHT, "the sides on the straight grain", how="fold a square")


BROKEN = [
    (CuttingMethod("sunk", "it sinks", 200, claims=sinks), "It fails with ValueError: the tide came in."),
    (CuttingMethod("sunk", "it sinks", 200, offers=sinks), "It fails with ValueError: the tide came in."),
    (CuttingMethod("sunk", "it sinks", 200, claims=lambda *_: 3), "It gives something other than a Claim or None."),
    (CuttingMethod("sunk", "it sinks", 200, offers=lambda *_: "x"), "It gives something other than a Offer or None."),
]


@pytest.mark.parametrize(("broken", "found"), BROKEN)
def test_a_method_that_fails_is_named_once_and_left_out(broken, found):
    checked = Checked(graph(blocks.pinwheel()), ())
    planned = plan(checked, PlanOptions(), Techniques(cutting_methods=(broken,)))
    sound = plan(checked, PlanOptions(), Techniques())
    (diagnostic,) = planned.diagnostics
    assert diagnostic.title == "The cutting method `sunk` is broken"
    assert diagnostic.found == found
    assert planned.plan.cutting == sound.plan.cutting


def test_a_sound_method_is_left_as_it_is():
    watched = Watched()
    method = watched.method(CuttingMethod("folded", "from a folded square", 200, claims_all))
    square = graph(blocks.grid(1, 1, 3.0)).block.patches[0].outline
    assert method.claims(square, 0.25, ()) == claims_all(square, 0.25, ())
    assert watched.diagnostics == []
    assert len({one.name for one in METHODS}) == len(METHODS)
