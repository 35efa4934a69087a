"""Full-size pages measured from outside: paper, squares, pieces and tiles."""

import itertools
import re

import numpy as np
import pytest
from blocklang_drawing import (
    Dot,
    Drawing,
    FullSize,
    PageWords,
    Paint,
    Path,
    lay_on_pages,
    pages_to_pdf,
    room_for_pieces,
    write_pages,
)
from blocklang_drawing.full_size_shelves import shelve
from blocklang_drawing.full_size_tiles import OVERLAP, tiles_of
from blocklang_drawing.shapes import Window, polygon
from hypothesis import given, settings
from hypothesis import strategies as st

from blocklang.hooks import OutputOptions, Paper
from tests.templates.pixels import boxes, ink, lines, square_sides, texts

INCH = 72.0
#: ANSI/ASME Y14.1 size A; ISO 216 A4.
SIZES = {Paper.LETTER: (612.0, 792.0), Paper.A4: (595.276, 841.890)}
WORDS = PageWords("Harbour Light", "Templates", ("Outer line: cut.",))


def box(name, width, height, *more):
    ring = polygon(((1, 1), (width - 1, 1), (width - 1, height - 1), (1, height - 1)))
    return FullSize(name, Drawing(width, height, (Path((ring,), Paint(stroke="#000000", width=0.5)), *more), name))


def squares_of(paper):
    """Return where the two squares stand: the 1 in square in the lower left corner within the margins."""
    low = SIZES[paper][1] - 36
    large = (36 - 4, low - INCH - 4, 36 + INCH + 4, low + 4)
    small = (36 + INCH + 12 - 4, low - 56.7 - 4, 36 + INCH + 12 + 56.7 + 4, low + 4)
    return large, small


@pytest.mark.parametrize("paper", Paper)
@pytest.mark.parametrize("size", [9.0, 12.0])
def test_every_page_has_its_paper_its_words_and_true_squares(paper, size):
    words = PageWords("Harbour Light", "Templates", ("Outer line: cut. " * 9,), size)
    pdf = pages_to_pdf(lay_on_pages([box("A", 100, 80), box("B", 700, 1000)], words, paper))
    count = len(boxes(pdf))
    assert count > 2
    for page, (found, text) in enumerate(zip(boxes(pdf), texts(pdf), strict=True)):
        assert found == pytest.approx(SIZES[paper], abs=0.01)
        assert "Harbour Light" in text
        assert f"page {page + 1} of {count}" in text
        assert "measure before you cut" in text.lower()
        large, small = squares_of(paper)
        assert square_sides(pdf, page, 600, large) == pytest.approx((1.0, 1.0), abs=0.005)
        assert square_sides(pdf, page, 600, small) == pytest.approx((20 / 25.4, 20 / 25.4), abs=0.005)


@pytest.mark.parametrize("paper", Paper)
def test_a_piece_is_as_large_on_paper_as_it_is(paper):
    pdf = pages_to_pdf(lay_on_pages([box("A", 5 * INCH + 2, 4 * INCH + 2)], WORDS, paper))
    region = (30, 60, 36 + 5 * INCH + 20, 60 + 4 * INCH + 20)
    assert square_sides(pdf, 0, 600, region) == pytest.approx((5.0, 4.0), abs=0.005)


@pytest.mark.parametrize("paper", Paper)
def test_nothing_is_printed_within_half_an_inch_of_the_edge(paper):
    pdf = pages_to_pdf(lay_on_pages([box("A", *room_for_pieces(WORDS, paper)), box("B", 900, 900)], WORDS, paper))
    for page in range(len(boxes(pdf))):
        dark = ink(pdf, page, 144) > 0.5
        rows, columns = np.nonzero(dark.any(axis=1))[0], np.nonzero(dark.any(axis=0))[0]
        assert min(rows[0], columns[0]) >= 70
        assert dark.shape[0] - rows[-1] >= 70
        assert dark.shape[1] - columns[-1] >= 70


def test_the_same_pieces_give_the_same_bytes_and_svg_pages_are_numbered():
    pages = lay_on_pages([box("A", 100, 80), box("B", 700, 1000)], WORDS, Paper.A4)
    assert pages_to_pdf(pages) == pages_to_pdf(lay_on_pages([box("A", 100, 80), box("B", 700, 1000)], WORDS, Paper.A4))
    files = write_pages(pages, OutputOptions("svg"))
    assert [file.name for file in files] == ["", *(f"page-{n}.svg" for n in range(2, len(pages) + 1))]
    assert all(b'width="595.28pt"' in file.data for file in files)
    assert len(write_pages(pages, OutputOptions("pdf"))) == 1


