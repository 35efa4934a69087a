"""Prints that stand upright and motifs in a window: what is cut, how much more it takes, and that nothing is turned."""

from dataclasses import replace
from fractions import Fraction

import pytest
from blocklang_cutting_methods import blocklang_cutting_methods

from blocklang.assembly import assemble
from blocklang.block import Print
from blocklang.cutting import CuttingOptions, Lay, cut, describe_piece, templates_of, with_offers
from tests.cutting.shapes import GOOSE, block_of, graph, turned
from tests.support import blocks


def printed(block, how=Print.ONE_WAY, fabrics=("fog", "deep", "coral", "reed")):
    changed = (replace(fabric, printed=how) if fabric.id in fabrics else fabric for fabric in block.fabrics)
    return replace(block, fabrics=tuple(changed))


def pieces(block, **options):
    return cut(graph(block), CuttingOptions(**options)).pieces


def test_squares_are_cut_as_ever_but_upright():
    (plain,), (upright,) = pieces(blocks.grid(1, 1, 3.0)), pieces(printed(blocks.grid(1, 1, 3.0)))
    assert upright.cut == plain.cut
    assert describe_piece(upright) == "Cut 1 square 3 1/2 in, the print upright."


def test_rectangles_that_lie_and_that_stand_are_cut_apart():
    """A strip is as wide as the rectangle is high in the block, whatever would save fabric."""
    patches = {
        "lying.1": [(0, 0), (4, 0), (4, 2), (0, 2)],
        "standing.1": [(4, 0), (6, 0), (6, 4), (4, 4)],
        "lying.2": [(0, 2), (4, 2), (4, 4), (0, 4)],
    }
    assert len(pieces(block_of(patches, (6, 4)))) == 1
    lying, standing = pieces(printed(block_of(patches, (6, 4))))
    assert (lying.count, standing.count) == (2, 1)
    assert (lying.strip.width.shown, standing.strip.width.shown) == (Fraction(5, 2), Fraction(9, 2))
    assert describe_piece(lying) == "Cut 2 rectangles 2 1/2 x 4 1/2 in, the print upright and 2 1/2 in high."
    assert describe_piece(standing) == "Cut 1 rectangle 4 1/2 x 2 1/2 in, the print upright and 4 1/2 in high."


def halves(corner):
    """A square cut across; the triangle with its right angle in that corner is of the printed fabric."""
    ring = [(0, 0), (3, 0), (3, 3), (0, 3)]
    ring = ring[corner:] + ring[:corner]
    return {"deep:a": [ring[0], ring[1], ring[3]], "fog:b": [ring[1], ring[2], ring[3]]}


def moved(patches, n):
    return {f"{name}.{n}": [(x + 3 * n, y) for x, y in corners] for name, corners in patches.items()}


@pytest.mark.parametrize(
    ("corners", "squares"),
    [
        ((0, 2), {"falling": 1}),
        ((1, 3), {"rising": 1}),
        ((0, 0), {"falling": 2}),  # two that stand alike never come from one square
        ((0, 1), {"falling": 1, "rising": 1}),
        ((0, 2, 2, 2, 1, 3, 3), {"falling": 3, "rising": 2}),
    ],
)
def test_half_squares_come_from_squares_cut_one_way_or_the_other(corners, squares):
    patches = {}
    for n, corner in enumerate(corners):
        patches |= moved(halves(corner), n)
    found = pieces(printed(block_of(patches, (3 * len(corners), 3)), fabrics=("deep",)))
    deep = [piece for piece in found if piece.fabric == "deep"]
    assert {piece.pose: piece.shapes for piece in deep} == squares
    assert sum(piece.count for piece in deep) == len(corners)
    assert all(piece.method == "half-square-triangle" for piece in deep)
    assert len([piece for piece in found if piece.fabric == "fog"]) == 1


def test_the_sentence_says_from_which_corner():
    found = pieces(printed(block_of(moved(halves(0), 0), (3, 3)), fabrics=("deep",)))
    said = describe_piece(next(piece for piece in found if piece.fabric == "deep"))
    assert said == (
        "Cut 1 square 3 7/8 in, the print upright; cut it once across, from the upper left corner to the lower right, "
        "for 1 triangle (1 left over)."
    )


