"""The colouring pages: on which paper, how many pictures, and nothing but lines and words."""

import math
from dataclasses import replace
from io import BytesIO

import pytest
from blocklang_colouring_page import COUNTS, blocklang_outputs, words
from blocklang_colouring_page.pages import INK, MARGIN, QUIET, draw_pages, usual_count
from blocklang_drawing import Path, Window
from pypdf import PdfReader
from shapely.geometry import box

from blocklang.block import Credit
from blocklang.hooks import CannotMakeError, OutputOptions, Paper
from tests.library.plans import graph_of, plan_of
from tests.outputs.boxes import words_on
from tests.sheets.plans import named_plan

(OUTPUT,) = blocklang_outputs()
#: ANSI/ASME Y14.1 size A, and ISO 216 size A4, in points.
PAPERS = {Paper.LETTER: (612.0, 792.0), Paper.A4: (595.28, 841.89)}


def credited(*given):
    plan = named_plan("path")
    return replace(plan, block=replace(plan.block, credits=given))


def pictures(page):
    return [shape for shape in page.shapes if isinstance(shape, Window)]


@pytest.mark.parametrize("paper", Paper)
def test_pages_of_the_right_paper(paper):
    plan = credited(Credit("Path", "Odile Fenwick", "CC-BY-4.0"))
    (file,) = OUTPUT.make(plan, OutputOptions("pdf", paper=paper))
    pages = PdfReader(BytesIO(file.data)).pages
    assert len(pages) == 2
    for number, page in enumerate(pages, 1):
        size = (float(page.mediabox.width), float(page.mediabox.height))
        assert size == pytest.approx(PAPERS[paper], abs=0.02)
        text = " ".join(page.extract_text().split())
        assert "“Path”, by Odile Fenwick, licence CC-BY-4.0." in text
        assert "Name" in text and f"{number} of 2" in text
    assert file.data == OUTPUT.make(plan, OutputOptions("pdf", paper=paper))[0].data


@pytest.mark.parametrize("count", COUNTS[1:])
@pytest.mark.parametrize("name", ["star", "flower", "row-of-nine"])
def test_so_many_equal_pictures_apart(name, count):
    (page,) = draw_pages(named_plan(name), (int(count),), OutputOptions("pdf"))
    found = pictures(page)
    assert len(found) == int(count)
    assert len({(round(each.width, 6), round(each.height, 6)) for each in found}) == 1
    areas = [box(*each.at, each.at[0] + each.width, each.at[1] + each.height) for each in found]
    assert not any(a.intersects(b) for place, a in enumerate(areas) for b in areas[:place])
    inside = box(MARGIN - 0.01, MARGIN, page.width - MARGIN + 0.01, page.height - MARGIN)
    assert all(inside.contains(area) for area in areas)


def test_one_picture_is_as_wide_as_the_paper_allows():
    (page,) = draw_pages(named_plan("star"), (1,), OutputOptions("pdf"))
    assert pictures(page)[0].width == pytest.approx(PAPERS[Paper.LETTER][0] - 2 * MARGIN)


def test_there_is_nothing_but_lines():
    for page in draw_pages(named_plan("striped-star"), (1, 4), OutputOptions("pdf")):
        paths = [each for picture in pictures(page) for each in picture.shapes]
        assert all(isinstance(path, Path) and path.paint.fill is None and path.paint.stroke == INK for path in paths)
        assert len(paths[0].trails) == 8 * 3, "three strips a diamond"
        assert {each.text.colour for each in words_on(page)} == {INK, QUIET}


def test_tiny_patches_are_not_asked_of_a_pencil():
    options = OutputOptions("pdf")
    assert usual_count(graph_of("ohio-star").block, options) == 6
    block = graph_of("large-star").block
    assert usual_count(block, options) == 4
    # Its diamonds are rhombi of 45 degrees, nine to a point: 2 mm across at four to a page, less at six.
    across = []
    for count in (4, 6):
        (page,) = draw_pages(plan_of("large-star"), (count,), options)
        side = pictures(page)[0].width / (2 + math.sqrt(2)) / 9
        across.append(side * math.sqrt(0.5) * 25.4 / 72)
    assert across[0] >= 2 > across[1]


@pytest.mark.parametrize(
    ("settings", "pages"), [((), 2), ((("large", "no"),), 1), ((("small", "0"),), 1), ((("small", "12"),), 2)]
)
def test_settings_choose_the_pages(settings, pages):
    files = OUTPUT.make(plan_of("ohio-star"), OutputOptions("svg", settings=settings))
    assert [file.name for file in files] == ["", "page-2.svg"][:pages]
    assert (b"1 of 2" in files[0].data) == (pages == 2)


def test_no_pages_at_all_is_said_plainly():
    with pytest.raises(CannotMakeError, match="nothing left to colour"):
        OUTPUT.make(named_plan("star"), OutputOptions("pdf", settings=(("large", "no"), ("small", "0"))))


def test_every_author_is_credited():
    given = [Credit(f"Harbour {place}", "Odile Fenwick", "CC-BY-4.0") for place in range(1, 9)]
    said = list(words.credit_lines(given))
    assert len(said) == 7 and said[-1] == "It holds 2 more blocks: the sewing sheet names their authors and licences."
    assert list(words.credit_lines([Credit("Plain")])) == ["“Plain”."]
    assert "1 more block:" in list(words.credit_lines(given[:7]))[-1]
