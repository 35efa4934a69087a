"""Strips added to what is drawn, outlines that go on turned, chains of cuts, and the count of patches and seams."""

import re
from pathlib import Path

import pytest

from blocklang.block import Block
from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph import build_graph
from tests.language.reading_blocks import HEADING, block_of, covered

DOCUMENT = (Path(__file__).parents[2] / "docs" / "language.md").read_text(encoding="utf-8")
MIDDLE = "patch middle of fog at 2, 2 size 2\n"


def boxes(block: Block) -> dict[str, tuple[float, ...]]:
    """Return left, low, right and high of every patch, in inches."""
    return {patch.id: tuple(x / TICKS_PER_INCH for x in patch.outline.bounds()) for patch in block.patches}


def test_each_strip_is_as_long_as_its_side_is_by_then() -> None:
    """Logs round a square of 2 in, drawn by hand: top, right, bottom, left."""
    block = block_of(HEADING + MIDDLE + "add log of fog deep to n e s w by 2\n")
    assert boxes(block) == {
        "middle": (2, 2, 4, 4),
        "log.1": (2, 4, 4, 6),
        "log.2": (4, 2, 6, 6),
        "log.3": (2, 0, 6, 2),
        "log.4": (0, 0, 2, 6),
    }
    assert [patch.fabric for patch in block.patches[1:]] == ["fog", "deep", "fog", "deep"]
    assert {patch.name for patch in block.patches[1:]} == {"log"}


def test_strips_in_a_group_go_to_what_the_group_has_drawn() -> None:
    text = "turn 4 about centre\npatch p of fog at 0, 0 size 1 by 3\nadd bar of deep fog to e e by 1\nend\n"
    block = block_of(HEADING + text)
    assert covered(block) == pytest.approx(1)
    assert boxes(block)["bar.1.1"] == (1, 0, 2, 3)
    assert boxes(block)["bar.3.2"] == (3, 3, 4, 6)


def test_an_outline_goes_on_turned() -> None:
    """A cross: a square of 6 in without its four corners of 1 in."""
    text = "point a at 0, 1\npoint b at 1, 1\npoint c at 1, 0\npatch cross of fog through a b c 4 times about centre\n"
    (cross,) = block_of(HEADING + text).patches
    assert len(cross.outline.edges) == 12
    assert cross.outline.area() / TICKS_PER_INCH**2 == pytest.approx(36 - 4)


def test_arcs_go_on_too_and_a_shared_corner_is_one() -> None:
    """A flower of four half circles on the sides of a square of 2 in: 4 + 2 pi."""
    text = "point a at 2, 2\npoint b at 4, 2\npoint o at 3, 2\n"
    text += "patch flower of fog through a arc counterclockwise about o to b 4 times about centre\n"
    (flower,) = block_of(HEADING + text).patches
    assert len(flower.outline.edges) == 4
    assert flower.outline.area() / TICKS_PER_INCH**2 == pytest.approx(4 + 2 * 3.14159265, abs=1e-4)


def test_the_count_is_an_error_only_when_it_differs() -> None:
    """A four-patch has four patches and four seams; diagonal neighbours share none."""
    rows = "rows\nF D\nD F\nend\n"
    right, wrong = (block_of(HEADING + f"counts {n} patches {m} seams\n" + rows) for n, m in ((4, 4), (5, 4)))
    assert build_graph(right).diagnostics == ()
    assert [found.code for found in build_graph(wrong).diagnostics] == ["counts-differ"]


def test_two_patches_that_meet_along_a_bend_have_one_seam() -> None:
    text = "patch low of deep at 0, 0 size 3\npoint a at 3, 0\npoint b at 3, 3\npoint d at 0, 3\n"
    text += "patch l of fog through a se ne nw d b\ncounts 2 patches and 1 seams\n"
    assert build_graph(block_of(HEADING + text)).diagnostics == ()


def test_a_block_is_counted_with_what_it_places_and_by_its_own_line() -> None:
    pair = 'block "Pair"\nsize 6 in\ncounts 2 patches and 1 seams\nfabric fog as F background light #e8eef2\n'
    pair += "rows\nF F\nend\n"
    text = HEADING.replace("size 6 in", "size 6 in by 12 in") + "counts 4 patches and 4 seams\n"
    text += 'place "pair" as low at 0, 0 size 6 in\nplace "pair" as high at 0, 6 size 6 in\n'
    assert build_graph(block_of(text, pair=pair)).diagnostics == ()


@pytest.mark.parametrize("text", re.findall(r"```block\n(.*?)```", DOCUMENT, re.DOTALL))
def test_the_counts_in_the_document_are_right(text: str) -> None:
    assert build_graph(block_of(text)).diagnostics == ()


def test_cuts_follow_each_other_and_corners_pick_pieces() -> None:
    """A square in a square: four cuts take the corners off; the middle is half of the block."""
    text = "cut block\nalong s e n w s\npiece middle of fog at centre\npiece corner of deep at sw se ne nw\nend\n"
    block = block_of(HEADING + text)
    areas = [patch.outline.area() / TICKS_PER_INCH**2 for patch in block.patches]
    assert areas == pytest.approx([18, 4.5, 4.5, 4.5, 4.5])
    assert boxes(block)["corner.3"] == (3, 3, 6, 6)
