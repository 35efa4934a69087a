"""Cut outlines of patches with notches too narrow for the allowance, against shapely's mitred buffer."""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from blocklang.cutting.notches import crosses_itself
from blocklang.cutting.offsetting import offset
from blocklang.geometry import TICKS_PER_INCH, Arc, Edge, Outline, from_inches
from tests.cutting.shapes import ALLOWANCES, outline, polygon, raw

TINY = 1e-4  # square inches

NOTCHES = {
    "deep and narrow": [(0, 0), (4, 0), (4, 3), (2.2, 3), (2, 1), (1.8, 3), (0, 3)],
    "shallow": [(0, 0), (4, 0), (4, 3), (2.1, 3), (2, 2.9), (1.9, 3), (0, 3)],
    "slot": [(0, 0), (4, 0), (4, 3), (2.2, 3), (2.2, 1), (1.8, 1), (1.8, 3), (0, 3)],
    "slot that just closes": [(0, 0), (4, 0), (4, 3), (2.25, 3), (2.25, 1), (1.75, 1), (1.75, 3), (0, 3)],
    "tiny slot": [(0, 0), (4, 0), (4, 3), (2.1, 3), (2.1, 2.9), (1.9, 2.9), (1.9, 3), (0, 3)],
    "two side by side": [(0, 0), (4, 0), (4, 3), (2.4, 3), (2.3, 2.5), (2, 3), (1.7, 2.5), (1.6, 3), (0, 3)],
    "small step": [(0, 0), (4, 0), (4, 3), (2, 3), (2, 2.9), (0, 2.9)],
}


def moved(ring, allowance):
    return offset(ring, [float(allowance) * TICKS_PER_INCH] * len(ring.edges))


@pytest.mark.parametrize("allowance", ALLOWANCES)
@pytest.mark.parametrize("corners", NOTCHES.values(), ids=NOTCHES)
def test_a_narrow_notch_closes_up(corners, allowance):
    made = moved(outline(corners), allowance)
    assert polygon(made.outline).is_valid
    assert polygon(made.outline).symmetric_difference(raw(corners, allowance)).area < TINY


@given(st.lists(st.tuples(st.floats(0.5, 4), st.floats(0.2, 1)), min_size=4, max_size=10), st.sampled_from(ALLOWANCES))
@settings(max_examples=200, deadline=None)
def test_any_star_shaped_outline_is_shapelys_mitred_offset(rays, allowance):
    total = sum(step for _, step in rays)
    assume(all(step / total < 0.45 for _, step in rays))
    heading, corners = 0.0, []
    for length, step in rays:
        corners.append((length * math.cos(heading), length * math.sin(heading)))
        heading += 2 * math.pi * step / total
    ring = outline(corners)
    # Tips beyond four allowances are cut off on purpose.
    assume(all(angle > math.pi or math.sin(angle / 2) > 0.26 for angle in ring.angles()))
    expected = raw(corners, allowance)
    assume(expected.geom_type == "Polygon" and not expected.interiors)
    made = moved(ring, allowance)
    assert not crosses_itself(made.outline)
    assert polygon(made.outline).symmetric_difference(expected).area < TINY


@pytest.mark.parametrize("allowance", ALLOWANCES)
def test_a_hollow_bitten_out_of_a_side_is_round_or_closes_up(allowance):
    for radius in (0.1, 0.2, 0.3, 0.5):
        left, right = from_inches(2 - radius, 3), from_inches(2 + radius, 3)
        corners = [from_inches(0, 3), from_inches(0, 0), from_inches(4, 0), from_inches(4, 3)]
        sides = [Edge(a, b) for a, b in zip([left, *corners], [*corners, right], strict=True)]
        ring = Outline((*sides, Edge(right, left, Arc(from_inches(2, 3), True))))
        made = polygon(moved(ring, allowance).outline)
        assert made.is_valid
        fine = [place for edge in ring.edges for place in edge.chords(error=3)[:-1]]
        bitten = raw([(x / TICKS_PER_INCH, y / TICKS_PER_INCH) for x, y in fine], allowance)
        assert made.symmetric_difference(bitten).area < 0.001


def test_every_side_of_a_closed_notch_lies_beside_its_own_edge():
    ring = outline(NOTCHES["slot"])
    made = moved(ring, ALLOWANCES[0])
    for edge, source in zip(made.outline.edges, made.sources, strict=True):
        assert abs(math.remainder(edge.departs() - ring.edges[source].departs(), math.pi)) < 1e-3
    assert len(made.sources) == 4


def test_crossing_is_told_from_touching_corners():
    assert not crosses_itself(outline([(0, 0), (4, 0), (4, 3), (0, 3)]))
    bow = [from_inches(*place) for place in [(0, 0), (2, 2), (2, 0), (0, 2)]]
    assert crosses_itself(Outline(tuple(Edge(a, b) for a, b in zip(bow, bow[1:] + bow[:1], strict=True))))
