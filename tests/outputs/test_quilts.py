"""Quilts: what lies where, found by looking at colours on the drawing; and what is refused, in plain words."""

import math
from dataclasses import replace

import pytest
from blocklang_drawing import Path, theme_for
from blocklang_drawing.turned_block import turn_patches
from blocklang_quilt_preview import blocklang_outputs, picture
from blocklang_quilt_preview.arrangements import ARRANGEMENTS
from blocklang_quilt_preview.asking import quilt_asked_for
from blocklang_quilt_preview.picture import MARGIN, draw_quilt
from shapely import STRtree
from shapely.geometry import Point as Spot
from shapely.geometry import Polygon

from blocklang.block import LengthUnit
from blocklang.geometry import TICKS_PER_INCH
from blocklang.hooks import CannotMakeError, OutputOptions
from tests.outputs.boxes import places_of, words_on
from tests.sheets.plans import named_plan, striped_star
from tests.support import blocks

(OUTPUT,) = blocklang_outputs()
ROWS = COLUMNS = 4
#: Inside a block, away from every seam of the block below and from the lines of its own symmetry.
PROBES = [(u, v) for u in (0.17, 0.41, 0.83) for v in (0.23, 0.38, 0.91)]
FOUR = (("rows", "4"), ("columns", "4"))


def corner_block():
    """Return a block of which no turn and no mirror image is like it."""
    boxes = [(0, 0, 1, 1, "fog"), (1, 0, 3, 1, "deep"), (0, 1, 1, 3, "coral"), (1, 1, 3, 3, "reed")]
    patches = [blocks.patch(c, c, [(a, b), (x, b), (x, y), (a, y)]) for a, b, x, y, c in boxes]
    return blocks.block(patches, blocks.square(3), "Corner")


class Look:
    """Tells the colour at a place of a quilt, counted in blocks from its upper left corner."""

    def __init__(self, block, settings):
        options = OutputOptions("svg", settings=settings)
        self.drawing = draw_quilt(block, quilt_asked_for(block, options), theme_for(block.fabrics), options.unit)
        paths = [shape for shape in self.drawing.shapes if isinstance(shape, Path) and shape.paint.fill]
        found = [(Polygon(places_of(trail)), path.paint.fill) for path in paths for trail in path.trails]
        self.areas, self.colours = zip(*found, strict=True)
        self.tree = STRtree(self.areas)
        self.side = math.sqrt(sum(area.area for area in self.areas)) / ROWS

    def at(self, x, y):
        (found,) = self.tree.query(Spot(MARGIN + x * self.side, MARGIN + y * self.side), predicate="within")
        return self.colours[found]


def spots():
    return [(c + u, r + v) for r in range(ROWS) for c in range(COLUMNS) for u, v in PROBES]


def quarter_about(x, y, middle):
    """Turn a place a quarter clockwise as seen."""
    (mx, my) = middle
    return mx - (y - my), my + (x - mx)


