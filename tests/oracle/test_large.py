"""Random blocks of 20 to 60 patches: every order can be sewn as it is told, and says honestly what is proven."""

import pytest

from tests.oracle.drawing import draw
from tests.oracle.resewing import resew
from tests.oracle.scraps import scrap
from tests.support.route import assembly_of


@pytest.mark.parametrize("patches", [20, 40, *(pytest.param(n, marks=pytest.mark.slow) for n in (25, 30, 50, 60))])
@pytest.mark.parametrize("seed", range(8))
def test_larger_random_blocks_are_sewn_as_told(seed: int, patches: int) -> None:
    block = scrap(seed, patches)
    drawing, assembly = draw(block), assembly_of(block)
    resew(drawing, assembly)
    for count in (assembly.pivots, assembly.partials):
        assert count.count >= count.minimum
        assert count.proven <= (count.count == count.minimum)
    assert assembly.pivots.minimum >= len(drawing.knots)
