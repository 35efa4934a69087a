"""When papers are offered."""

import pytest

from blocklang.paper_piecing import offer_papers
from tests.support import blocks
from tests.support.route import assembly_of


@pytest.mark.parametrize(
    ("block", "offered", "pivots"),
    [
        (blocks.hexagons(2), True, 24),
        (blocks.hexagons(1), False, 6),
        (blocks.star(), False, 8),
        (blocks.grid(3, 3), False, 0),
    ],
    ids=["flower of 19", "flower of 7", "star", "nine patch"],
)
def test_papers_are_offered_where_a_machine_turns_more_often_than_there_are_patches(block, offered, pivots):
    offer = offer_papers(assembly_of(block))
    assert (offer.offered, offer.pivots, offer.patches) == (offered, pivots, len(block.patches))
    assert offer.offered == (offer.pivots > offer.patches)
    assert offer.reason.endswith(".")
    assert (str(pivots) in offer.reason) == (pivots > 0)