@given(st.lists(st.tuples(st.floats(5, 500), st.floats(5, 600)), min_size=1, max_size=30))
@settings(max_examples=100, deadline=None)
def test_shelved_pieces_never_overlap_and_stay_in_their_room(sizes):
    spots = shelve(sizes, 500, 600, 12)
    for (width, height), spot in zip(sizes, spots, strict=True):
        assert spot.left >= 0 and spot.left + width <= 500.02
        assert spot.top >= 0 and spot.top + height <= 600.02
    for (a, (aw, ah)), (b, (bw, bh)) in itertools.combinations(zip(spots, sizes, strict=True), 2):
        if a.page == b.page:
            apart = a.left + aw <= b.left or b.left + bw <= a.left or a.top + ah <= b.top + 0.1
            assert apart or b.top + bh <= a.top + 0.1


def test_equal_pieces_share_a_shelf():
    spots = shelve([(100, 50)] * 8, 450, 600, 10)
    assert [spot.top for spot in spots] == [0] * 4 + [60] * 4
    assert {spot.page for spot in spots} == {0}


@given(st.floats(300, 4000), st.floats(300, 4000))
@settings(max_examples=60, deadline=None)
def test_tiles_cover_a_piece_and_neighbours_share_half_an_inch(width, height):
    from blocklang_drawing.full_size_paper import Room

    room = Room(36, 60, 540, 580)
    tiles = tiles_of(box("A", width, height), room)
    assert all(tile.width <= room.width + 0.01 and tile.height <= room.height + 0.01 for tile in tiles)
    columns = sorted({tile.onto[0] for tile in tiles})
    assert all(b - a == pytest.approx(tiles[0].width - OVERLAP) for a, b in itertools.pairwise(columns))
    assert columns[-1] + tiles[0].width == pytest.approx(width)
    rows = sorted({tile.onto[1] for tile in tiles})
    assert rows[-1] + tiles[0].height == pytest.approx(height)
    assert len(tiles) == len(rows) * len(columns)
    # Every cross lies on at least two tiles, whole.
    for cross in tiles[0].crosses:
        seen = [
            tile
            for tile in tiles
            if 0 < cross.at[0] - tile.onto[0] < tile.width and 0 < cross.at[1] - tile.onto[1] < tile.height
        ]
        assert len(seen) >= 2


def test_neighbouring_tiles_show_the_same_where_they_overlap():
    """The marks of a leaning row of dots in the overlap come out at the same places on both pages."""
    rain = [Dot((x, y), 1.5, Paint(fill="#000000")) for x in range(20, 780, 13) for y in range(20, 380, 17)]
    pages = lay_on_pages([box("A", 800, 400, *rain)], WORDS, Paper.LETTER)
    pdf = pages_to_pdf(pages)
    assert len(pages) == 2
    windows = [next(shape for shape in page.shapes if isinstance(shape, Window)) for page in pages]
    (left, top), wide, high = windows[0].at, windows[0].width, windows[0].height
    inset = 3
    first = ink(pdf, 0, 144, (left + wide - OVERLAP + inset, top + inset, left + wide - inset, top + high - inset))
    second = ink(pdf, 1, 144, (left + inset, top + inset, left + OVERLAP - inset, top + high - inset))
    rows, columns = min(first.shape[0], second.shape[0]), min(first.shape[1], second.shape[1])
    assert first.mean() > 0.02
    # Dots of the page may fall between those of the other by half of one; nothing else may differ.
    assert np.abs(first[:rows, :columns] - second[:rows, :columns]).mean() < 0.02
    assert np.corrcoef(first[:rows, :columns].ravel(), second[:rows, :columns].ravel())[0, 1] > 0.9


def test_tiles_say_which_they_are_and_how_they_are_joined():
    said = texts(pages_to_pdf(lay_on_pages([box("Template 3", 1000, 900)], WORDS, Paper.A4)))
    names = [re.search(r"Template 3, row (\d) of 2, column (\d) of 2", text).groups() for text in said]
    assert names == [("1", "1"), ("1", "2"), ("2", "1"), ("2", "2")]
    assert all("dashed line" in text for text in said)


def test_a_piece_just_as_large_as_the_room_is_not_tiled():
    for paper in Paper:
        assert len(lay_on_pages([box("A", *room_for_pieces(WORDS, paper))], WORDS, paper)) == 1
        wide, high = room_for_pieces(WORDS, paper)
        assert len(lay_on_pages([box("A", wide + 1, high - 100)], WORDS, paper)) == 2


