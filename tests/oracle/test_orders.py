"""Five thousand random blocks: every order can be sewn as it is told, and none is worse than an exhaustive search finds."""

from dataclasses import replace

import pytest

from blocklang.assembly import Assembly, Count, assemble
from blocklang.block import Block
from tests.oracle import sewing
from tests.oracle.drawing import Drawing, draw
from tests.oracle.orders import NEVER, Orders
from tests.oracle.resewing import resew
from tests.oracle.scraps import circle, scrap
from tests.support import blocks
from tests.support.marking import marks_of
from tests.support.route import assembly_of, graph_of

CHUNK = 125
CHUNKS = 40  # of which a few are quick to run, some more run with every change, and all in the sweep
QUICK, EVERY_TIME = 3, 12
SEARCHED = 9  # patches: up to here every order is tried


def chunks() -> list[object]:
    """Return the chunks of seeds, marked so that a few are run every time."""
    return [pytest.param(n, marks=marks_of(n, QUICK, EVERY_TIME)) for n in range(CHUNKS)]


@pytest.mark.parametrize("chunk", chunks())
def test_random_blocks_are_sewn_as_told_and_with_no_pivot_or_partial_seam_too_many(chunk: int) -> None:
    for seed in range(chunk * CHUNK, (chunk + 1) * CHUNK):
        block = scrap(seed)
        drawing = draw(block)
        assembly = assemble(graph_of(block)).assembly
        if assembly is not None:
            _holds_what_it_says(drawing, assembly, seed)
        if drawing.patches <= SEARCHED:
            _is_the_best(drawing, assembly, seed)
        else:
            assert assembly is not None, f"seed {seed}: no order"


def _holds_what_it_says(drawing: Drawing, assembly: Assembly, seed: int) -> None:
    """Replays, and no count lies under its bound, nor is a proof claimed that the bound does not give."""
    resew(drawing, assembly)
    assert assembly.pivots.count >= assembly.pivots.minimum >= len(drawing.knots), seed
    assert assembly.pivots.proven == (assembly.pivots.count == assembly.pivots.minimum), seed
    assert assembly.partials.proven <= (assembly.partials.count == assembly.partials.minimum), seed


def _is_the_best(drawing: Drawing, assembly: Assembly | None, seed: int) -> None:
    """Sewing seam by seam gives the least; now and then it is held against bends of whole joins, which cannot be fewer."""
    least = sewing.fewest(drawing)
    if seed // 8 % 4 == 0:
        bends = Orders(drawing).fewest()
        assert bends >= (NEVER if least is None else sum(least)), seed
        assert least is None or bends == sum(least) or least[1], seed
    planned = None if assembly is None else (assembly.pivots.count, assembly.partials.count)
    assert planned == least, f"seed {seed}: {planned} planned, {least} needed"


@pytest.mark.parametrize(
    ("block", "least"),
    [
        (blocks.grid(3, 3), (0, 0)),
        (blocks.pinwheel(), (0, 0)),
        (blocks.whirl(), (0, 1)),
        (blocks.hexagons(1), (6, 0)),
        (blocks.star(), (8, 0)),
        (blocks.drunkards_path(2), (0, 0)),
    ],
    ids=lambda value: value.name if isinstance(value, Block) else "",
)
def test_the_searches_find_what_is_known(block: Block, least: tuple[int, int]) -> None:
    """Worked out by hand: a knot for each star point and each hexagon round the middle, a partial seam for a whirl."""
    drawing = draw(block)
    assert sewing.fewest(drawing) == sewing.fewest(drawing, strict=True) == least
    if drawing.patches <= SEARCHED:
        assert Orders(drawing).fewest() == sum(least)


def test_a_ring_of_pieces_is_closed_before_what_goes_into_it() -> None:
    """Joins of two units alone would bend twice at the circle; a ring closed by a straight seam costs nothing."""
    drawing = draw(circle())
    assert (Orders(drawing).fewest(), sewing.fewest(drawing)) == (2, (0, 0))
    assembly = assembly_of(circle())
    _holds_what_it_says(drawing, assembly, 0)
    assert (assembly.pivots.count, assembly.partials.count) == (0, 0)


def test_resewing_notices_a_join_told_too_early() -> None:
    assembly = assembly_of(blocks.grid(3, 3))
    early = replace(assembly, joins=assembly.joins[::-1])
    with pytest.raises((AssertionError, KeyError)):
        resew(draw(blocks.grid(3, 3)), early)


def test_resewing_notices_a_count_that_is_wrong() -> None:
    block = blocks.hexagons(1)
    assembly = assembly_of(block)
    fewer = replace(assembly, pivots=Count(5, 5, True))
    with pytest.raises(AssertionError):
        resew(draw(block), fewer)
