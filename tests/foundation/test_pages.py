"""The pages of the output `foundation`: mirrored, at true size, on the right paper, the squares measured."""

import math
import os
import subprocess
import sys

import pytest
from blocklang_drawing.shapes import Path, Text
from blocklang_foundation import make_foundation
from blocklang_foundation.section_drawing import draw_section
from blocklang_foundation.words import count_lines, join_lines

from blocklang.foundation import section_outline, sections
from blocklang.geometry import TICKS_PER_INCH
from blocklang.hooks import CannotMakeError, OutputOptions, Paper
from tests.library.plans import graph_of, plan_of
from tests.templates.pixels import boxes, square_sides, texts

INCH = 72.0
SIZES = {Paper.LETTER: (612.0, 792.0), Paper.A4: (595.276, 841.890)}


def pdf_of(name, paper=Paper.LETTER, **more):
    (made,) = make_foundation(plan_of(name), OutputOptions("pdf", paper, **more))
    return made.data


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("name", ["flying-geese", "sawtooth-star"])
def test_every_page_has_its_size_its_words_and_true_squares(name, paper):
    pdf = pdf_of(name, paper)
    low = SIZES[paper][1] - 36
    large = (32, low - INCH - 4, 36 + INCH + 4, low + 4)
    small = (36 + INCH + 8, low - 60.7, 36 + INCH + 12 + 60.7, low + 4)
    for page, (size, text) in enumerate(zip(boxes(pdf), texts(pdf), strict=True)):
        assert size == pytest.approx(SIZES[paper], abs=0.01)
        assert "mirror image" in text and "Measure before you cut" in text
        assert square_sides(pdf, page, 600, large) == pytest.approx((1.0, 1.0), abs=0.005)
        assert square_sides(pdf, page, 600, small) == pytest.approx((20 / 25.4, 20 / 25.4), abs=0.005)


def lines_of(drawing):
    """Return the straight stretches of the sewing lines, not of the dashed raw edge."""
    paths = [shape for shape in drawing.shapes if isinstance(shape, Path) and not shape.paint.dash]
    for trail in (trail for path in paths for trail in path.trails):
        places = [trail.start, *(stretch.end for stretch in trail.stretches)]
        yield from zip(places, places[1:], strict=False)


@pytest.mark.parametrize("name", ["flying-geese", "half-log-cabin", "sawtooth-star", "pinwheel"])
def test_a_section_is_drawn_mirrored_and_at_full_size(name):
    """Each seam lies where its mirror image lies, an inch being 72 points."""
    graph = graph_of(name)
    foundation = sections(graph)
    for paper in range(len(foundation.papers)):
        section = foundation.sections[foundation.papers[paper].sections[0]]
        _, _, right, high = section_outline(graph, section.patches).bounds()
        away = INCH / 4 + 2
        expected = set()
        for segment in (graph.segments[index] for seam in section.seams for index in seam):
            ends = [
                ((right - at.x) / TICKS_PER_INCH * INCH + away, (high - at.y) / TICKS_PER_INCH * INCH + away)
                for at in (segment.edge.start, segment.edge.end)
            ]
            expected.add(frozenset((round(x, 1), round(y, 1)) for x, y in ends))
        drawn = {
            frozenset((round(x, 1), round(y, 1)) for x, y in line)
            for line in lines_of(draw_section(foundation, paper, 0.0).drawing)
        }
        assert expected <= drawn


def test_numbers_stand_in_their_patches_seen_from_the_back():
    graph = graph_of("half-log-cabin")
    foundation = sections(graph)
    (section,) = foundation.sections
    drawn = draw_section(foundation, 0, 0.0)
    numbers = {shape.text: shape.at for shape in drawn.drawing.shapes if isinstance(shape, Text) and shape.bold}
    width = graph.block.size[0] / TICKS_PER_INCH * INCH
    for place, patch in enumerate(section.patches, 1):
        left, low, right, high = (v / TICKS_PER_INCH * INCH for v in graph.block.patches[patch].outline.bounds())
        x, y = (value - INCH / 4 - 2 for value in numbers[f"A{place}"])
        assert left < width - x < right and low < width - y + 12 and width - y < high


def test_the_raw_edge_is_a_quarter_inch_outside():
    pdf = pdf_of("flying-geese")
    foundation = sections(graph_of("flying-geese"))
    drawing = draw_section(foundation, 0, 0.0).drawing
    dashed = next(shape for shape in drawing.shapes if isinstance(shape, Path) and shape.paint.dash)
    xs = [place[0] for place in (dashed.trails[0].start, *(s.end for s in dashed.trails[0].stretches))]
    width = graph_of("flying-geese").block.size[0] / TICKS_PER_INCH
    assert max(xs) - min(xs) == pytest.approx((width + 0.5) * INCH, abs=0.05)
    assert len(boxes(pdf)) == 1


def test_every_patch_of_every_paper_is_numbered():
    for name in ("pineapple", "churn-dash", "economy"):
        foundation = sections(graph_of(name))
        for place, paper in enumerate(foundation.papers):
            drawn = draw_section(foundation, place, 0.0)
            section = foundation.sections[paper.sections[0]]
            said = {shape.text for shape in drawn.drawing.shapes if isinstance(shape, Text)}
            assert {f"{section.letter}{n}" for n in range(1, len(section.patches) + 1)} <= said


def test_it_says_how_often_each_section_is_printed():
    text = " ".join(texts(pdf_of("broken-dishes", copies=3)))
    assert "Section A: print 12." in text


def test_a_large_section_is_tiled_with_names():
    text = " ".join(texts(pdf_of("pineapple")))
    assert "Section A, row 2 of 2, column 1 of 2" in text


def test_a_block_that_gains_nothing_is_refused_in_one_sentence():
    with pytest.raises(CannotMakeError, match="No two patches of this block share one straight seam"):
        make_foundation(plan_of("whirl"), OutputOptions("pdf"))


def test_the_words_tell_the_joins():
    foundation = sections(graph_of("eight-pointed-star"))
    said = " ".join((*count_lines(foundation), *join_lines(foundation)))
    assert said.startswith("8 sections. No division has fewer.")
    assert f"{foundation.set_in_joins} of the 7 joins between them are set-in seams." in said


def test_drawings_are_one_file_a_page():
    files = make_foundation(plan_of("four-patch"), OutputOptions("svg"))
    assert files[0].name == "" and all(file.data.startswith(b"<?xml") for file in files)


def test_nothing_but_lines_of_their_length_lie_on_the_page():
    """A seam of a turned section keeps its length."""
    foundation = sections(graph_of("kaleidoscope"))
    drawn = draw_section(foundation, 0, 0.7).drawing
    lengths = sorted({round(math.dist(*line), 1) for line in lines_of(drawn)})
    section = foundation.sections[0]
    for seam in section.seams:
        for index in seam:
            inches = foundation.graph.segments[index].edge.length() / TICKS_PER_INCH
            assert any(abs(inches * INCH - length) < 0.15 for length in lengths)


SCRIPT = """
import hashlib
from blocklang.hooks import OutputOptions
from blocklang_foundation import make_foundation
from tests.library.plans import plan_of
for name in ("broken-dishes",):
    print(hashlib.sha256(make_foundation(plan_of(name), OutputOptions("pdf"))[0].data).hexdigest())
"""


@pytest.mark.slow
def test_the_bytes_do_not_depend_on_the_hash_seed():
    said = {
        subprocess.run(
            [sys.executable, "-c", SCRIPT],
            env=os.environ | {"PYTHONHASHSEED": seed},
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert len(said) == 1
