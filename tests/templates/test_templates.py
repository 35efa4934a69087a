"""Templates held against the block: outlines, dots, tips, counts, grain."""

import math
from dataclasses import replace

import pytest
from shapely.geometry import LineString, Polygon

from blocklang.cutting import CuttingOptions, cut, templates_of
from blocklang.cutting.finished import finished_patches
from blocklang.cutting.motions import motions
from blocklang.geometry import TICKS_PER_INCH, Outline, from_inches
from tests.cutting.shapes import ALLOWANCES, graph, polygon, raw
from tests.sheets.plans import striped_star
from tests.support import blocks

BLOCKS = {
    "nine patch": lambda: blocks.grid(3, 3, 2.0),
    "pinwheel": blocks.pinwheel,
    "star": blocks.star,
    "large star": lambda: blocks.star(16, 3),
    "whirl": blocks.whirl,
    "path": blocks.drunkards_path,
    "flower": lambda: blocks.hexagons(2),
    "striped star": striped_star,
    "left and right": lambda: left_and_right(),
}
TRIMMED = {"star", "large star", "striped star", "pinwheel", "left and right"}
#: The lattice moves a corner by half a tick, and a turned template each of its corners by as much again.
NEAR = 8


def left_and_right():
    """A square of four half-rectangle triangles, two of them mirror images of the others."""
    corners = {
        "deep:a.1": [(0, 0), (2, 0), (2, 4)],
        "fog:a.2": [(0, 0), (2, 4), (0, 4)],
        "deep:a.3": [(2, 0), (4, 0), (2, 4)],
        "fog:a.4": [(4, 0), (4, 4), (2, 4)],
    }
    patches = [blocks.patch(name.split(":")[1], name.split(":")[0], ring) for name, ring in corners.items()]
    return blocks.block(patches, blocks.square(4))


def made(name, **options):
    block = BLOCKS[name]()
    found = graph(block)
    cutting = cut(found, CuttingOptions(**options))
    return found, cutting, templates_of(found, cutting)


@pytest.mark.parametrize("name", BLOCKS)
def test_every_patch_has_one_template_that_lies_on_it(name):
    found, _, templates = made(name)
    laid = [place.patch for template in templates for place in template.places]
    assert sorted(laid) == list(range(len(found.block.patches)))
    for template in templates:
        for place in template.places:
            finished = Polygon(place.motion.lay(corner) for corner in template.finished.chords())
            patch = Polygon(found.block.patches[place.patch].outline.chords())
            assert finished.symmetric_difference(patch).area < 1e-5 * patch.area + NEAR * patch.length


@pytest.mark.parametrize("name", BLOCKS)
def test_dots_lie_on_the_neighbours_dots(name):
    """Whatever two patches share a seam: at both ends of it, and at its quarters when it curves, both have a dot."""
    found, _, templates = made(name)
    dots = {
        place.patch: [place.motion.lay(dot.at) for dot in template.dots]
        for template in templates
        for place in template.places
    }
    for seam in found.seams:
        wanted = [seam.edge.start, seam.edge.end]
        if seam.edge.arc:
            wanted += [seam.edge.at(share) for share in (0.25, 0.5, 0.75)]
        for patch in seam.patches:
            for place in wanted:
                assert min(math.dist(place, dot) for dot in dots[patch]) <= 96, (patch, place)


@pytest.mark.parametrize("name", BLOCKS)
def test_a_dot_that_is_not_open_is_a_match_point_of_every_patch(name):
    found, _, templates = made(name)
    for template in templates:
        for place in template.places:
            ends = [found.segments[i].edge.at(s) for i, _ in found.sides[place.patch] for s in (0, 0.25, 0.5, 0.75, 1)]
            always = [place.motion.lay(dot.at) for dot in template.dots if dot.always]
            assert always
            assert all(min(math.dist(dot, end) for end in ends) <= 96 for dot in always)


