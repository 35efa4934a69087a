"""The handout: several blocks in one document, and its contents true."""

import re
from io import BytesIO

import pytest
from blocklang_drawing import Text
from blocklang_handout import blocklang_outputs, make_handout
from blocklang_handout.pages import draw_pages
from pypdf import PdfReader

from blocklang.hooks import OutputOptions, Paper
from tests.outputs.boxes import assert_in_order
from tests.sheets.plans import NAMES, named_plan

(OUTPUT,) = blocklang_outputs()


def plans(*names):
    return tuple(map(named_plan, names))


@pytest.mark.parametrize("paper", Paper)
def test_the_contents_say_where_each_block_is(paper):
    named = plans("four-patch", "star", "row-of-nine", "flower")
    (file,) = make_handout(named, OutputOptions("pdf", paper=paper, settings=(("title", "Marsh class"),)))
    pages = [" ".join(page.extract_text().split()) for page in PdfReader(BytesIO(file.data)).pages]
    assert pages[0].startswith("Marsh class 4 blocks")
    found = re.findall(r"finished: page (\d+)", pages[0])
    assert len(found) == 4
    for plan, number in zip(named, found, strict=True):
        assert pages[int(number) - 1].startswith(plan.block.name)
        assert f"{number} of {len(pages)}" in pages[int(number) - 1]


def test_a_handout_of_one_block_and_the_same_bytes():
    (first,), (second,) = (OUTPUT.make(named_plan("star"), OutputOptions("pdf")) for _ in range(2))
    assert first == second
    assert len(PdfReader(BytesIO(first.data)).pages) == 2


@pytest.mark.parametrize("large_print", [False, True])
@pytest.mark.parametrize("plain", [False, True])
def test_nothing_collides(large_print, plain):
    options = OutputOptions("pdf", large_print=large_print, black_and_white=plain)
    for page in draw_pages(plans(*NAMES), options):
        assert_in_order(page)


def test_a_page_for_each_block_says_what_to_cut_and_sew():
    _, page = draw_pages(plans("striped-star"), OutputOptions("svg"))
    said = " ".join(shape.text for shape in page.shapes if isinstance(shape, Text))
    assert "Cutting one block" in said and "1. Sew two diamonds together, 4 times." in said
    assert all(fabric in said for fabric in ("fog", "deep", "coral"))
