"""The thickness map and its words."""

import io
from xml.etree import ElementTree

import pytest
from blocklang_drawing import Dot, Path, Text, theme_for
from blocklang_thickness import make_thickness, words
from blocklang_thickness.facts import area_of, facts_of
from blocklang_thickness.picture import draw_thickness, numbers_left_out, scale_of
from pypdf import PdfReader

from blocklang.hooks import OutputOptions, Paper
from tests.sheets.plans import NAMES, named_plan, plan_of
from tests.support import blocks

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("name", ["four-patch", "pinwheel", "star", "whirl"])
def test_every_junction_has_its_number(name: str) -> None:
    plan = named_plan(name)
    facts = facts_of(plan)
    drawing = draw_thickness(plan, facts.thickness, theme_for(plan.block.fabrics), width=520, height=520)
    numbers = [int(shape.text) for shape in drawing.shapes if isinstance(shape, Text)]
    assert sorted(numbers) == sorted(pile.layers for pile in facts.thickness.piles)
    assert not numbers_left_out(drawing, facts.thickness)
    # The highest stand out: their ground is ink.
    dots = [shape for shape in drawing.shapes if isinstance(shape, Dot)]
    highest = facts.thickness.highest.layers
    assert [dot.paint.fill != "#ffffff" for dot in dots] == [number == highest for number in numbers]


@pytest.mark.parametrize("name", NAMES)
def test_more_layers_are_darker_and_on_the_scale(name: str) -> None:
    plan = named_plan(name)
    theme, facts = theme_for(plan.block.fabrics), facts_of(plan)
    scale = scale_of(facts.thickness, facts.levels, theme)
    tints = [int(entry.drawing.shapes[0].paint.fill[1:3], 16) for entry in scale]
    assert tints == sorted(tints, reverse=True) and len(set(tints)) == len(tints)
    assert [level for level, _ in facts.levels] == sorted({region.layers for region in facts.thickness.regions})
    assert sum(share for _, share in facts.levels) == pytest.approx(1, abs=2e-3)
    drawing = draw_thickness(plan, facts.thickness, theme)
    filled = {shape.paint.fill for shape in drawing.shapes if isinstance(shape, Path) and shape.paint.fill}
    assert filled == {entry.drawing.shapes[0].paint.fill for entry in scale}


def test_numbers_never_cover_each_other() -> None:
    plan = plan_of(blocks.grid(10, 10))
    facts = facts_of(plan)
    drawing = draw_thickness(plan, facts.thickness, theme_for(plan.block.fabrics), width=150, height=150)
    dots = [shape for shape in drawing.shapes if isinstance(shape, Dot)]
    assert numbers_left_out(drawing, facts.thickness)
    for place, dot in enumerate(dots):
        for other in dots[:place]:
            apart = ((dot.at[0] - other.at[0]) ** 2 + (dot.at[1] - other.at[1]) ** 2) ** 0.5
            assert apart >= dot.radius + other.radius - 1e-6


def test_the_highest_pile_is_said_in_a_sentence() -> None:
    assert words.highest(9, [("a", "b")]) == "The highest pile is 9 layers, where a and b meet."
    assert (
        words.highest(7, [("“c”",), ("a",)]) == "The highest pile is 7 layers, at 2 junctions; one of them is at “c”."
    )
    assert words.highest(8, [tuple("abcdef")]) == "The highest pile is 8 layers, where a, b, c and 3 more meet."
    facts = facts_of(named_plan("pinwheel"))
    assert facts.sentences[0] == "The highest pile is 8 layers, where t.1, t.2, t.3 and 5 more meet."


def test_areas() -> None:
    assert area_of(((0, 0), (2, 0), (2, 3), (0, 3))) == 6
    assert area_of(((0, 0), (0, 3), (2, 3), (2, 0))) == -6


@pytest.mark.parametrize("paper", list(Paper))
def test_the_page(paper: Paper) -> None:
    (file,) = make_thickness(named_plan("four-patch"), OutputOptions("pdf", paper=paper))
    reader = PdfReader(io.BytesIO(file.data))
    assert len(reader.pages) == 1
    said = reader.pages[0].extract_text().replace("\n", " ")
    assert "Grid" in said and "The highest pile is 4 layers" in said and words.SUBJECT in said
    (svg,) = make_thickness(named_plan("four-patch"), OutputOptions("svg", paper=paper))
    sizes = [float(text.get("font-size", "0")) for text in ElementTree.fromstring(svg.data).iter(f"{SVG}text")]
    assert sizes and min(sizes) >= 8


@pytest.mark.parametrize("kind", ["svg", "pdf", "png", "text"])
def test_the_same_bytes_every_time(kind: str) -> None:
    plan = named_plan("whirl")
    assert make_thickness(plan, OutputOptions(kind)) == make_thickness(plan, OutputOptions(kind))


def test_the_text() -> None:
    text = make_thickness(named_plan("four-patch"), OutputOptions("text"))[0].data.decode()
    assert "- 1 layer: 9" in text and "- 4 layers: 1 junction\n" in text
    assert all(len(line) <= 78 for line in text.splitlines())
