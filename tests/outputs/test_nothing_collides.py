"""Over library blocks, in every variant: nothing on a drawing lies on anything else, and every word can be read."""

import pytest
from blocklang_colouring_page import COUNTS
from blocklang_colouring_page.pages import draw_pages
from blocklang_diagram import LAID_APART, NUMBERED, VIEWS
from blocklang_diagram.views import draw_view
from blocklang_drawing import Drawing, Paint, Path, Text, theme_for
from blocklang_drawing.shapes import polyline
from blocklang_quilt_preview.arrangements import ARRANGEMENTS
from blocklang_quilt_preview.asking import quilt_asked_for
from blocklang_quilt_preview.picture import draw_quilt

from blocklang.hooks import OutputOptions, Paper
from tests.library.plans import plan_of
from tests.outputs.boxes import assert_in_order

BLOCKS = (
    "bears-paw",
    "churn-dash",
    "diamond-rectangle",
    "drunkards-path",
    "eight-pointed-star",
    "flying-geese",
    "hexagon-flower-19",
    "log-cabin",
    "mitred-frame",
    "ohio-star",
    "storm-at-sea",
)
#: Letter paper is 612 points by 792, A4 595 by 842: a picture as large as this is printed as it is, not made smaller.
WIDEST, HIGHEST = 540.0, 720.0
QUILTED = tuple(name for name in BLOCKS if "hexagon" not in name)


@pytest.mark.parametrize("name", BLOCKS)
@pytest.mark.parametrize("view", VIEWS)
def test_diagrams(name: str, view: str) -> None:
    for plain in (False, True):
        drawing = draw_view(plan_of(name), view, None, OutputOptions("svg", black_and_white=plain))
        assert_in_order(drawing)
        assert drawing.width <= WIDEST + 0.5 and drawing.height <= HIGHEST


@pytest.mark.parametrize("name", BLOCKS)
def test_colouring_pages(name: str) -> None:
    for paper, large_print in ((Paper.LETTER, True), (Paper.A4, False)):
        options = OutputOptions("pdf", paper=paper, large_print=large_print)
        for page in draw_pages(plan_of(name), (1, 6, 12), options):
            assert_in_order(page)


@pytest.mark.parametrize("name", QUILTED)
def test_quilts(name: str) -> None:
    block = plan_of(name).block
    for settings in ((("rows", "6"), ("columns", "1")), (("turning", "both-mirrored"), ("rows", "2"))):
        options = OutputOptions("svg", settings=settings)
        drawing = draw_quilt(block, quilt_asked_for(block, options), theme_for(block.fabrics), options.unit)
        assert_in_order(drawing)
        assert drawing.width <= WIDEST + 0.5 and drawing.height <= HIGHEST


@pytest.mark.parametrize("turning", ARRANGEMENTS)
def test_quilts_turned_every_way(turning: str) -> None:
    block, options = plan_of("log-cabin").block, OutputOptions("svg", settings=(("turning", turning),))
    assert_in_order(draw_quilt(block, quilt_asked_for(block, options), theme_for(block.fabrics), options.unit))


@pytest.mark.parametrize("count", COUNTS[1:])
def test_every_count_of_small_pictures(count: str) -> None:
    for page in draw_pages(plan_of("flying-geese"), (int(count),), OutputOptions("pdf")):
        assert_in_order(page)


@pytest.mark.slow
@pytest.mark.parametrize("view", [NUMBERED, LAID_APART])
@pytest.mark.parametrize("name", ["large-star", "mariners-compass", "harbour-runner", "ocean-waves", "pineapple"])
def test_blocks_of_many_patches(name: str, view: str) -> None:
    assert_in_order(draw_view(plan_of(name), view, None, OutputOptions("svg")))


@pytest.mark.parametrize(
    ("shapes", "found"),
    [
        ((Text((10, 20), "log", 7.0, "#000000"),), "too small"),
        ((Text((10, 20), "log", 9.0, "#000000"), Text((18, 22), "hearth", 9.0, "#000000")), "covers"),
        ((Text((90, 20), "hearth", 9.0, "#000000"),), "beyond the edge"),
        (
            (Text((10, 20), "log", 9.0, "#000000"), Path((polyline(((5, 15), (50, 19))),), Paint(stroke="#000000"))),
            "line",
        ),
        ((Path((polyline(((5, 15), (150, 19))),), Paint(stroke="#000000")),), "mark beyond the edge"),
    ],
)
def test_the_check_itself_finds_what_is_wrong(shapes, found: str) -> None:
    with pytest.raises(AssertionError, match=found):
        assert_in_order(Drawing(100.0, 40.0, shapes, "wrong on purpose"))
