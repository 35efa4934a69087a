"""The pressing map: what it draws, on which paper, and what it says."""

import io
import re
from xml.etree import ElementTree

import pytest
from blocklang_drawing import Arrow, Dot, Drawing, Path, draw_pressing_map, lies_of, stops_of, text_width, theme_for
from blocklang_pressing_map import make_pressing_map, words
from blocklang_pressing_map.bias_lines import bias_lines
from blocklang_pressing_map.close_ups import part_of, parts_each_way
from blocklang_pressing_map.pages import draw_pages
from pypdf import PdfReader

from blocklang.hooks import OutputOptions, Paper
from blocklang.plan import SewingPlan
from blocklang.thickness import fold
from tests.sheets.plans import NAMES, named_plan, plan_of
from tests.support import blocks
from tests.support.route import json_of
from tests.thickness.wedges import wedges

SVG = "{http://www.w3.org/2000/svg}"


def svg_of(plan: SewingPlan, **more: object) -> ElementTree.Element:
    """Return the first page as SVG, read back."""
    (first, *_) = make_pressing_map(plan, OutputOptions("svg", **more))  # type: ignore[arg-type]
    assert first.name == ""
    return ElementTree.fromstring(first.data)


def words_of(root: ElementTree.Element) -> str:
    """Return all text on a page."""
    return " ".join(text.text or "" for text in root.iter(f"{SVG}text"))


def drawn(plan: SewingPlan) -> Drawing:
    """Return the map alone."""
    return draw_pressing_map(plan, theme_for(plan.block.fabrics))


@pytest.mark.parametrize("name", NAMES)
def test_every_piece_of_cloth_is_painted_from_the_front_to_the_back(name: str) -> None:
    plan = named_plan(name)
    folded = fold(plan.assembly, lies_of(plan))
    bodies = sum(1 for layer in folded.layers if layer.is_body)
    assert [layer.is_body for layer in folded.layers] == [True] * bodies + [False] * (len(folded.layers) - bodies)
    filled = [shape for shape in drawn(plan).shapes if isinstance(shape, Path) and shape.paint.fill]
    assert sum(len(path.trails) for path in filled) >= len(folded.layers)


@pytest.mark.parametrize("name", NAMES)
def test_every_seam_has_its_arrow_and_an_open_one_two_heads(name: str) -> None:
    plan = named_plan(name)
    arrows = [shape for shape in drawn(plan).shapes if isinstance(shape, Arrow)]
    assert len(arrows) >= len(plan.assembly.joins) - plan.assembly.partials.count
    assert not any(arrow.both for arrow in arrows)


@pytest.mark.parametrize("name", NAMES)
def test_stops_and_pivots_have_a_dot(name: str) -> None:
    plan = named_plan(name)
    ends, gone_on = set(), set()
    for step in json_of(plan.block)["steps"]:
        for join in step["joins"]:
            ends |= {tuple(place) for place in join["pivots"]}
            ends |= {tuple(join["path"][0])} if join["start"] == "stop" else set()
            ends |= {tuple(join["path"][-1])} if join["end"] == "stop" else set()
            gone_on |= {tuple(join["path"][0])} if step["kind"] == "partial-finish" else set()
    dots = [shape for shape in drawn(plan).shapes if isinstance(shape, Dot) and shape.paint.fill]
    assert len(dots) == len(ends - gone_on) == len(stops_of(plan))


@pytest.mark.parametrize("name", NAMES)
def test_spun_junctions_have_a_ring(name: str) -> None:
    plan = named_plan(name)
    rings = {shape.at for shape in drawn(plan).shapes if isinstance(shape, Dot) and not shape.paint.fill}
    assert len(rings) == sum(1 for junction in json_of(plan.block)["junctions"] if junction["spin"] != "none")


def test_left_and_right_are_changed_over() -> None:
    plan = plan_of(wedges("AB", (90.0, 270.0)))
    theme = theme_for(plan.block.fabrics)
    drawing = draw_pressing_map(plan, theme)
    bodies = [shape for shape in drawing.shapes if isinstance(shape, Path) and shape.paint.fill][:2]
    middles = {
        plan.block.patches[place].id: sum(x for trail in path.trails for x, _ in _corners(trail)) / 4
        for place, path in enumerate(bodies)
    }
    assert plan.block.patches[0].outline.centroid()[0] < plan.block.patches[1].outline.centroid()[0]
    assert middles["A"] > drawing.width / 2 > middles["B"]


def _corners(trail: object) -> list[tuple[float, float]]:
    return [trail.start, *(stretch.end for stretch in trail.stretches)][:4]


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("paper", "large"), [(Paper.LETTER, False), (Paper.A4, True)], ids=["letter", "a4, large"])
def test_words_are_large_enough_and_stay_on_the_paper(name: str, large: bool, paper: Paper) -> None:
    options = OutputOptions("svg", paper=paper, large_print=large)
    width = {Paper.LETTER: 612.0, Paper.A4: 595.28}[paper]
    for page in make_pressing_map(named_plan(name), options):
        root = ElementTree.fromstring(page.data)
        assert float(root.get("viewBox", "").split()[2]) == pytest.approx(width, abs=0.01)
        for text in root.iter(f"{SVG}text"):
            size, x = float(text.get("font-size", "0")), float(text.get("x", "0"))
            wide = text_width(text.text or "", size, text.get("font-weight") == "bold")
            assert size >= 8
            left = x - wide if text.get("text-anchor") == "end" else x
            assert left >= 36 and left + wide <= width - 36