@pytest.mark.parametrize("name", BLOCKS)
@pytest.mark.parametrize("copies", [1, 5])
def test_counts_are_those_of_the_cutting_list(name, copies):
    _, cutting, templates = made(name, copies=copies)
    uses = sorted((use for template in templates for use in template.uses), key=lambda use: use.piece)
    assert [use.piece for use in uses] == list(range(len(cutting.pieces)))
    for use in uses:
        piece = cutting.pieces[use.piece]
        assert use.count == piece.count
        # A line may begin with the mirror image of the patch that the template is drawn from.
        assert use.reversed in (piece.reversed, piece.count - piece.reversed)


def test_mirror_images_share_a_template():
    _, cutting, (template,) = made("left and right")
    assert sum(use.reversed for use in template.uses) == 2
    assert sum(use.count for use in template.uses) == 4
    assert [use.reversed for use in template.uses] == [1, 1]
    assert [cutting.pieces[use.piece].reversed for use in template.uses] == [1, 1]


@pytest.mark.parametrize("allowance", ALLOWANCES)
@pytest.mark.parametrize(
    "corners",
    [
        blocks.square(3),
        blocks.square(4, 1),
        [(0, 0), (3, 0), (4, 2), (0, 2)],
        [(0, 0), (3, 0), (4, 1.5), (3, 3), (0, 3), (-1, 1.5)],
    ],
    ids=["square", "rectangle", "trapezoid", "six corners"],
)
def test_the_cut_outline_of_a_convex_patch_is_shapelys_mitred_offset(corners, allowance):
    """A patch alone has no neighbour that trims a tip."""
    shift = -min(x for x, _ in corners)
    corners = [(x + shift, y) for x, y in corners]
    patch = blocks.patch("one", "deep", corners)
    block = replace(
        blocks.block([patch], corners), seam_allowance=round(allowance * TICKS_PER_INCH), outline=patch.outline
    )
    found = graph(block)
    (template,) = templates_of(found, cut(found))
    expected = raw(corners, allowance)
    assert polygon(template.cut).area == pytest.approx(expected.area, abs=1e-4)
    assert polygon(template.cut).symmetric_difference(expected).area < 1e-4


@pytest.mark.parametrize(("name", "trims"), [(name, name in TRIMMED) for name in BLOCKS if name != "path"])
def test_trimmed_tips_end_on_the_raw_edge_of_the_neighbour(name, trims):
    """The side that trims a tip lies on the line of the cut edge of a patch that it is sewn to, on every patch."""
    found, _, templates = made(name)
    cuts = {
        place.patch: (template, place, [place.motion.lay(p) for p in template.cut.chords()])
        for template in templates
        for place in template.places
    }
    trimmed = 0
    for patch, (template, place, _) in cuts.items():
        neighbours = {side for seam in found.seams if patch in seam.patches for side in seam.patches} - {patch}
        for edge in template.cut.edges:
            if edge.arc is None and not is_beside(template, edge, found.block.seam_allowance):
                trimmed += 1
                side = (place.motion.lay(edge.start), place.motion.lay(edge.end))
                assert any(runs_along(side, cuts[other][2]) for other in neighbours), (patch, edge)
    assert bool(trimmed) == trims


def is_beside(template, side, allowance):
    """Tell whether a side of the cutting line is a sewing edge moved outward by the allowance."""
    for edge in template.finished.edges:
        turn = math.remainder(edge.departs() - side.departs(), math.tau)
        if edge.arc is None and abs(turn) < 1e-3 and abs(edge.offset_of(side.middle())[1] + allowance) < NEAR:
            return True
    return False


def runs_along(side, ring):
    """Tell whether both ends of a side lie on the line of one long side of a ring."""
    for a, b in zip(ring, ring[1:] + ring[:1], strict=True):
        length = math.dist(a, b)
        off = [abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / length for p in side]
        if length > TICKS_PER_INCH / 2 and max(off) < 4 * NEAR:
            return True
    return False


