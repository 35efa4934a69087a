"""Raw edges against shapely's mitred buffer, and tips trimmed to meet the neighbours."""

import math
from fractions import Fraction

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import Point as Dot
from shapely.geometry import Polygon

from blocklang.cutting import CuttingOptions, cut
from blocklang.cutting.offsetting import offset
from blocklang.geometry import TICKS_PER_INCH, Arc, Edge, Outline, from_inches
from blocklang.graph import build_graph
from tests.cutting.shapes import ALLOWANCES, QUARTER, graph, outline, polygon, raw
from tests.oracle.scraps import scrap
from tests.support import blocks

TINY = 1e-4  # square inches


def moved(ring: Outline, allowance) -> Polygon:
    return polygon(offset(ring, [float(allowance) * TICKS_PER_INCH] * len(ring.edges)).outline)


@pytest.mark.parametrize("allowance", ALLOWANCES)
@pytest.mark.parametrize(
    "corners",
    [
        blocks.square(3),
        [(0, 0), (4, 0), (0, 4)],
        [(0, 0), (3, 0), (3, 1), (1, 1), (1, 3), (0, 3)],
        [(0, 0), (4, 0), (2.5, 1.5), (2, 3)],
        [(0, 0), (5, 0), (5, 3), (3, 3), (2.5, 1), (2, 3), (0, 3)],
    ],
)
def test_straight_outlines_are_shapelys_mitred_offset(corners, allowance):
    assert moved(outline(corners), allowance).symmetric_difference(raw(corners, allowance)).area < TINY


@given(st.lists(st.tuples(st.floats(0.6, 4), st.floats(0.2, 1)), min_size=3, max_size=9), st.sampled_from(ALLOWANCES))
@settings(max_examples=150, deadline=None)
def test_star_shaped_outlines_are_shapelys_mitred_offset(rays, allowance):
    total = sum(step for _, step in rays)
    assume(all(step / total < 0.45 for _, step in rays))
    heading, corners = 0.0, []
    for length, step in rays:
        corners.append((length * math.cos(heading), length * math.sin(heading)))
        heading += 2 * math.pi * step / total
    ring = outline(corners)
    angles = ring.angles()
    # Tips beyond four allowances are cut off on purpose, and a notch narrower than two allowances closes up.
    assume(all(math.sin(angle / 2) > 0.26 for angle in angles))
    assume(all(edge.length() > 3.5 * float(allowance) * TICKS_PER_INCH for edge in ring.edges))
    expected = raw(corners, allowance)
    assume(expected.geom_type == "Polygon" and not expected.interiors)
    assume(len(expected.exterior.coords) - 1 == len(corners))
    assert moved(ring, allowance).symmetric_difference(expected).area < TINY


def pie(radius):
    corner, right, top = from_inches(0, 0), from_inches(radius, 0), from_inches(0, radius)
    return Outline((Edge(corner, right), Edge(right, top, Arc(corner, False)), Edge(top, corner)))


def hollow(radius, size):
    corner, right, top = from_inches(0, 0), from_inches(radius, 0), from_inches(0, radius)
    far = [from_inches(size, 0), from_inches(size, size), from_inches(0, size)]
    straight = [Edge(a, b) for a, b in zip([right, *far], [*far, top], strict=True)]
    return Outline((*straight, Edge(top, right, Arc(corner, True))))


@pytest.mark.parametrize("allowance", ALLOWANCES)
@pytest.mark.parametrize("ring", [pie(2), hollow(2, 3)], ids=["pie", "hollow"])
def test_arcs_stay_concentric(ring, allowance):
    made = offset(ring, [float(allowance) * TICKS_PER_INCH] * len(ring.edges)).outline
    (arc,) = [edge for edge in made.edges if edge.arc]
    (finished,) = [edge for edge in ring.edges if edge.arc]
    assert arc.arc.centre == finished.arc.centre
    grown = (arc.radius() - finished.radius()) / TICKS_PER_INCH
    assert abs(grown) == pytest.approx(float(allowance), abs=1e-5)
    assert (grown < 0) == finished.arc.clockwise
    expected = polygon(ring).buffer(float(allowance), join_style=2, mitre_limit=20, quad_segs=64)
    # Chords leave an arc by a thousandth of an inch.
    assert polygon(made).symmetric_difference(expected).area < 0.002 * expected.length


def test_a_dent_between_an_arc_and_a_line_is_cut_where_they_cross():
    """A half circle on a wider bar: the raw arc ends on the raw top of the bar."""
    a, b, c, d = (from_inches(*p) for p in [(0, 0), (6, 0), (6, 2), (0, 2)])
    right, left, middle = from_inches(5, 2), from_inches(1, 2), from_inches(3, 2)
    ring = Outline(
        (Edge(a, b), Edge(b, c), Edge(c, right), Edge(right, left, Arc(middle, False)), Edge(left, d), Edge(d, a))
    )
    made = polygon(offset(ring, [0.25 * TICKS_PER_INCH] * 6).outline)
    box = Polygon([(-0.25, -0.25), (6.25, -0.25), (6.25, 2.25), (-0.25, 2.25)])
    expected = box.union(Dot(3, 2).buffer(2.25, quad_segs=256))
    assert made.is_valid
    assert made.symmetric_difference(expected).area < 0.02