def test_what_the_page_says() -> None:
    said = words_of(svg_of(named_plan("star")))
    for sentence in ("Star", words.SUBJECT, words.BACK, words.BIAS, "The junction locks and is spun."):
        assert sentence in said
    assert "Two sides of each of the 8 diamond patches are on the bias." in said


@pytest.mark.parametrize(
    ("name", "has", "has_not"),
    [
        ("four-patch", (words.PRESS, words.SPUN, words.RIGHT_SIDE), (words.STOP, words.OPEN)),
        ("whirl", (words.PRESS, words.OUTSIDE), (words.SPUN, words.STOP, words.RIGHT_SIDE)),
        ("flower", (words.PRESS, words.STOP), (words.SPUN, words.OPEN)),
    ],
)
def test_the_key_has_the_marks_that_occur(name: str, has: tuple[str, ...], has_not: tuple[str, ...]) -> None:
    said = words_of(svg_of(named_plan(name)))
    assert all(sentence in said for sentence in has)
    assert not any(sentence in said for sentence in has_not)


def test_an_open_seam_shows() -> None:
    from dataclasses import replace

    from blocklang.pressing import Pressed

    plan = plan_of(wedges("AB", (90.0, 270.0)))
    opened = tuple(Pressed(each.segment, None) for each in plan.pressing.directions)
    plan = replace(plan, pressing=replace(plan.pressing, directions=opened))
    (arrow,) = [shape for shape in drawn(plan).shapes if isinstance(shape, Arrow)]
    assert arrow.both
    assert words.OPEN in words_of(svg_of(plan))
    assert "press open" in make_pressing_map(plan, OutputOptions("text"))[0].data.decode()


def test_black_and_white_has_no_colour() -> None:
    (page, *_) = make_pressing_map(named_plan("star"), OutputOptions("svg", black_and_white=True))
    colours = set(re.findall(r"#[0-9a-f]{6}", page.data.decode()))
    assert len(colours) > 3
    assert all(c[1:3] == c[3:5] == c[5:7] for c in colours)


def test_fabrics_are_paler_on_their_wrong_side() -> None:
    from blocklang_drawing.folded_cloth import paler, shaded

    assert paler("#000000", 0.5) == "#808080"
    assert paler("#1f3a5f", 0.0) == "#1f3a5f"
    assert shaded("#ffffff") == "#e6e6e6"
    colours = set(
        re.findall(r"#[0-9a-f]{6}", make_pressing_map(named_plan("four-patch"), OutputOptions("svg"))[0].data.decode())
    )
    # The right side shows in the little four-patch of the spun centre, the wrong side in patches and allowances.
    assert {"#1f3a5f", shaded(paler("#1f3a5f", 0.55)), paler("#1f3a5f", 0.78)} <= colours


@pytest.mark.parametrize("paper", list(Paper))
def test_the_pdf_has_the_size_of_the_paper_and_can_be_searched(paper: Paper) -> None:
    (file,) = make_pressing_map(named_plan("pinwheel"), OutputOptions("pdf", paper=paper))
    reader = PdfReader(io.BytesIO(file.data))
    box = reader.pages[0].mediabox
    wanted = {Paper.LETTER: (612, 792), Paper.A4: (595.276, 841.89)}[paper]
    assert (float(box.width), float(box.height)) == pytest.approx(wanted, abs=0.1)
    assert "This is the back of the block" in reader.pages[0].extract_text().replace("\n", " ")


@pytest.mark.parametrize("kind", ["svg", "pdf", "png", "text"])
def test_the_same_bytes_every_time(kind: str) -> None:
    plan = named_plan("pinwheel")
    assert make_pressing_map(plan, OutputOptions(kind)) == make_pressing_map(plan, OutputOptions(kind))


def test_a_fine_map_is_enlarged_in_parts() -> None:
    plan = plan_of(blocks.grid(12, 12, 1.5))
    pages = draw_pages(plan, OutputOptions("svg"))
    assert len(pages) == 1 + 2 * 2
    titles = [page.title for page in pages]
    assert [title.rpartition("page ")[2] for title in titles] == [f"{n} of 5" for n in range(1, 6)]
    assert [title.split("enlarged: ")[1].split(",")[0] for title in titles[1:]] == [
        "upper left", "upper right", "lower left", "lower right",
    ]  # fmt: skip


def test_how_many_parts() -> None:
    assert [parts_each_way(wide) for wide in (20, 7, 6.9, 5, 4, 3, 1)] == [1, 1, 2, 2, 3, 3, 3]


def test_parts_hold_all_that_shows_in_them() -> None:
    whole = drawn(named_plan("row-of-nine"))
    parts = [part_of(whole, row, column, 3) for row in range(3) for column in range(3)]
    shown = {id(shape) for part in parts for shape in part.shapes[0].shapes}
    assert shown == {id(shape) for shape in whole.shapes}
    assert all(len(part.shapes[0].shapes) < len(whole.shapes) for part in parts)


def test_the_text_says_which_way() -> None:
    text = make_pressing_map(named_plan("star"), OutputOptions("text"))[0].data.decode()
    assert "- Between corner and diamond: press toward the diamond." in text
    assert all(len(line) <= 78 for line in text.splitlines())
    assert bias_lines(plan_of(blocks.grid(2, 2))) == (words.NO_BIAS,)
