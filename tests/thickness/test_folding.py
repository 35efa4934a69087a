"""What holds for every folded block, however it is pressed."""

import math
import random
import time
from functools import cache

import pytest

from blocklang.assembly import Assembly
from blocklang.block import SpinSense
from blocklang.geometry import TICKS_PER_INCH, Edge, Point
from blocklang.pressing import press
from blocklang.thickness import Folded, Lies, Nearby, Thickness, fold, layers_at, measure
from blocklang.thickness.cloth import cut_outlines
from tests.support import blocks
from tests.support.generated import any_block
from tests.support.route import assembly_of
from tests.thickness.wedges import MIDDLE, Counted, junction_at, layers_under, wedges

SEEDS = tuple(seed for seed in range(30) if len(any_block(seed).patches) <= 20)[:10]
ALLOWANCE = TICKS_PER_INCH / 4


def pressed(assembly: Assembly) -> Lies:
    """Return directions as the planner finds them."""
    pressing = press(assembly)
    return Lies.of(pressing.directions, (s.junction for s in pressing.spins if s.sense is not SpinSense.NONE))


def any_way(assembly: Assembly, seed: int) -> Lies:
    """Return directions taken by lot, opened ones among them."""
    rng = random.Random(seed)
    return Lies(
        {s.index: rng.choice((s.left, s.right, s.left, s.right, None)) for s in assembly.graph.seams}, frozenset()
    )


@cache
def folded(seed: int, planned: bool) -> tuple[Assembly, Lies, Folded, Thickness]:
    """Return a generated block, folded and measured."""
    assembly = assembly_of(any_block(seed))
    lies = pressed(assembly) if planned else any_way(assembly, seed)
    cloth = fold(assembly, lies)
    return assembly, lies, cloth, measure(assembly.graph, cloth)


def has_curves(assembly: Assembly) -> bool:
    """Tell whether a seam is curved."""
    return any(seam.edge.arc for seam in assembly.graph.seams)


@pytest.mark.parametrize("planned", [True, False], ids=["planned", "by lot"])
@pytest.mark.parametrize("seed", SEEDS)
def test_no_cloth_is_lost_or_made(seed: int, planned: bool) -> None:
    assembly, _, _, thickness = folded(seed, planned)
    cut = sum(outline.area() for outline in cut_outlines(assembly.graph)) / TICKS_PER_INCH**2
    # Cloth that is eased round a curve becomes a little larger on one side of it and smaller on the other.
    assert thickness.cloth == pytest.approx(cut, rel=0.03 if has_curves(assembly) else 2e-4)


@pytest.mark.parametrize("seed", SEEDS[:5])
def test_regions_say_what_a_needle_meets(seed: int) -> None:
    assembly, _, cloth, thickness = folded(seed, False)
    low_x, low_y, high_x, high_y = assembly.graph.block.outline.bounds()
    rng, met = random.Random(seed), 0
    for _ in range(60):
        place = rng.uniform(low_x, high_x), rng.uniform(low_y, high_y)
        inches = place[0] / TICKS_PER_INCH, place[1] / TICKS_PER_INCH
        found = [r.layers for r in thickness.regions if layers_under(Folded((_as_layer(r),)), inches)]
        if len(found) == 1:
            met += 1
            assert found == [layers_under(cloth, inches)], inches
        assert len(found) <= 1
    assert met > 20


def _as_layer(region: object) -> object:
    from blocklang.thickness import Layer

    return Layer(0, region.rings, False, False)


@pytest.mark.parametrize("planned", [True, False], ids=["planned", "by lot"])
@pytest.mark.parametrize("seed", SEEDS)
def test_a_junction_by_itself_is_as_thick_as_in_its_block(seed: int, planned: bool) -> None:
    assembly, lies, _, thickness = folded(seed, planned)
    near, segments = Nearby(assembly), assembly.graph.segments
    bent = {j for s in segments if s.edge.arc for j in (s.start, s.end)}
    for junction in assembly.graph.junctions:
        others = [s.edge for s in segments if junction.index not in (s.start, s.end)]
        alone = all(_distance(junction.at, edge) > 2.1 * ALLOWANCE for edge in others)
        if alone and junction.index not in bent:
            assert near.layers(junction.index, lies) == thickness.piles[junction.index].layers, junction


def _distance(at: Point, edge: Edge) -> float:
    return min(math.dist(at, edge.at(step / 64)) for step in range(65))


def test_asking_about_one_junction() -> None:
    counted = Counted(wedges("ABCD", (0, 90, 180, 270)), {"A B": "A", "C D": "D", "B C": "C", "A D": "D"})
    assert layers_at(counted.assembly, junction_at(counted.assembly, MIDDLE), counted.lies) == 9