def test_geese_that_fly_one_way_waste_three_quarters():
    """A square cut twice across gives one triangle of each way; four geese need four squares, and 12 are left over."""
    patches = {
        f"{'deep' if name == 'goose' else 'fog'}:{name}.{n}": [(x, y + 2 * n) for x, y in corners]
        for n in range(4)
        for name, corners in GOOSE.items()
    }
    cutting = cut(graph(printed(block_of(patches, (4, 8)), fabrics=("deep",))))
    goose = next(piece for piece in cutting.pieces if piece.fabric == "deep")
    assert (goose.method, goose.shapes, goose.count) == ("quarter-square-triangle", 4, 4)
    assert "(12 left over)" in describe_piece(goose)
    assert any("12 of them are left over" in note for note in cutting.notes)
    assert any("printed one way" in note for note in cutting.notes)


def test_an_hourglass_of_one_print_wastes_nothing():
    ring = [(0, 0), (4, 0), (4, 4), (0, 4)]
    patches = {f"deep:q{i}": [ring[i], ring[(i + 1) % 4], (2, 2)] for i in range(4)}
    (piece,) = pieces(printed(block_of(patches, (4, 4))))
    assert (piece.shapes, piece.count, piece.yields) == (1, 4, 4)


def test_patches_that_lie_aslant_are_cut_round_a_template_for_each_way():
    """The eight diamonds of a star are turned four ways and back; each way has its own template, the arrow up."""
    drawn = graph(printed(blocks.star(), fabrics=("coral", "deep")))
    cutting = cut(drawn)
    diamonds = [piece for piece in cutting.pieces if piece.name.startswith("diamond")]
    assert {piece.lay for piece in diamonds} == {Lay.TEMPLATE}
    assert sum(piece.count for piece in diamonds) == 8
    assert len(diamonds) == 4  # opposite diamonds of a rhombus lie alike
    assert all(piece.reversed == 0 for piece in diamonds)
    assert "the arrow up the fabric" in describe_piece(diamonds[0])
    made = [template for template in templates_of(drawn, cutting) if template.name.startswith("diamond")]
    assert len(made) == 4
    assert {round(template.grain, 6) for template in made} == {1.570796}


def test_a_square_on_its_corner_is_cut_round_a_template():
    ring = [(0, 0), (2, 0), (2, 2), (0, 2)]
    square = turned(ring, 45, 2**0.5)
    whole = 2 * 2**0.5
    patches = {"deep:middle": square}
    for index, corner in enumerate([(0, 0), (whole, 0), (whole, whole), (0, whole)]):
        near = sorted(square, key=lambda p, corner=corner: (p[0] - corner[0]) ** 2 + (p[1] - corner[1]) ** 2)[:2]
        patches[f"fog:corner.{index}"] = [corner, *near]
    found = pieces(printed(block_of(patches, (whole, whole)), fabrics=("deep",)))
    assert next(piece for piece in found if piece.fabric == "deep").method == "template"


def test_motifs_are_cut_one_by_one_with_a_window():
    cutting = cut(graph(printed(blocks.grid(2, 2, 3.0), Print.MOTIFS)), CuttingOptions(copies=3))
    assert {piece.method for piece in cutting.pieces} == {"template"}
    assert all("a motif in the middle of each" in describe_piece(piece) for piece in cutting.pieces)
    assert sum(piece.count for piece in cutting.pieces) == 12
    assert any("fussy-cut" in note and "window" in note for note in cutting.notes)


def test_other_fabrics_stay_as_they_were():
    plain = pieces(blocks.star())
    mixed = pieces(printed(blocks.star(), fabrics=("coral",)))
    assert [p for p in plain if p.fabric != "coral"] == [p for p in mixed if p.fabric != "coral"]


def test_nothing_that_turns_is_offered_for_a_print_that_stands():
    block = printed(blocks.pinwheel())
    drawn = graph(block)
    assert with_offers(cut(drawn), assemble(drawn).assembly, blocklang_cutting_methods()).offers == ()


@pytest.mark.parametrize("how", list(Print))
@pytest.mark.parametrize(
    "make", [blocks.star, blocks.pinwheel, blocks.whirl, blocks.drunkards_path, lambda: blocks.hexagons(1)]
)
def test_every_patch_is_cut_once_however_it_is_printed(make, how):
    block = printed(make(), how, tuple(fabric.id for fabric in make().fabrics))
    found = pieces(block, copies=2)
    assert sorted(patch for piece in found for patch in piece.patches) == list(range(len(block.patches)))
    assert all(piece.shapes * piece.yields >= piece.count for piece in found)
