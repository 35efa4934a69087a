"""Junctions in a ring of an odd number cannot all be spun."""

import pytest

from blocklang.pressing import press
from tests.pressing.checker import check
from tests.pressing.lattices import triangles
from tests.pressing.sewing import sew


def neighbours(assembly):
    return {frozenset((s.start, s.end)) for s in assembly.graph.seams}


def test_three_junctions_in_a_ring_are_named():
    assembly = sew(triangles(3, 3))
    pressing = press(assembly)
    check(assembly, pressing)
    assert pressing.proven
    assert pressing.locked == pressing.lockable
    spun = {s.junction for s in pressing.spins}
    (reason,) = pressing.reasons
    assert set(pressing.lockable) - spun == {reason.junction}
    assert reason.text.startswith("The 3 junctions of a ring (where down.")
    assert "odd number" in reason.text


def test_no_two_spun_neighbours_turn_the_same_way():
    assembly = sew(triangles(6, 6))
    pressing = press(assembly)
    check(assembly, pressing)
    senses = {s.junction: s.sense for s in pressing.spins}
    pairs = [tuple(pair) for pair in neighbours(assembly) if all(j in senses for j in pair)]
    assert all(senses[a] is not senses[b] for a, b in pairs)


@pytest.mark.parametrize(("columns", "rows"), [(4, 3), (6, 6)])
def test_one_junction_a_row_is_spun(columns, rows):
    """All junctions of a row lock the same way round, so a second one finds the join on its wrong side."""
    assembly = sew(triangles(columns, rows))
    pressing = press(assembly)
    assert pressing.proven
    assert pressing.locked == pressing.lockable
    assert len(pressing.spins) == min(columns, rows) - 1
