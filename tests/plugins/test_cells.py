"""The cells that ship as a plugin are drawn through a block file, and their patches fit together."""

import pytest

from blocklang import route
from blocklang.block import Block
from blocklang.cli.plugged import Plugged
from blocklang.diagnostics import SourceText
from blocklang.extensions import cells, load_plugins
from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph import build_graph
from blocklang.language import BUILT_IN_CELLS, Overrides
from blocklang.library import Library

HEADING = """block "Reed Bed"
language 1
size 6 in
fabric fog as F background light #e8eef2
fabric deep as D accent dark #1f3a5f
fabric reed as R accent medium #6b8f71
"""
Corners = list[tuple[float, float]]
DRAWN: dict[str, list[tuple[str, Corners]]] = {
    "square-in-square(D F)": [
        ("deep", [(0, 3), (3, 0), (6, 3), (3, 6)]),
        ("fog", [(0, 0), (3, 0), (0, 3)]),
        ("fog", [(3, 0), (6, 0), (6, 3)]),
        ("fog", [(3, 6), (6, 3), (6, 6)]),
        ("fog", [(0, 3), (3, 6), (0, 6)]),
    ],
    "snowball(F D)": [
        ("fog", [(0, 2), (2, 0), (4, 0), (6, 2), (6, 4), (4, 6), (2, 6), (0, 4)]),
        ("deep", [(0, 0), (2, 0), (0, 2)]),
        ("deep", [(4, 0), (6, 0), (6, 2)]),
        ("deep", [(4, 6), (6, 4), (6, 6)]),
        ("deep", [(0, 4), (2, 6), (0, 6)]),
    ],
    "snowball(F D 1/4)": [
        ("fog", [(0, 1.5), (1.5, 0), (4.5, 0), (6, 1.5), (6, 4.5), (4.5, 6), (1.5, 6), (0, 4.5)]),
        ("deep", [(0, 0), (1.5, 0), (0, 1.5)]),
        ("deep", [(4.5, 0), (6, 0), (6, 1.5)]),
        ("deep", [(4.5, 6), (6, 4.5), (6, 6)]),
        ("deep", [(0, 4.5), (1.5, 6), (0, 6)]),
    ],
    "rails-across(D R F)": [
        ("deep", [(0, 4), (6, 4), (6, 6), (0, 6)]),
        ("reed", [(0, 2), (6, 2), (6, 4), (0, 4)]),
        ("fog", [(0, 0), (6, 0), (6, 2), (0, 2)]),
    ],
    "rails-upright(D R F)": [
        ("deep", [(0, 0), (2, 0), (2, 6), (0, 6)]),
        ("reed", [(2, 0), (4, 0), (4, 6), (2, 6)]),
        ("fog", [(4, 0), (6, 0), (6, 6), (4, 6)]),
    ],
}


def drafted(rows: str) -> route.Drafted:
    """Draft a block of these rows with the installed plugins."""
    source = SourceText("reed-bed.block", f"{HEADING}rows\n{rows}\nend\n")
    return route.draft(source, Overrides(), Library(), Plugged().cells)


def drawn(rows: str) -> Block:
    """Return a block that is right, once its graph has been built without a complaint."""
    block = drafted(rows).block
    assert block is not None, drafted(rows).diagnostics
    graphed = build_graph(block)
    assert graphed.graph is not None
    assert graphed.diagnostics == ()
    return block


def shapes(block: Block) -> list[tuple[str, Corners]]:
    """Return each patch's fabric and its corners in inches, counterclockwise from the leftmost lowest."""
    found = []
    for patch in block.patches:
        corners = [(x / TICKS_PER_INCH, y / TICKS_PER_INCH) for x, y in patch.outline.corners]
        first = corners.index(min(corners))
        found.append((patch.fabric, corners[first:] + corners[:first]))
    return found


@pytest.mark.parametrize("cell", DRAWN)
def test_cell_is_drawn_as_its_name_says(cell) -> None:
    assert shapes(drawn(cell)) == DRAWN[cell]


@pytest.mark.parametrize(
    ("cell", "seams"),
    [("square-in-square(D F)", 4), ("snowball(F D)", 4), ("rails-across(D R F)", 2), ("rails-upright(D R F)", 2)],
)
def test_cell_has_a_seam_between_each_two_neighbours(cell, seams) -> None:
    graph = build_graph(drawn(cell)).graph
    assert graph is not None
    assert len(graph.seams) == seams


def test_rail_fence_of_cells_lying_and_standing_fits_together() -> None:
    lying, standing = "rails-across(D R F)", "rails-upright(D R F)"
    block = drawn(f"{lying} {standing}\n{standing} {lying}")
    assert [patch.id for patch in block.patches][:4] == ["r1c1.1", "r1c1.2", "r1c1.3", "r1c2.1"]
    assert sum(patch.outline.area() for patch in block.patches) == block.outline.area()


def test_cells_fill_a_long_cell_and_stand_beside_built_in_ones() -> None:
    drawn("snowball(F D) square-in-square(D F) quarters(F D F D)")
    drawn("F\\D rails-across(D R F) snowball(F D 9/20)\nF D R")


@pytest.mark.parametrize("cell", ["square-in-square(D)", "snowball(F D R)", "rails-across(D R)", "rails-upright(D)"])
def test_wrong_number_of_fabrics_is_told(cell) -> None:
    assert [diagnostic.code for diagnostic in drafted(cell).diagnostics][:1] == ["wrong-number-of-fabrics"]


@pytest.mark.parametrize("number", ["0", "1/100", "1/2", "1"])
def test_snowball_refuses_a_corner_that_leaves_no_octagon(number) -> None:
    made = drafted(f"snowball(F D {number})")
    assert made.block is None
    assert made.diagnostics


def test_names_are_new() -> None:
    names = {cell.name for cell in cells(load_plugins()).items}
    assert {"square-in-square", "snowball", "rails-across", "rails-upright"} <= names
    assert not names & {cell.name for cell in BUILT_IN_CELLS}