#: For each arrangement, where the same colour is found again: as a change of places that leaves the quilt as it is.
SAME = {
    "alike": lambda x, y: ((x + 1) % 4, y),
    "every-other": lambda x, y: quarter_back((x, y)),
    "pinwheel": lambda x, y: quarter_about(x, y, (x // 2 * 2 + 1, y // 2 * 2 + 1)),
    "furrows": lambda x, y: (4 - x, y // 1 * 2 + 1 - y),
    "barn-raising": lambda x, y: quarter_about(x, y, (2, 2)),
    "rows-mirrored": lambda x, y: (x, 4 - y),
    "columns-mirrored": lambda x, y: (4 - x, y),
    "both-mirrored": lambda x, y: (4 - x, 4 - y),
}


def quarter_back(place):
    """Go to the block on the right (the left one at the end): it is the same, turned a quarter."""
    x, y = place
    column, row = int(x), int(y)
    u, v = x - column, y - row
    turned = (v, 1 - u) if (column + row) % 2 == 0 else (1 - v, u)
    return (column + 1) % 4 + turned[0], row + turned[1]


@pytest.mark.parametrize("turning", ARRANGEMENTS)
def test_the_blocks_lie_as_the_arrangement_says(turning):
    look = Look(corner_block(), (*FOUR, ("turning", turning)))
    for x, y in spots():
        assert look.at(x, y) == look.at(*SAME[turning](x, y)), (x, y)


def test_no_two_arrangements_are_the_same():
    looks = [Look(corner_block(), (*FOUR, ("turning", turning))) for turning in ARRANGEMENTS]
    assert len({tuple(look.at(x, y) for x, y in spots()) for look in looks}) == len(ARRANGEMENTS)


def test_the_upper_left_block_lies_as_it_was_drafted():
    for turning in set(ARRANGEMENTS) - {"barn-raising"}:
        look = Look(corner_block(), (*FOUR, ("turning", turning)))
        colours = [fabric.colour for fabric in blocks.FABRICS]
        assert [look.at(0.1, 0.9), look.at(0.9, 0.9), look.at(0.1, 0.1), look.at(0.9, 0.1)] == colours


@pytest.mark.parametrize("made", [corner_block, blocks.drunkards_path, striped_star])
@pytest.mark.parametrize("mirrored", [False, True])
def test_turning_is_exact(made, mirrored):
    block = made()
    wide, high = block.size

    def turned(place, quarters):
        x, y = (wide - place[0], place[1]) if mirrored else place
        for _ in range(quarters):
            x, y = high - y, x
        return x, y

    for quarters in range(4):
        for before, after in zip(block.patches, turn_patches(block, quarters, mirrored), strict=True):
            there = {turned(corner, quarters) for corner in before.outline.corners}
            assert {tuple(corner) for corner in after.outline.corners} == there
            assert after.outline.area() == pytest.approx(before.outline.area(), rel=1e-9)
            if before.stripes:
                assert after.stripes.start == turned(before.stripes.start, quarters)
                assert after.stripes.end == turned(before.stripes.end, quarters)


def test_tiny_patches_are_painted_without_lines_in_the_same_colours(monkeypatch):
    plain = Look(striped_star(), FOUR)
    monkeypatch.setattr(picture, "TINY", math.inf)
    tiny = Look(striped_star(), FOUR)
    strokes = [path.paint for path in tiny.drawing.shapes if isinstance(path, Path) and path.paint.fill is None]
    assert len(strokes) == 1, "the border alone is a line"
    assert [tiny.at(x, y) for x, y in spots()] == [plain.at(x, y) for x, y in spots()]


def tiny_block():
    return blocks.grid(30, 30, 1.0)


def said(block, unit=LengthUnit.INCH, **settings):
    options = OutputOptions("svg", unit=unit, settings=tuple(settings.items()))
    drawing = draw_quilt(block, quilt_asked_for(block, options), theme_for(block.fabrics), options.unit)
    return " ".join(words.text.text for words in words_on(drawing))


def test_the_size_of_the_quilt_is_said():
    block = corner_block()
    assert "Corner: 6 rows of 5 blocks, 30 in all." in said(block, rows="6", columns="5")
    assert "measures 15 in wide and 18 in high, finished, before borders and binding." in said(
        block, rows="6", columns="5"
    )
    assert "38.1 cm wide and about 45.7 cm" in said(block, LengthUnit.CENTIMETRE, rows="6", columns="5")
    assert "Corner: 1 row of 1 block, 1 in all." in said(block, rows="1", columns="1")
    assert "Every other block is turned a quarter." in said(block, turning="every-other")
    assert "mirror image" not in said(block) and "another block to cut" in said(block, turning="rows-mirrored")


@pytest.mark.parametrize(
    ("made", "settings", "told"),
    [
        (lambda: blocks.hexagons(1), {}, "only where their outline is a rectangle"),
        (lambda: blocks.grid(2, 1), {"turning": "pinwheel"}, "Only a square block"),
        (corner_block, {"turning": "barn-raising", "rows": "3"}, "even number"),
        (corner_block, {"rows": "0"}, "The number of rows is a whole number from 1 to 40"),
        (corner_block, {"columns": "41"}, "The number of columns"),
        (corner_block, {"columns": "²"}, "The number of columns"),
        (corner_block, {"rows": "1e3"}, "The number of rows"),
        (corner_block, {"rows": "9" * 5000}, "The number of rows"),
        (tiny_block, {"rows": "30"}, "too many patches"),
    ],
)
def test_what_cannot_be_shown_is_said_plainly(made, settings, told):
    with pytest.raises(CannotMakeError, match=told):
        quilt_asked_for(made(), OutputOptions("svg", settings=tuple(settings.items())))


def test_an_oblong_block_may_be_turned_upside_down():
    assert "straight furrows" in said(blocks.grid(2, 1), turning="furrows")


@pytest.mark.parametrize("kind", ["svg", "png", "pdf"])
def test_every_format_repeats(kind):
    plan = named_plan("star")
    first, second = (OUTPUT.make(plan, OutputOptions(kind))[0].data for _ in range(2))
    assert first == second
    assert first.startswith({"svg": b"<?xml", "png": b"\x89PNG", "pdf": b"%PDF"}[kind])


def test_a_corner_on_a_side_leaves_a_rectangle():
    block = corner_block()
    first, *others = block.outline.edges
    middle = first.start._replace(x=(first.start.x + first.end.x) // 2)
    halves = (replace(first, end=middle), replace(first, start=middle))
    outline = replace(block.outline, edges=(*halves, *others))
    assert "12 in wide" in said(replace(block, outline=outline))
    assert block.size[0] == 3 * TICKS_PER_INCH
