"""Junctions in a ring of an odd number cannot all be spun."""

import pytest

from blocklang.pressing import press
from tests.pressing.checker import check
from tests.pressing.lattices import rhombs, triangles
from tests.pressing.sewing import sew
from tests.support.route import assembly_of


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


def test_three_placed_copies_round_an_odd_ring_explain_themselves():
    """Three copies meet round a point, and the seam across each one's corner meets those of both others."""
    assembly = assembly_of(rhombs())
    pressing = press(assembly)
    drawing = check(assembly, pressing)
    assert pressing.proven
    assert (len(pressing.lockable), len(pressing.locked)) == (3, 2)
    (reason,) = pressing.reasons
    assert reason.junction not in pressing.locked
    assert "it stands in a ring of 3 junctions (where " in reason.text
    for pair in ("east.corner, east.rest, south.corner and south.rest", "west.corner, west.rest, south.corner"):
        assert pair in reason.text
    assert "in a ring of an odd number one cannot lock" in reason.text
    said = "Press the seam between east.corner and east.rest open, and they lie flat there; one other junction then does not lock."
    assert reason.text.endswith(said)
    toward = {p.segment: p.toward for p in pressing.directions}
    names = [patch.id for patch in assembly.graph.block.patches]
    (seam,) = [s.index for s in assembly.graph.seams if {names[p] for p in s.patches} == {"east.corner", "east.rest"}]
    opened = toward | {seam: None}
    locking = [p for p in drawing.passes if p.lockable and drawing.one_way(p.junction, p.arriving, opened)]
    assert len(locking) == 1
