"""What the trade expects of well-known blocks."""

import subprocess
import sys

import pytest

from blocklang.block import SpinSense
from blocklang.pressing import press
from tests.pressing.checker import check
from tests.pressing.sewing import sew
from tests.support import blocks

BLOCKS = {
    "four-patch": blocks.grid(2, 2),
    "nine-patch": blocks.grid(3, 3),
    "grid": blocks.grid(5, 4),
    "pinwheel": blocks.pinwheel(),
    "star": blocks.star(),
    "star-of-nines": blocks.star(12, 3),
    "flower": blocks.hexagons(1),
    "field": blocks.hexagons(2),
    "path": blocks.drunkards_path(4),
}


@pytest.mark.parametrize("name", BLOCKS)
def test_directions_show_what_the_pressing_says(name):
    assembly = sew(BLOCKS[name])
    pressing = press(assembly)
    check(assembly, pressing)
    assert pressing.proven


@pytest.mark.parametrize("name", ["four-patch", "nine-patch", "grid", "pinwheel", "star", "path"])
def test_every_junction_locks_and_is_spun(name):
    pressing = press(sew(BLOCKS[name]))
    assert pressing.lockable
    assert pressing.locked == pressing.lockable
    assert tuple(spun.junction for spun in pressing.spins) == pressing.lockable
    assert pressing.reasons == ()


def test_the_eight_pointed_star_opens_flat():
    assembly = sew(BLOCKS["star"])
    pressing = press(assembly)
    (centre,) = pressing.spins
    ends = assembly.graph.junctions[centre.junction].ends
    toward = {p.segment: p.toward for p in pressing.directions}
    assert len(ends) == 8
    for one, opposite in zip(ends[:4], ends[4:], strict=True):
        a, b = assembly.graph.segments[one.segment], assembly.graph.segments[opposite.segment]
        a_left = (toward[a.index] == a.left) == one.at_start
        assert a_left == ((toward[b.index] == b.left) == opposite.at_start)


@pytest.mark.parametrize(("columns", "rows"), [(3, 3), (4, 4), (5, 3), (8, 8), (12, 12)])
def test_spins_of_a_grid_alternate(columns, rows):
    """Each seam between two crossings lies clockwise of one and counterclockwise of the other."""
    assembly = sew(blocks.grid(columns, rows))
    pressing = press(assembly)
    assert pressing.proven
    spins = {assembly.graph.junctions[s.junction].at: s.sense for s in pressing.spins}
    inch = 720_720
    assert len(spins) == (columns - 1) * (rows - 1)
    first = spins[inch, inch]
    assert first is not SpinSense.NONE
    for (x, y), sense in spins.items():
        assert (sense is first) == ((x // inch + y // inch) % 2 == 0)


def test_a_chequerboard_is_pressed_toward_the_dark():
    assembly = sew(blocks.grid(4, 4))
    patches = assembly.graph.block.patches
    by_seam = {p.segment: patches[p.toward].fabric for p in press(assembly).directions}
    upright = [s.index for s in assembly.graph.seams if s.edge.start.x == s.edge.end.x]
    rows = {tuple(by_seam[index] for index in upright)}
    assert rows == {("deep",) * 12} or {by_seam[index] for index in upright} == {"deep"}


def test_the_solver_is_not_loaded_where_ties_agree():
    program = (
        "import sys; from tests.support import blocks; from tests.pressing.sewing import sew;"
        "from blocklang.pressing import press; press(sew(blocks.star())); print('highspy' in sys.modules)"
    )
    said = subprocess.run([sys.executable, "-c", program], capture_output=True, text=True, check=True)
    assert said.stdout == "False\n"


@pytest.mark.parametrize("name", BLOCKS)
def test_pressing_is_the_same_every_time(name):
    assembly = sew(BLOCKS[name])
    assert press(assembly) == press(assembly)
