"""Patches as they are drawn: raw edges, stripes, textures, names, themes; checked with geometry of their own."""

import math
from itertools import pairwise

import pytest
from blocklang_drawing import Frame, Texture, draw_lines, text_width, theme_for
from blocklang_drawing.hatching import hatch
from blocklang_drawing.placing import lying_straight, place_unit
from blocklang_drawing.raw_edges import raw_ring
from blocklang_drawing.shapes import Text
from blocklang_drawing.stripes import stripe_rings
from blocklang_drawing.textures import LOOKS, lightness, looks_for, luminance
from shapely.geometry import LineString, Polygon
from shapely.ops import unary_union

from blocklang.block import Fabric, Value
from blocklang.geometry import TICKS_PER_INCH
from tests.library.plans import NAMES as LIBRARY
from tests.library.plans import graph_of
from tests.sheets.plans import NAMES, named_plan, striped_star
from tests.support import blocks

INCH2 = TICKS_PER_INCH**2


def test_a_lone_square_has_its_allowance_all_round():
    graph = named_plan("four-patch").graph
    ring = Polygon(raw_ring(graph, 0, {0}))
    assert ring.area / INCH2 == pytest.approx(3.5**2, abs=1e-6)
    assert ring.is_valid


def test_a_unit_keeps_its_seams_and_gains_an_allowance_round_the_outside():
    graph = named_plan("four-patch").graph
    rings = [Polygon(raw_ring(graph, patch, {0, 1, 2, 3})) for patch in range(4)]
    whole = unary_union(rings)
    assert whole.area / INCH2 == pytest.approx(6.5**2, abs=1e-6)
    assert sum(ring.area for ring in rings) == pytest.approx(whole.area, rel=1e-9)


@pytest.mark.parametrize("name", NAMES)
def test_raw_edges_of_the_whole_block_are_its_outline_with_the_allowance(name):
    plan = named_plan(name)
    everything = tuple(range(len(plan.block.patches)))
    whole = unary_union([Polygon(ring).buffer(2) for ring in place_unit(plan.graph, "all", everything).rings])
    finished = Polygon(plan.block.outline.chords())
    expected = finished.buffer(plan.block.seam_allowance, join_style="mitre", mitre_limit=10)
    assert whole.symmetric_difference(expected).area / expected.area < 2e-3


def test_stripes_share_a_patch_equally_and_start_along_their_edge():
    patch = next(patch for patch in striped_star().patches if patch.stripes)
    rings = stripe_rings(patch, patch.outline.chords())
    assert [fabric for fabric, _ in rings] == ["deep", "coral", "fog"]
    areas = [Polygon(ring).area for _, ring in rings]
    assert areas == pytest.approx([patch.outline.area() / 3] * 3, rel=1e-6)
    edge = LineString([patch.stripes.start, patch.stripes.end])
    distances = [Polygon(ring).distance(edge) for _, ring in rings]
    assert distances[0] < 2
    assert distances == sorted(distances)


@pytest.mark.parametrize("crossed", [False, True])
def test_texture_lines_stay_inside_their_patch(crossed):
    ring = ((0.0, 0.0), (60.0, 5.0), (30.0, 20.0), (55.0, 50.0), (5.0, 45.0))
    shape = Polygon(ring).buffer(1e-6)
    trails = hatch(ring, Texture(45, 5, 0.7, crossed))
    assert len(trails) > 10
    assert all(shape.contains(LineString([trail.start, trail.stretches[0].end])) for trail in trails)


@pytest.mark.parametrize("name", NAMES)
def test_patch_names_lie_inside_their_patches(name):
    block = named_plan(name).block
    drawing = draw_lines(block, theme_for(block.fabrics))
    frame = Frame.fit(block.outline.bounds(), 428, 428, left=2, top=2)
    shapes = {patch.id: Polygon(frame.ring(patch.outline.chords())) for patch in block.patches}
    texts = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    assert len(texts) == len(block.patches)
    for text in texts:
        half = text_width(text.text, text.size) / 2
        x, y = text.at
        line = LineString([(x - half, y - text.size * 0.3), (x + half, y - text.size * 0.3)])
        assert shapes[text.text].contains(line)
        assert text.size >= 8


