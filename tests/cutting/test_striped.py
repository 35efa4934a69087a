"""Strip sets: widths, trimming, and which striped patches come from one set."""

from dataclasses import replace
from fractions import Fraction

import pytest

from blocklang.block import Stripes
from blocklang.cutting import CuttingOptions, cut, describe_piece, describe_strip_set
from tests.cutting.shapes import block_of, graph, with_patches
from tests.support import blocks

CLOTH = ("deep", "fog", "coral")
CENTRE = blocks.from_inches(6, 6)


def striped_star(every=1, fabrics=CLOTH):
    """Return the star with stripes along the diamond's edge that leaves the centre, or on every n-th the other one."""
    block = blocks.star()
    patches, seen = [], 0
    for patch in block.patches:
        if patch.name == "diamond":
            leaving = next(e for e in patch.outline.edges if blocks.Point(*e.start) == _nearest(patch))
            arriving = next(e for e in patch.outline.edges if blocks.Point(*e.end) == _nearest(patch))
            edge = leaving if seen % every == 0 else arriving
            seen += 1
            patch = replace(patch, stripes=Stripes(fabrics, edge.start, edge.end))
        patches.append(patch)
    return with_patches(block, patches)


def _nearest(patch):
    return min(patch.outline.corners, key=lambda c: abs(c.x - CENTRE.x) + abs(c.y - CENTRE.y))


def test_striped_diamonds_of_a_twelve_inch_star():
    """Three strips of 1 3/8 in measure 3 1/8 in sewn and are trimmed to 3 in; a 40 in set holds 8 (common practice)."""
    cutting = cut(graph(striped_star()))
    (made,) = cutting.strip_sets
    assert made.fabrics == CLOTH
    assert made.strip.exact == pytest.approx(12 / (2 + 2**0.5) / 2**0.5 / 3 + 0.5, abs=1e-5)
    assert made.strip.exact == pytest.approx(1.3284, abs=5e-5)
    assert made.strip.shown == Fraction(11, 8)
    assert made.sewn.shown == Fraction(25, 8)
    assert made.trimmed.shown == made.sub_cut.shown == 3
    assert made.angle == pytest.approx(45, abs=0.01)
    assert (made.holds, made.sets) == (8, 1)
    assert made.sewn.exact == pytest.approx(made.trimmed.exact, abs=1e-6)


def test_the_piece_points_at_its_set_and_takes_no_strips_of_its_own():
    cutting = cut(graph(striped_star()))
    (piece,) = [piece for piece in cutting.pieces if piece.name == "diamond"]
    assert (piece.strip_set, piece.strip, piece.count, piece.reversed) == (0, None, 8, 0)
    assert describe_piece(piece) == "Cut 8 from the strip set."
    assert describe_strip_set(cutting.strip_sets[0]) == (
        "Sew a strip set: strips 1 3/8 in wide, side by side, deep, fog and coral. "
        "Pressed, it measures 3 1/8 in; trim 1/16 in off each long side, to 3 in. "
        "Cut it at 45 degrees, 3 in apart; a set holds 8."
    )
    assert not any("strip set" in note for note in cutting.notes), "the trim is said once, with the set"


def test_every_stripe_is_bought():
    cutting = cut(graph(striped_star()), CuttingOptions(copies=3))
    assert cutting.strip_sets[0].sets == 3
    strips = {need.fabric: {w.shown: n for w, n in need.strips} for need in cutting.needs}
    assert strips["deep"] == strips["coral"] == {Fraction(11, 8): 3}
    assert strips["fog"][Fraction(11, 8)] == 3
    for need in cutting.needs:
        assert need.bound <= need.length


def test_stripes_the_other_way_are_mirror_images():
    """Cut at 45 degrees the other way: they cannot come from one set without turning it over."""
    cutting = cut(graph(striped_star(every=2)))
    (piece,) = [piece for piece in cutting.pieces if piece.name == "diamond"]
    assert (piece.count, piece.reversed) == (8, 4)
    assert describe_piece(piece) == "Cut 8 from the strip set, 4 of them reversed."


def square_striped(edges, fabrics=CLOTH):
    """Return four squares in a row, striped along the given edges."""
    patches = {f"square.{i + 1}": [(3 * i, 0), (3 * i + 3, 0), (3 * i + 3, 3), (3 * i, 3)] for i in range(len(edges))}
    block = block_of(patches, (3 * len(edges), 3))
    drawn = []
    for patch, number in zip(block.patches, edges, strict=True):
        edge = patch.outline.edges[number]
        drawn.append(replace(patch, stripes=Stripes(fabrics, edge.start, edge.end)))
    return with_patches(block, drawn)


def test_striped_squares_are_one_however_they_are_turned():
    cutting = cut(graph(square_striped((0, 1, 2, 3))))
    (piece,), (made,) = cutting.pieces, cutting.strip_sets
    assert (piece.count, piece.reversed, piece.method) == (4, 0, "square")
    assert (made.angle, made.sub_cut.shown, made.trimmed.shown) == (90, Fraction(7, 2), Fraction(7, 2))
    assert (made.strip.shown, made.sewn.shown, made.holds) == (Fraction(3, 2), Fraction(7, 2), 11)


def test_other_stripes_are_another_set():
    block = square_striped((0, 0))
    first, second = block.patches
    other = replace(second, stripes=replace(second.stripes, fabrics=("fog", "deep", "coral")))
    assert len(cut(graph(with_patches(block, (first, other)))).strip_sets) == 2


def test_a_striped_rectangle_is_trimmed_across_its_stripes():
    block = block_of({"bar.1": [(0, 0), (6, 0), (6, 3), (0, 3)]}, (6, 3))
    for number, trimmed, sub_cut in ((0, "7/2", "13/2"), (1, "13/2", "7/2")):
        edge = block.patches[0].outline.edges[number]
        patch = replace(block.patches[0], stripes=Stripes(CLOTH, edge.start, edge.end))
        (made,) = cut(graph(with_patches(block, [patch]))).strip_sets
        assert (made.trimmed.shown, made.sub_cut.shown) == (Fraction(trimmed), Fraction(sub_cut))


def test_a_striped_patch_longer_than_a_strip_is_said_not_to_fit():
    block = block_of({"bar.1": [(0, 0), (60, 0), (60, 3), (0, 3)]}, (60, 3))
    edge = block.patches[0].outline.edges[0]
    patch = replace(block.patches[0], stripes=Stripes(CLOTH, edge.start, edge.end))
    cutting = cut(graph(with_patches(block, [patch])))
    assert (cutting.strip_sets[0].holds, cutting.strip_sets[0].sets) == (0, 0)
    assert any("bar (deep) is longer than the strip set is wide (40 in)" in note for note in cutting.notes)