@pytest.mark.parametrize("seams", [4, 6, 8, 10, 12])
def test_a_spun_centre_has_as_many_layers_as_seams(seams: int) -> None:
    names = "ABCDEFGHIJKL"[:seams]
    presses = {f"{names[k - 1]} {names[k]}": names[k] for k in range(seams)}
    block = wedges(names, [360 / seams * k for k in range(seams)])
    counted = Counted(block, presses, [MIDDLE])
    assert counted.round([360 / seams * (k + 0.5) for k in range(seams)]) == [seams] * seams


def test_a_spun_centre_shows_the_right_side_of_every_patch() -> None:
    presses = {"A B": "B", "B C": "C", "C D": "D", "D A": "A"}
    counted = Counted(wedges("ABCD", (0, 90, 180, 270)), presses, [MIDDLE])
    uppermost = []
    for x, y in ((6.1, 6.1), (5.9, 6.1), (5.9, 5.9), (6.1, 5.9)):
        over = [layer for layer in counted.folded.layers if layers_under(Folded((layer,)), (x, y))]
        uppermost.append((counted.assembly.graph.block.patches[over[-1].patch].id, over[-1].turned))
    # Over each quarter lies the corner of the patch before it: the little four-patch.
    assert uppermost == [("D", True), ("A", True), ("B", True), ("C", True)]


def test_what_lies_uppermost_beside_a_plain_seam() -> None:
    counted = Counted(wedges("AB", (90, 270)), {"A B": "A"})
    left = [la.turned for la in counted.folded.layers if layers_under(Folded((la,)), (5.9, 6.0))]
    # From the front: A, its allowance folded back, and B's allowance, its wrong side outward.
    assert left == [False, True, False]
    loose = [la for la in counted.folded.layers if la.is_loose]
    assert loose and not any(layers_under(Folded((la,)), (5.9, 6.0)) for la in loose)


def test_the_highest_pile_is_named_with_its_place() -> None:
    presses = {"A B": "A", "C D": "D", "B C": "C", "A D": "D"}
    counted = Counted(wedges("ABCD", (0, 90, 180, 270)), presses)
    highest = counted.thickness.highest
    assert (highest.junction, highest.layers) == (junction_at(counted.assembly, MIDDLE), 9)
    assert layers_under(counted.folded, (highest.at[0] / TICKS_PER_INCH, highest.at[1] / TICKS_PER_INCH)) == 9
    assert counted.thickness.area == pytest.approx(12.5**2, rel=1e-4)
    assert counted.thickness.mean == pytest.approx(4 * 6.5**2 / 12.5**2, rel=1e-4)


def test_the_allowance_beyond_the_end_of_a_seam_is_left_alone_where_the_block_has_a_notch() -> None:
    # Two squares side by side and one on top of the left one: the upper seam ends half-way along the row's edge.
    squares = {"a": (0, 0), "b": (3, 0), "c": (0, 3)}
    patches = [
        blocks.patch(name, "fog", [(x, y), (x + 3, y), (x + 3, y + 3), (x, y + 3)]) for name, (x, y) in squares.items()
    ]
    outline = [(0, 0), (6, 0), (6, 3), (3, 3), (3, 6), (0, 6)]
    counted = Counted(blocks.block(patches, outline), {"a b": "a", "a c": "a"})
    places = ((1.5, 2.9), (1.5, 3.1), (4.5, 2.9), (4.5, 3.1))
    # Toward the row: 3 under the seam, 1 above it; beyond its end the row's allowance still stands out, single.
    assert [layers_under(counted.folded, place) for place in places] == [3, 1, 1, 1]


def test_a_mirrored_block_is_as_thick() -> None:
    presses = {"A B": "A", "B C": "B", "A D": "A", "B D": "B", "C D": "C"}
    plain = Counted(wedges("ABCD", (0, 90, 135, 180)), presses)
    mirrored = Counted(wedges("CBAD", (0, 45, 90, 180)), presses)
    assert plain.thickness.highest.layers == mirrored.thickness.highest.layers == 11
    assert plain.thickness.cloth == pytest.approx(mirrored.thickness.cloth, rel=1e-6)


def test_the_same_block_is_folded_the_same_way() -> None:
    assembly = assembly_of(blocks.star())
    lies = pressed(assembly)
    assert fold(assembly, lies) == fold(assembly, lies)
    assert measure(assembly.graph, fold(assembly, lies)) == measure(assembly.graph, fold(assembly, lies))


@pytest.mark.slow
def test_three_hundred_patches_take_seconds() -> None:
    # About a second on a quiet machine of two cores; the bound leaves room for a loaded one.
    assembly = assembly_of(blocks.grid(17, 17))
    lies = pressed(assembly)
    fold(assembly_of(blocks.grid(2, 2)), pressed(assembly_of(blocks.grid(2, 2))))
    start = time.process_time()
    thickness = measure(assembly.graph, fold(assembly, lies))
    assert time.process_time() - start < 6
    assert thickness.highest.layers == 4