def test_a_patch_too_small_for_its_name_stays_bare():
    block = blocks.grid(40, 40, 0.5)
    assert not any(isinstance(shape, Text) for shape in draw_lines(block, theme_for(block.fabrics)).shapes)


def fabrics(count: int) -> list[Fabric]:
    return [
        Fabric(f"f{i}", "", Value.MEDIUM, f"#{(i * 23) % 256:02x}{(i * 57) % 256:02x}{(i * 91) % 256:02x}")
        for i in range(count)
    ]


@pytest.mark.parametrize("count", [1, 2, 3, 7, 12])
def test_black_and_white_tells_every_fabric_apart_and_keeps_their_order(count):
    known = fabrics(count)
    theme = theme_for(known, black_and_white=True)
    looks = {(fill.colour, fill.texture) for _, fill in theme.fills}
    assert len(looks) == count
    assert all(fill.colour[1:3] == fill.colour[3:5] == fill.colour[5:7] for _, fill in theme.fills)
    ordered = sorted(known, key=lambda fabric: -luminance(fabric.colour))
    backgrounds = [luminance(theme.fill(fabric.id).colour) for fabric in ordered]
    assert backgrounds == sorted(backgrounds, reverse=True)


def test_looks_go_from_light_to_dark_and_neighbours_differ_in_their_lines():
    light = [lightness(look.luminance) for look in LOOKS]
    assert all(before - after > 4 for before, after in pairwise(light))
    assert all(before.texture != after.texture for before, after in pairwise(LOOKS))
    assert light[0] == 100
    assert all(look.texture is None or look.texture.spacing * 5 <= 36 for look in LOOKS), "five lines in half an inch"


def test_tones_are_as_light_as_the_looks_they_stand_for():
    for look in LOOKS:
        assert lightness(luminance(look.tone)) == pytest.approx(lightness(look.luminance), abs=0.3)


@pytest.mark.parametrize("name", LIBRARY)
def test_without_colour_a_light_fabric_looks_light_and_a_dark_one_dark(name):
    for fabric, fill in fills_of(name):
        shown = lightness(luminance(fill.tone))
        low, high = {Value.LIGHT: (80, 100), Value.MEDIUM: (35, 75), Value.DARK: (0, 50)}[fabric.value]
        assert low <= shown <= high, fabric.id
        assert abs(shown - lightness(luminance(fabric.colour))) < 15, fabric.id


def fills_of(name):
    known = graph_of(name).block.fabrics
    theme = theme_for(known, black_and_white=True)
    return [(fabric, theme.fill(fabric.id)) for fabric in known]


def test_lightness_is_that_of_the_standard():
    # CIE 15: L* of the neutral greys of sRGB (a mid grey of 18.4 % is about 50).
    assert lightness(1.0) == pytest.approx(100)
    assert lightness(0.0) == 0
    assert lightness(0.1842) == pytest.approx(50, abs=0.05)
    assert lightness(216 / 24389) == pytest.approx(8, abs=1e-6)


def test_more_fabrics_than_looks_keep_their_order():
    many = looks_for([f"#{255 - i:02x}{255 - i:02x}{255 - i:02x}" for i in range(0, 255, 12)])
    places = [LOOKS.index(look) for look in many]
    assert places == sorted(places) and places[0] == 0 and places[-1] == len(LOOKS) - 1


def test_ink_reads_on_every_fabric():
    for _, fill in theme_for(fabrics(12)).fills:
        light, dark = sorted((luminance(fill.colour), luminance(fill.ink)), reverse=True)
        assert (light + 0.05) / (dark + 0.05) >= 3


def test_the_back_is_mirrored():
    front, back = Frame.fit((0, 0, 100, 50), 200, 100), Frame.fit((0, 0, 100, 50), 200, 100, mirrored=True)
    assert front.at((10, 20)) == (20, 60)
    assert back.at((10, 20)) == (180, 60)


def test_a_diamond_on_its_point_is_laid_straight():
    ring = blocks.patch("p", "fog", [(2, 0), (4, 2), (2, 4), (0, 2)]).outline
    assert abs(lying_straight(ring)) == pytest.approx(math.pi / 4)
    assert lying_straight(blocks.patch("p", "fog", blocks.square(3)).outline) == 0.0