def test_words_that_are_too_long_are_cut_short_and_dangerous_ones_are_harmless():
    hostile = PageWords("#panic() <b>&" + "lighthouse " * 40, "]] *bold* $x$")
    pdf = pages_to_pdf(lay_on_pages([box("A<&>", 100, 80)], hostile, Paper.LETTER))
    (text,) = texts(pdf)
    assert "#panic() <b>&" in text
    dark = ink(pdf, 0, 72)
    assert not (dark[:, 612 - 34 :] > 0.3).any()
    assert lines(dark.mean(axis=1))


def pie(radius):
    """Return the quarter of a ring: the middle and the lower right corner of its square are empty."""
    from blocklang_drawing import ArcTo, Trail

    trail = Trail((1, 1), (ArcTo((radius, radius), radius - 1, True, False),))
    inner = Trail((1, 40), (ArcTo((radius - 39, radius), radius - 40, True, False),))
    paths = tuple(Path((each,), Paint(stroke="#000000")) for each in (trail, inner))
    return FullSize("Ring", Drawing(radius + 1, radius + 1, paths, "Ring"))


def test_blank_tiles_are_left_out_and_no_others():
    pages = lay_on_pages([pie(900)], WORDS, Paper.LETTER)
    pdf = pages_to_pdf(pages)
    said = texts(pdf)
    names = [re.search(r"row (\d) of (\d), column (\d) of (\d)", text).groups() for text in said]
    assert [(row, column) for row, _, column, _ in names] == [("1", "1"), ("1", "2"), ("2", "2")]
    # A large square has nothing but cloth on its middle tile, which is needed all the same.
    square = lay_on_pages([box("A", 1500, 1500)], WORDS, Paper.LETTER)
    assert len(square) == 9


@pytest.mark.parametrize("clockwise", [True, False])
@pytest.mark.parametrize("large", [True, False])
def test_arcs_are_followed_where_they_are_drawn(clockwise, large):
    """The ink of every arc lies where the rings that blank tiles are found by say."""
    from blocklang_drawing import ArcTo, Trail
    from blocklang_drawing.full_size_ink import rings_of

    arc = Path((Trail((200, 200), (ArcTo((260, 230), 50, clockwise, large),)),), Paint(stroke="#000000", width=2))
    drawing = Drawing(400, 400, (arc,), "Arc")
    dark = ink(pages_to_pdf([drawing]), 0, 72)
    (ring,) = rings_of(drawing.shapes)
    assert all(dark[int(y) - 1 : int(y) + 2, int(x) - 1 : int(x) + 2].max() > 0.3 for x, y in ring[1:-1])
    rows, columns = np.nonzero(dark > 0.5)
    assert all(min((x - c) ** 2 + (y - r) ** 2 for x, y in ring) < 36 for r, c in zip(rows, columns, strict=True))


@given(st.floats(200, 2500), st.floats(200, 2500))
@settings(max_examples=30, deadline=None)
def test_a_label_lies_on_one_tile(width, height):
    from blocklang_drawing import Arrow, Text, tile_boxes
    from blocklang_drawing.full_size_labels import Grain, Label, with_label
    from blocklang_drawing.full_size_paper import HEADING, room_on

    drawing = box("A", width, height).drawing
    ring = ((1, 1), (width - 1, 1), (width - 1, height - 1), (1, height - 1))
    label = Label("1", "half-square triangle", ("Cut 12 of harbour", "Cut 4 of fog"), 9.0, Grain.UPRIGHT)
    boxes_found = tile_boxes(drawing, WORDS, Paper.A4)
    made = with_label(drawing, ring, label, within=boxes_found)
    marks = [shape for shape in made.shapes if isinstance(shape, Text | Arrow)]
    assert len(marks) == 5
    places = [place for mark in marks for place in ([mark.at] if isinstance(mark, Text) else [mark.start, mark.end])]
    if not boxes_found:
        assert room_on(Paper.A4, 72, HEADING).holds(drawing)
    boxes_found = boxes_found or ((0, 0, width, height),)
    assert any(all(a <= x <= c and b <= y <= d for x, y in places) for a, b, c, d in boxes_found)


def test_a_label_that_does_not_fit_stands_below_with_every_word_of_it():
    from blocklang_drawing import Text
    from blocklang_drawing.full_size_labels import Label, with_label

    label = Label(
        "12", "half-rectangle triangle, lantern glass", ("Cut 40 of midnight harbour, 20 of them reversed",), 9.0
    )
    made = with_label(box("A", 40, 40).drawing, ((1, 1), (39, 1), (39, 39), (1, 39)), label)
    said = [shape.text for shape in made.shapes if isinstance(shape, Text)]
    assert "…" not in "".join(said)
    assert said.count("12") == 2
    assert " ".join(text for text in said if text != "12").split() == f"{label.name} {label.lines[0]}".split()
    assert all(shape.at[1] <= made.height for shape in made.shapes if isinstance(shape, Text))
