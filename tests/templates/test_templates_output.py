"""The output `templates` as pages: measured, read and held against the cutting list."""

import math
import re
from dataclasses import replace
from xml.etree import ElementTree

import pytest
from blocklang_templates import blocklang_outputs

from blocklang.cli.walking import Walk
from blocklang.cutting import CuttingOptions, cut, templates_of
from blocklang.geometry import TICKS_PER_INCH
from blocklang.hooks import CannotMakeError, OutputOptions, Paper
from blocklang.language import Overrides
from tests.library import plans as library
from tests.sheets.plans import named_plan
from tests.templates.pixels import boxes, ink, lines, square_sides, texts
from tests.templates.test_full_size_pages import SIZES, squares_of

(OUTPUT,) = blocklang_outputs()
ALL = ("which", "all")


def made(plan, paper=Paper.LETTER, *settings, **more):
    options = OutputOptions(more.pop("format", "pdf"), paper=paper, settings=settings, **more)
    files = OUTPUT.make(plan, options)
    assert files[0].name == ""
    return files[0].data


def sized(name, inches):
    """Return a named plan of squares whose cells have the given finished size."""
    from tests.sheets.plans import plan_of
    from tests.support import blocks

    assert name == "four-patch"
    return plan_of(blocks.grid(2, 2, inches))


@pytest.mark.parametrize("paper", Paper)
def test_a_finished_edge_and_a_cut_edge_measure_what_they_must(paper):
    """A 3 in square: dashed 3 in, cut 3 1/2 in, both ways."""
    pdf = made(sized("four-patch", 3), paper, ALL)
    # The template lies in the upper left corner of its room, 3 points within its own margin.
    left, top, side = 36 + 3, 36 + 32 + 3, 3.5 * 72
    region = (left - 6, top - 6, left + side + 6, top + side + 6)
    assert square_sides(pdf, 0, 600, region) == pytest.approx((3.5, 3.5), abs=0.005)
    dark = ink(pdf, 0, 600, region)
    for profile in (dark.mean(axis=0), dark.mean(axis=1)):
        found = lines(profile, share=0.3)
        assert len(found) == 4
        outer, inner = found[-1] - found[0], found[2] - found[1]
        assert outer / 600 == pytest.approx(3.5, abs=0.005)
        assert inner / 600 == pytest.approx(3.0, abs=0.005)


@pytest.mark.parametrize("name", ["star", "path", "flower", "pinwheel", "whirl", "striped-star"])
@pytest.mark.parametrize("paper", Paper)
def test_every_page_is_true_and_says_what_to_cut(name, paper):
    plan = named_plan(name)
    pdf = made(plan, paper, ALL)
    for page, found in enumerate(boxes(pdf)):
        assert found == pytest.approx(SIZES[paper], abs=0.01)
        assert square_sides(pdf, page, 600, squares_of(paper)[0]) == pytest.approx((1, 1), abs=0.005)
    said = " ".join(texts(pdf))
    for piece in plan.cutting.pieces:
        fabric = "the strip set" if piece.strip_set is not None else piece.fabric
        assert re.search(rf"Cut {piece.count}( reversed)? of {fabric}", said), piece


@pytest.mark.slow
def test_the_square_of_every_library_block_is_true_on_letter_and_a4():
    """All pages of every library block that can be cut, at 600 dots to the inch, the square alone."""
    measured = 0
    for name in library.NAMES:
        plan = cut_only(name)
        if plan is None:
            continue
        for paper in Paper:
            pdf = made(plan, paper, ALL)
            for page, found in enumerate(boxes(pdf)):
                assert found == pytest.approx(SIZES[paper], abs=0.01), name
                sides = square_sides(pdf, page, 600, squares_of(paper)[0])
                assert sides == pytest.approx((1, 1), abs=0.005), name
            measured += 1
    assert measured > len(library.NAMES)


def cut_only(name):
    """Return a library block with its cutting list; templates do not ask how it is sewn. That it plans is tested there."""
    graph = Walk().check(name, Overrides()).graph
    return graph and replace(named_plan("four-patch"), block=graph.block, graph=graph, cutting=cut(graph))


def test_a_block_without_templates_says_what_to_do():
    with pytest.raises(CannotMakeError, match="which=all"):
        made(named_plan("four-patch"))


def test_only_needed_templates_are_drawn_and_their_numbers_stay():
    plan = library.plan_of("maple-leaf")
    needed = [number for number, t in enumerate(templates_of(plan.graph, plan.cutting), 1) if t.needed]
    pages = OUTPUT.make(plan, OutputOptions("svg"))
    assert set().union(*(titles(page.data) for page in pages)) == {f"Template {number}" for number in needed}
    everything = len(templates_of(plan.graph, plan.cutting))
    pages = OUTPUT.make(plan, OutputOptions("svg", settings=(ALL,)))
    assert set().union(*(titles(page.data) for page in pages)) == {f"Template {n}" for n in range(1, everything + 1)}


def titles(svg):
    """Return how the templates on a page are titled, without their names."""
    said = (element.text or "" for element in ElementTree.fromstring(svg).iter() if element.tag.endswith("title"))
    return {text.partition(":")[0] for text in said if text.startswith("Template ")}