def test_a_hollow_tighter_than_the_allowance_is_bridged():
    centre = from_inches(3, 2)
    a, b, c, d = (from_inches(*p) for p in [(0, 0), (6, 0), (6, 2), (0, 2)])
    right, left = from_inches(3.2, 2), from_inches(2.8, 2)
    ring = Outline(
        (Edge(a, b), Edge(b, c), Edge(c, right), Edge(right, left, Arc(centre, True)), Edge(left, d), Edge(d, a))
    )
    made = polygon(offset(ring, [0.25 * TICKS_PER_INCH] * 6).outline)
    assert made.is_valid
    assert made.contains(Polygon([(-0.2, -0.2), (6.2, -0.2), (6.2, 2.2), (-0.2, 2.2)]))


def test_a_very_long_tip_is_cut_off_square():
    needle = [(0, 0), (6, 0), (6, 0.5)]
    made = moved(outline(needle), QUARTER)
    assert raw(needle, QUARTER).bounds[0] < -3
    assert made.bounds[0] == pytest.approx(-0.5, abs=0.03)


def piece_named(block, name):
    cutting = cut(graph(block))
    return next(piece for piece in cutting.pieces if piece.name == name)


def finished(block, piece):
    return polygon(block.patches[piece.patches[0]].outline)


EVERY = [
    blocks.star(),
    blocks.star(6, 3),
    blocks.pinwheel(),
    blocks.hexagons(1),
    blocks.drunkards_path(),
    blocks.whirl(),
]


@pytest.mark.parametrize("block", EVERY, ids=lambda block: block.name)
def test_trimmed_patches_keep_their_allowance(block):
    """Whatever is trimmed lies further than an allowance from the finished patch; nothing but tips is trimmed."""
    for piece in cut(graph(block)).pieces:
        inside, made = finished(block, piece), polygon(piece.outline)
        assert made.is_valid
        assert made.buffer(0.002).contains(inside.buffer(0.25))
        # The last chord of an arc leaves its tangent by up to 0.03 radians, which shapely prolongs by an allowance.
        slack = 0.009 if any(edge.arc for edge in piece.outline.edges) else 0.001
        assert inside.buffer(0.25 + slack, join_style=2, mitre_limit=20).contains(made)


def test_a_half_square_triangle_is_trimmed_to_its_unit():
    """The dog-ear of sqrt 2 times the allowance is cut off: the raw triangle stays within the raw square unit."""
    corners = {"upper.1": [(0, 0), (3, 3), (0, 3)], "fog:lower.1": [(0, 0), (3, 0), (3, 3)]}
    from tests.cutting.shapes import block_of

    block = block_of(corners, (3, 3))
    made = polygon(piece_named(block, "upper").outline)
    square = Polygon([(-0.25, -0.25), (3.25, -0.25), (3.25, 3.25), (-0.25, 3.25)])
    expected = raw(corners["upper.1"], QUARTER).intersection(square)
    assert made.symmetric_difference(expected).area < TINY
    assert raw(corners["upper.1"], QUARTER).bounds[1] == pytest.approx(-0.25 - math.sqrt(2) / 4, abs=1e-4)


def test_a_diamond_of_the_star_is_trimmed_to_the_raw_edges_beside_it():
    """At the centre and at the outer point the neighbours' raw edges run square to a side of the diamond."""
    block = blocks.star()
    piece = piece_named(block, "diamond")
    ring = block.patches[piece.patches[0]].outline
    sharp = [c for c, angle in zip(ring.corners, ring.angles(), strict=True) if angle < 1]
    made = polygon(piece.outline)
    untrimmed = moved(ring, QUARTER)
    for corner in sharp:
        at = Dot(corner.x / TICKS_PER_INCH, corner.y / TICKS_PER_INCH)
        assert made.exterior.distance(at) >= 0.25 - 1e-4
        reach = max(at.distance(Dot(p)) for p in untrimmed.exterior.coords if at.distance(Dot(p)) < 1)
        kept = max(at.distance(Dot(p)) for p in made.exterior.coords if at.distance(Dot(p)) < 1)
        assert reach == pytest.approx(0.25 / math.sin(math.pi / 8), abs=1e-4)
        assert kept < reach - 0.2


def test_square_corners_are_never_trimmed():
    block = blocks.star()
    made = piece_named(block, "corner").outline
    assert len(made.edges) == 4
    assert all(angle == pytest.approx(math.pi / 2, abs=1e-3) for angle in made.angles())


@pytest.mark.slow
@pytest.mark.parametrize("oversize", [Fraction(0), Fraction(1, 2)])
@pytest.mark.parametrize("start", range(0, 500, 100))
def test_random_blocks_are_all_cut_out_whole(start, oversize):
    """Every cut outline holds the finished patch, in 500 random blocks; some have tips in line with a neighbour's."""
    for seed in range(start, start + 100):
        drawn = scrap(seed)
        for piece in cut(build_graph(drawn).graph, CuttingOptions(oversize=oversize)).pieces:
            finished = polygon(drawn.patches[piece.patches[0]].outline)
            assert finished.difference(polygon(piece.outline)).area < TINY, (seed, piece.name)
