"""The output `paper-pieces`: what it says, and what its papers measure."""

import re
from dataclasses import replace

import pytest
from blocklang_paper_pieces import blocklang_outputs
from blocklang_paper_pieces.contents import write_contents
from blocklang_paper_pieces.picture import draw_order
from shapely import Polygon

from blocklang.hooks import OutputOptions, Paper
from blocklang.paper_piecing import papers_of
from tests.sheets.plans import named_plan, plan_of
from tests.support import blocks
from tests.templates.pixels import boxes, ink, lines, square_sides, texts
from tests.templates.test_full_size_pages import SIZES, squares_of

(OUTPUT,) = blocklang_outputs()
NAMES = ("flower", "star", "path", "four-patch", "striped-star")
EVERY = ("papers", "every")


def made(plan, *settings, **options):
    options.setdefault("format", "pdf")
    (file,) = OUTPUT.make(plan, OutputOptions(settings=settings, **options))
    assert file.name == ""
    return file.data


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("paper", Paper)
def test_pages_are_as_large_as_the_paper_and_those_with_papers_have_true_squares(name, paper):
    pdf = made(named_plan(name), paper=paper)
    said = texts(pdf)
    with_papers = [page for page, text in enumerate(said) if "papers, page" in text]
    assert with_papers == list(range(len(said) - len(with_papers), len(said)))
    assert with_papers
    for page, found in enumerate(boxes(pdf)):
        assert found == pytest.approx(SIZES[paper], abs=0.02)
        if page in with_papers:
            assert square_sides(pdf, page, 600, squares_of(paper)[0]) == pytest.approx((1, 1), abs=0.005)
            assert square_sides(pdf, page, 600, squares_of(paper)[1]) == pytest.approx((20 / 25.4,) * 2, abs=0.005)
        else:
            assert f"page {page + 1} of {len(said) - len(with_papers)}" in said[page]


def test_a_paper_measures_what_it_is_finished_and_its_fabric_an_allowance_more():
    plan = plan_of(blocks.grid(2, 2, 3.0))
    pdf = made(plan)
    page = len(boxes(pdf)) - 1
    left, top, side = 36 + 3, 36 + 32 + 3, 3.5 * 72
    dark = ink(pdf, page, 600, (left - 6, top - 6, left + side + 6, top + side + 6))
    for profile in (dark.mean(axis=0), dark.mean(axis=1)):
        found = lines(profile, share=0.3)
        assert (found[-1] - found[0]) / 600 == pytest.approx(3.5, abs=0.005)
        assert (found[2] - found[1]) / 600 == pytest.approx(3.0, abs=0.005)
    pdf = made(plan, EVERY)
    page, side = len(boxes(pdf)) - 1, 3.0 * 72
    region = (left - 6, top - 6, left + side + 5, top + side + 5)
    assert square_sides(pdf, page, 600, region) == pytest.approx((3.0, 3.0), abs=0.005)


@pytest.mark.parametrize("name", ["flower", "star", "four-patch"])
def test_fabric_for_a_paper_is_shapelys_mitred_offset(name):
    plan = named_plan(name)
    for paper in papers_of(plan.graph):
        expected = Polygon(paper.outline.chords()).buffer(plan.block.seam_allowance, join_style="mitre", mitre_limit=20)
        assert Polygon(paper.fabric.chords()).symmetric_difference(expected).area < 1e-4 * expected.area


def test_every_paper_is_drawn_when_it_is_asked_for():
    plan = named_plan("flower")
    said = " ".join(texts(made(plan, EVERY)))
    assert said.partition("papers, page")[2].count("1 hex") == 7
    assert "of one block" in said


@pytest.mark.parametrize("name", NAMES)
def test_the_text_tells_every_patch_once_in_order(name):
    plan = named_plan(name)
    text = made(plan, format="text").decode()
    assert all(len(line) <= 78 for line in text.splitlines())
    lines = re.findall(r"^  (\d+)\. (\S+) \(", text, flags=re.MULTILINE)
    assert [int(place) for place, _ in lines] == list(range(1, len(plan.block.patches) + 1))
    assert sorted(patch for _, patch in lines) == sorted(patch.id for patch in plan.block.patches)
    edges = sum(int(count) for count in re.findall(r"\((\d+) edges?[;)]", text))
    assert edges == len(plan.graph.seams)
    assert f"{len(plan.graph.seams)} edges are whip-stitched" in text


@pytest.mark.parametrize("name", NAMES)
def test_a_patch_is_only_stitched_to_patches_before_it(name):
    contents = write_contents(named_plan(name))
    for entry in (one for each in contents.rounds for one in each.joinings):
        others = [int(number) for number in re.findall(r"\d+", entry.joined.partition("(")[0])]
        assert bool(others) == (entry.place > 1)
        assert all(other < entry.place for other in others)


def test_the_pdf_says_what_the_text_says():
    plan = named_plan("star")
    said = " ".join(texts(made(plan)))
    contents = write_contents(plan)
    for sentence in (*contents.facts, *contents.making):
        assert sentence in said
    for each in contents.rounds:
        assert each.title in said
        for line in each.joinings:
            assert f"{line.place} {line.patch} {line.fabric} {line.joined}" in said


def test_a_block_that_is_sewn_by_machine_says_so_in_one_sentence():
    assert "can also be sewn by machine" in write_contents(named_plan("star")).facts[0]
    assert "without a set-in seam" in write_contents(named_plan("four-patch")).facts[0]
    offered = write_contents(plan_of(blocks.hexagons(2))).facts[0]
    assert "24 pivots" in offered
    assert "19 patches" in offered


def test_only_curves_are_remarked_on():
    assert "curved" in " ".join(write_contents(named_plan("path")).making)
    assert "curved" not in " ".join(write_contents(named_plan("star")).making)


def test_papers_are_counted_by_fabric():
    (paper,) = write_contents(named_plan("flower")).papers
    assert paper.count == 7
    assert set(paper.lines) == {"1 of coral", "6 of deep"}


@pytest.mark.parametrize("plain", [False, True])
def test_the_picture_has_a_number_on_every_patch(plain):
    from blocklang_drawing import Text, theme_for

    plan = named_plan("star")
    contents = write_contents(plan)
    theme = theme_for(plan.block.fabrics, plain)
    drawing = draw_order(plan.block, contents.places, theme, width=300, height=300)
    numbers = [shape for shape in drawing.shapes if isinstance(shape, Text)]
    assert sorted(int(text.text) for text in numbers) == list(range(1, 17))
    assert all(text.size >= 8 for text in numbers)


@pytest.mark.parametrize("kind", ["pdf", "text"])
def test_the_same_plan_gives_the_same_bytes(kind):
    assert made(named_plan("flower"), format=kind) == made(named_plan("flower"), format=kind)


def test_hostile_words_are_only_words():
    plan = named_plan("flower")
    fabrics = tuple(replace(fabric, title='#panic() $x$ "<b>"\n\x07') for fabric in plan.block.fabrics)
    hostile = replace(plan, block=replace(plan.block, fabrics=fabrics, name="*]] #eval <i>"))
    said = " ".join(texts(made(hostile)))
    assert "#panic() $x$" in said
    assert "*]] #eval <i>" in said
    assert "\x07" not in made(hostile, format="text").decode()