@pytest.mark.parametrize("name", BLOCKS)
def test_a_cutting_line_holds_the_patch_and_its_whole_allowance_beside_every_seam(name):
    """Only tips are trimmed: a strip as wide as the allowance along each seam, between the dots, is all there."""
    found, _, templates = made(name)
    for template in templates:
        cutting_line = Polygon(template.cut.chords())
        assert cutting_line.is_valid
        for edge in template.finished.edges:
            if edge.arc is None:
                strip = LineString([edge.start, edge.end]).buffer(found.block.seam_allowance, cap_style="flat")
                assert strip.difference(cutting_line).area < NEAR * edge.length() + 1e-3 * strip.area


def test_the_grain_runs_along_the_outer_edges():
    found, _, templates = made("left and right")
    patches = finished_patches(found)
    for template in templates:
        for place in template.places:
            for index in patches[place.patch].outside_edges:
                edge = patches[place.patch].outline.edges[index]
                threads = place.motion.heading(template.grain)
                assert abs(math.remainder(edge.departs() - threads, math.pi / 2)) < 2e-3


def test_half_squares_have_their_short_sides_on_the_grain():
    _, cutting, (template,) = made("pinwheel")
    assert {piece.method for piece in cutting.pieces} == {"half-square-triangle"}
    legs = sorted(template.finished.edges, key=lambda edge: edge.length())[:2]
    assert all(abs(math.remainder(leg.departs() - template.grain, math.pi / 2)) < 2e-3 for leg in legs)


def test_stripes_are_equal_and_lie_along_the_first():
    found, _, templates = made("striped star")
    (diamond,) = [template for template in templates if template.stripes]
    assert len(diamond.stripes) == 2
    for place in diamond.places:
        stripes = found.block.patches[place.patch].stripes
        first = LineString([stripes.start, stripes.end])
        away = [LineString([place.motion.lay(p) for p in line]).centroid.distance(first) for line in diamond.stripes]
        wide = Polygon(diamond.finished.chords()).area / LineString([stripes.start, stripes.end]).length
        assert away == pytest.approx([wide / 3, 2 * wide / 3], rel=0.001)
    cutting_line = Polygon(diamond.cut.chords())
    for a, b in diamond.stripes:
        assert LineString([a, b]).intersection(cutting_line).length == pytest.approx(math.dist(a, b), rel=1e-4)


def test_only_what_no_ruler_cuts_is_needed():
    needed = {name: [t.needed for t in made(name)[2]] for name in BLOCKS}
    assert needed["path"] == [True, True]
    assert needed["nine patch"] == [False]
    assert needed["star"] == [False] * 3


def test_larger_outside_pieces_have_larger_templates():
    _, _, plain = made("nine patch")
    found, _, larger = made("nine patch", oversize=1)
    assert len(plain) == 1
    sizes = sorted(
        tuple(round((b - a) / TICKS_PER_INCH, 4) for a, b in zip(t.cut.bounds()[:2], t.cut.bounds()[2:], strict=True))
        for t in larger
    )
    assert {max(size) for size in sizes} == {2.5, 3.5}
    assert sum(len(t.places) for t in larger) == len(found.block.patches)


def test_motions_of_a_square_and_of_a_shape_without_symmetry():
    square = Outline.through(from_inches(x, y) for x, y in blocks.square(2))
    assert [m.mirrored for m in motions(square, (), square, ())] == [False] * 4 + [True] * 4
    odd = Outline.through(from_inches(x, y) for x, y in [(0, 0), (3, 0), (1, 2)])
    assert [m.mirrored for m in motions(odd, (), odd, ())] == [False]
    over = Outline.through(from_inches(-x, y) for x, y in [(0, 0), (3, 0), (1, 2)])
    (motion,) = motions(odd, (), over, ())
    assert motion.mirrored
    place = (12345.0, 6789.0)
    assert motion.back(motion.lay(place)) == pytest.approx(place)
    assert not list(motions(square, (1, 2, 1, 2), square, (1, 1, 2, 2)))