def test_a_window_is_as_large_as_the_finished_patch():
    pdf = made(sized("four-patch", 3), Paper.LETTER, ALL, ("window", "yes"))
    assert "Cut out the window" in texts(pdf)[0]
    # Down the middle of the left side: the band is grey from the cutting line to the window, the window white.
    y = 36 + 32 + 3 + 0.6 * 3.5 * 72
    dark = ink(pdf, 0, 600, (36, y, 36 + 60, y + 4)).mean(axis=0)
    first, second = lines(dark, share=0.6)
    assert (second - first) / 600 == pytest.approx(0.25, abs=0.005)
    between = dark[int(first) + 8 : int(second) - 8]
    assert 0.1 < between.min() <= between.max() < 0.3
    assert dark[int(second) + 8 :].max() < 0.01


def test_copies_are_counted():
    plan = named_plan("star")
    cutting = cut(plan.graph, CuttingOptions(copies=5))
    said = " ".join(texts(made(replace(plan, cutting=cutting), Paper.A4, ALL)))
    assert "Cut 40 of deep" in said


@pytest.mark.parametrize("kind", ["pdf", "svg"])
def test_the_same_plan_gives_the_same_bytes(kind):
    assert made(named_plan("path"), format=kind) == made(named_plan("path"), format=kind)


def test_a_template_larger_than_the_paper_is_tiled_and_measures_true():
    """A 12 in square: the cutting line is 12 1/2 in, over two columns and two rows."""
    plan = sized("four-patch", 12)
    pdf = made(plan, Paper.LETTER, ALL)
    said = texts(pdf)
    assert len(said) == 4
    assert all("Template 1, row" in text for text in said)
    from blocklang_drawing.shapes import Window
    from blocklang_templates.choosing import choose_templates
    from blocklang_templates.pages import draw_pages

    options = OutputOptions("pdf", settings=(ALL,))
    pages = draw_pages(plan, choose_templates(plan, everything=True), options, window=False)
    left, right = (next(shape for shape in page.shapes if isinstance(shape, Window)) for page in pages[:2])
    # From the cutting line on the first page to that on the second, the overlap taken off once.
    y = left.at[1] + left.height / 3
    first = lines(ink(pdf, 0, 600, (left.at[0] + 1, y, left.at[0] + 9, y + 3)).mean(axis=0))[0] / 600 + 1 / 72
    last_dark = ink(pdf, 1, 600, (right.at[0] + right.width - 9, y, right.at[0] + right.width - 1, y + 3))
    last = lines(last_dark.mean(axis=0))[-1] / 600 + (right.width - 9) / 72
    assert right.onto[0] / 72 + last - first == pytest.approx(12.5, abs=0.005)


def test_large_print_and_long_names_stay_on_the_page():
    plan = named_plan("star")
    fabrics = tuple(replace(fabric, title="The very long name of a fabric " * 6) for fabric in plan.block.fabrics)
    plan = replace(plan, block=replace(plan.block, fabrics=fabrics, name="Harbour " * 60))
    for paper in Paper:
        pdf = made(plan, paper, ALL, large_print=True)
        for page in range(len(boxes(pdf))):
            dark = ink(pdf, page, 72)
            edge = math.floor(SIZES[paper][0]) - 34
            assert not (dark[:, edge:] > 0.3).any()


def test_an_arrow_lies_along_the_grain_of_every_template():
    """Every template is drawn with its grain upright or level."""
    plan = library.plan_of("kaleidoscope")
    from blocklang_drawing import Arrow
    from blocklang_drawing.shapes import Window
    from blocklang_templates.choosing import choose_templates
    from blocklang_templates.pages import draw_pages

    chosen = choose_templates(plan, everything=True)
    pages = draw_pages(plan, chosen, OutputOptions("pdf"), window=False)
    windows = [shape for page in pages for shape in page.shapes if isinstance(shape, Window)]
    assert len(windows) == len(chosen)
    for window in windows:
        (arrow,) = [shape for shape in window.shapes if isinstance(shape, Arrow)]
        turn = math.atan2(arrow.end[1] - arrow.start[1], arrow.end[0] - arrow.start[0])
        assert abs(math.remainder(turn, math.pi / 2)) < 1e-9
        assert 0 <= arrow.start[0] <= window.width and 0 <= arrow.end[1] <= window.height


def test_a_template_is_drawn_as_it_is_and_not_turned_over():
    """The right triangle with legs 2 and 4: seen on the page as in the block, up to a turn."""
    from blocklang_drawing.shapes import Path, Window
    from blocklang_templates.choosing import choose_templates
    from blocklang_templates.pages import draw_pages

    from tests.sheets.plans import plan_of
    from tests.templates.test_templates import left_and_right

    plan = plan_of(left_and_right())
    chosen = choose_templates(plan, everything=True)
    (page,) = draw_pages(plan, chosen, OutputOptions("pdf"), window=False)
    (window,) = [shape for shape in page.shapes if isinstance(shape, Window)]
    sewing = next(shape for shape in window.shapes if isinstance(shape, Path) and shape.paint.dash)
    ring = [sewing.trails[0].start, *(stretch.end for stretch in sewing.trails[0].stretches)]
    drawn = turning([math.dist(a, b) / 72 for a, b in zip(ring, ring[1:] + ring[:1], strict=True)], ring, down=True)
    outline = chosen[0].template.finished
    sides = [edge.length() / TICKS_PER_INCH for edge in outline.edges]
    assert drawn == turning(sides, list(outline.corners), down=False)


def turning(sides, ring, *, down):
    """Return the sides in order counterclockwise as one sees them, the longest first."""
    area = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(ring, ring[1:] + ring[:1], strict=True))
    counterclockwise = area < 0 if down else area > 0
    order = [round(side, 2) for side in (sides if counterclockwise else sides[::-1])]
    start = order.index(max(order))
    return order[start:] + order[:start]
