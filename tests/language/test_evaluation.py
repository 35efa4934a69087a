"""What a file draws: points, groups, rows, cuts, placed blocks and wishes, held against geometry worked out by hand."""

import math

import pytest

from blocklang.block import (
    Fabric,
    FirstWish,
    LengthUnit,
    PartialWish,
    PressFabricWish,
    PressWish,
    Print,
    RowsWish,
    SetInWish,
    SpinSense,
    SpinWish,
    StopWish,
    Value,
)
from blocklang.geometry import TICKS_PER_INCH, Point
from blocklang.language import Overrides
from tests.language.reading_blocks import HEADING, block_of, codes, covered, inches

CORNERS = "point a at 0, 0\npoint b at 6, 0\npoint c at 6, 6\npoint d at 0, 6\n"
GRID = "rows\n  F D\n  D F\nend\n"


def where(text: str, name: str = "p") -> tuple[float, float]:
    """Return where a point lies, in inches."""
    block = block_of(HEADING + CORNERS + "rows\n  F\nend\n" + text)
    at = next(point.at for point in block.points if point.name == name)
    return at.x / TICKS_PER_INCH, at.y / TICKS_PER_INCH


@pytest.mark.parametrize(
    ("line", "place"),
    [
        ("point p at 1 1/2, 2 in", (1.5, 2)),
        ("point p at 3½, 2", (3.5, 2)),
        ("point p at 2.54 cm, 25.4 mm", (1, 1)),
        ("point p at size / 2, height - 1", (3, 5)),
        ("point p at -1, 0", (-1, 0)),
        ("point p at centre", (3, 3)),
        ("point p at center", (3, 3)),
        ("point p at e", (6, 3)),
        ("point p from a by 2 toward 90 deg", (0, 2)),
        ("point p from a by 2 toward 90", (0, 2)),
        ("point p from a by 2 toward c", (math.sqrt(2), math.sqrt(2))),
        ("point p from c by sqrt 2 toward 225 deg", (5, 5)),
        ("point p along a c by sqrt 8", (2, 2)),
        ("point p between a c", (3, 3)),
        ("point p between a and c at 1/3", (2, 2)),
        ("point p where a c meets b, d", (3, 3)),
        ("let u = sqrt (size * size + height * height)\npoint p from a by u toward 45 deg", (6, 6)),
        ("let u = 2 * sin 30 deg\npoint p at u, tan 45 deg", (1, 1)),
        ("let n = 360 deg / 8\npoint p from a by 2 in toward n + 45 deg", (0, 2)),
        ("let u = -(1 - 3) / -2 + 4\npoint p at u, 0", (3, 0)),
    ],
)
def test_a_point_lies_where_its_rule_says(line: str, place: tuple[float, float]) -> None:
    assert where(line) == pytest.approx(place, abs=2 / TICKS_PER_INCH)


def test_a_third_of_an_inch_is_exact() -> None:
    block = block_of(HEADING + "rows\n  F\nend\npoint p at 1/3, size / 7\n")
    assert block.points[0].at == Point(TICKS_PER_INCH // 3, 6 * TICKS_PER_INCH // 7)


def test_a_bare_number_is_in_the_unit_of_the_size() -> None:
    block = block_of(HEADING.replace("6 in", "10 cm") + "rows\n  F\nend\npoint p at 5, 5 + 1 in\n")
    assert block.unit is LengthUnit.CENTIMETRE
    x, y = block.points[0].at
    assert (x, y) == pytest.approx((5 / 2.54 * TICKS_PER_INCH, (5 / 2.54 + 1) * TICKS_PER_INCH), abs=1)


def test_the_heading_is_kept() -> None:
    block = block_of(
        'block "Low Tide"\nlanguage 1\nsize 6 in by 3 in\nfamily marsh\nby "Odile Fenwick" licence CC-BY-4.0\n'
        'source "a sampler"\nnote "One."\nnote "Two."\nseam allowance 1/2 in\n'
        'fabric fog as F background light #ABC "Sea fog"\nrows\n  F\nend\n'
    )
    assert (block.name, block.family, block.notes) == ("Low Tide", "marsh", ("One.", "Two."))
    assert block.size == (6 * TICKS_PER_INCH, 3 * TICKS_PER_INCH)
    assert block.seam_allowance == TICKS_PER_INCH // 2
    credit = block.credits[0]
    assert (credit.author, credit.licence, credit.source) == ("Odile Fenwick", "CC-BY-4.0", "a sampler")
    fabric = block.fabrics[0]
    assert (fabric.id, fabric.role, fabric.value) == ("fog", "background", Value.LIGHT)
    assert (fabric.colour, fabric.title) == ("#aabbcc", "Sea fog")


@pytest.mark.parametrize(
    ("word", "printed"), [("", Print.ALL_OVER), (" directional", Print.ONE_WAY), (" fussy", Print.MOTIFS)]
)
def test_a_fabric_says_what_its_print_asks_of_the_cutting(word, printed) -> None:
    block = block_of(
        f'block "Low Tide"\nlanguage 1\nsize 6 in\nfabric fog as F ground light #abc{word} "Fog"\nrows\n  F\nend\n'
    )
    assert (block.fabrics[0].printed, block.fabrics[0].title) == (printed, "Fog")
    assert Fabric("fog", "ground", Value.LIGHT, "#abc").printed is Print.ALL_OVER


def test_the_allowance_is_a_quarter_inch_when_nothing_is_said() -> None:
    assert block_of(HEADING.replace("6 in", "15 cm") + GRID).seam_allowance == TICKS_PER_INCH // 4


def test_rows_are_drawn_as_they_look() -> None:
    block = block_of(HEADING + "rows 1 2 by 2 1\n  F D\n  D F\nend\n")
    assert [(patch.id, patch.fabric) for patch in block.patches] == [
        ("r1c1", "fog"), ("r1c2", "deep"), ("r2c1", "deep"), ("r2c2", "fog")
    ]  # fmt: skip
    assert inches(block, "r1c1") == [(0, 2), (2, 2), (2, 6), (0, 6)]
    assert inches(block, "r2c2") == [(2, 0), (6, 0), (6, 2), (2, 2)]


@pytest.mark.parametrize(
    ("cell", "corners"),
    [
        ("F/D", {"r1c1.1": [(0, 0), (6, 6), (0, 6)], "r1c1.2": [(0, 0), (6, 0), (6, 6)]}),
        ("F\\D", {"r1c1.1": [(0, 0), (6, 0), (0, 6)], "r1c1.2": [(6, 0), (6, 6), (0, 6)]}),
        ("goose-up(F D)", {"r1c1.2": [(0, 0), (6, 0), (3, 6)]}),
        ("goose-down(F D)", {"r1c1.2": [(3, 0), (6, 6), (0, 6)]}),
        ("goose-left(F D)", {"r1c1.2": [(6, 0), (6, 6), (0, 3)]}),
        ("goose-right(F D)", {"r1c1.2": [(0, 0), (6, 3), (0, 6)]}),
        ("bars-across(F D)", {"r1c1.1": [(0, 3), (6, 3), (6, 6), (0, 6)]}),
        ("bars-upright(F D)", {"r1c1.1": [(0, 0), (3, 0), (3, 6), (0, 6)]}),
        ("quarters(F D F D)", {"r1c1.1": [(3, 3), (6, 6), (0, 6)], "r1c1.2": [(6, 0), (6, 6), (3, 3)]}),
        ("pie-sw(F D 1/2)", {"r1c1.1": [(0, 0), (3, 0), (0, 3)]}),
        ("pie-ne(F D 1/2)", {"r1c1.1": [(6, 3), (6, 6), (3, 6)]}),
    ],
)
def test_a_cell_is_drawn_as_it_is_described(cell: str, corners: dict[str, list[tuple[float, float]]]) -> None:
    block = block_of(HEADING + f"rows\n  {cell}\nend\n")
    assert covered(block) == pytest.approx(1)
    for patch_id, places in corners.items():
        assert inches(block, patch_id) == places


def test_a_pie_is_a_quarter_circle() -> None:
    block = block_of(HEADING + "rows\n  pie-se(F D)\nend\n")
    assert block.patches[0].outline.area() / TICKS_PER_INCH**2 == pytest.approx(math.pi * 4**2 / 4)
    assert block.patches[0].fabric == "fog"


def test_rows_fill_a_slanted_field() -> None:
    text = "point p from sw by 2 toward 0 deg\npoint q from sw by 2 toward 60 deg\nrows as ray in sw p q\n  F D\n  D F\nend\n"
    block = block_of(HEADING + text)
    high = math.sqrt(3)
    lower, upper = (
        [(0, 0), (1, 0), (1.5, high / 2), (0.5, high / 2)],
        [(1.5, high / 2), (2.5, high / 2), (3, high), (2, high)],
    )
    for name, corners in (("ray.r2c1", lower), ("ray.r1c2", upper)):
        assert sum(inches(block, name), ()) == pytest.approx(sum(corners, ()), abs=1e-5)


def test_a_group_numbers_what_it_names() -> None:
    text = (
        "turn 2 about centre\n  turn 2 about sw\n    point m at 1, 0\n    patch p of fog at 1, 0 size 1\n  end\nend\n"
    )
    block = block_of(HEADING + text)
    assert [patch.id for patch in block.patches] == ["p.1.1", "p.1.2", "p.2.1", "p.2.2"]
    assert {patch.name for patch in block.patches} == {"p"}
    places = {point.name: (point.at.x / TICKS_PER_INCH, point.at.y / TICKS_PER_INCH) for point in block.points}
    assert places == {"m.1.1": (1, 0), "m.1.2": (-1, 0), "m.2.1": (5, 6), "m.2.2": (7, 6)}


def test_a_group_may_go_on_by_an_angle() -> None:
    block = block_of(HEADING + "turn 3 about sw by 30 deg\n  point m at 2, 0\n  patch p of fog at 2, 0 size 1/2\nend\n")
    last = block.points[-1]
    assert last.name == "m.3"
    assert (last.at.x / TICKS_PER_INCH, last.at.y / TICKS_PER_INCH) == pytest.approx((1, math.sqrt(3)), abs=1e-5)


def test_a_mirror_keeps_the_first_and_adds_its_image() -> None:
    block = block_of(HEADING + "mirror across s n\n  patch p of fog at 0, 0 size 1 by 2\nend\n")
    assert inches(block, "p.1") == [(0, 0), (1, 0), (1, 2), (0, 2)]
    assert inches(block, "p.2") == [(5, 0), (6, 0), (6, 2), (5, 2)]
    assert all(patch.outline.area() > 0 for patch in block.patches)


def test_a_mirror_turns_arcs_and_spins_round() -> None:
    text = (
        "point o at 0, 0\npoint p at 2, 0\npoint q at 0, 2\nmirror across s n\n"
        "  patch pie of fog through o p arc counterclockwise about o to q\n  spin p clockwise\nend\n"
    )
    block = block_of(HEADING + text)
    assert [patch.outline.area() / TICKS_PER_INCH**2 for patch in block.patches] == pytest.approx([math.pi, math.pi])
    assert [wish.sense for wish in block.wishes if isinstance(wish, SpinWish)] == [
        SpinSense.CLOCKWISE, SpinSense.COUNTERCLOCKWISE
    ]  # fmt: skip


def test_an_arc_via_a_point_runs_through_it() -> None:
    text = "point p at 2, 0\npoint q from sw by 2 toward 30 deg\npoint r at 0, 2\npatch pie of fog through sw p arc via q to r\n"
    arc = block_of(HEADING + text).patches[0].outline.edges[1].arc
    assert arc is not None
    assert arc.centre == pytest.approx((0, 0), abs=4)
    assert not arc.clockwise


def test_stripes_keep_their_edge() -> None:
    text = CORNERS + "turn 2 about centre\n  patch p striped fog deep along b a through a b c\nend\n"
    first, second = block_of(HEADING + text).patches
    assert first.stripes is not None and second.stripes is not None
    assert first.stripes.fabrics == ("fog", "deep") == second.stripes.fabrics
    edge = 6 * TICKS_PER_INCH
    assert (first.stripes.start, first.stripes.end) == (Point(edge, 0), Point(0, 0))
    assert (second.stripes.start, second.stripes.end) == (Point(0, edge), Point(edge, edge))


def test_paper_is_cut_line_after_line() -> None:
    text = (
        "point t at 1, 4\npoint u at 2, 1\npoint v at 5, 2\ncut block\n  along sw ne\n  from centre to se\n"
        "  piece p of fog at t\n  piece q of deep at u, v\nend\n"
    )
    block = block_of(HEADING + text)
    assert covered(block) == pytest.approx(1)
    assert inches(block, "p") == [(0, 0), (6, 6), (0, 6)]
    assert inches(block, "q.1") == [(0, 0), (6, 0), (3, 3)]
    assert inches(block, "q.2") == [(6, 0), (6, 6), (3, 3)]


def test_the_outline_of_the_patches_leaves_out_what_they_share() -> None:
    text = "patch p of fog at 1, 1 size 2 by 1\npatch q of deep at 1, 2 size 1\npatch r of fog at 2, 2 size 1\noutline of patches\n"
    block = block_of(HEADING + text)
    assert block.size == (2 * TICKS_PER_INCH, 2 * TICKS_PER_INCH)
    assert len(block.outline.edges) == 4
    assert inches(block, "p") == [(0, 0), (2, 0), (2, 1), (0, 1)]


def test_a_free_outline_begins_at_the_origin() -> None:
    text = "point p at 1, 1\npoint q at 4, 1\npoint r at 1, 5\npatch t of fog through p q r\noutline p q r\n"
    block = block_of(HEADING + text)
    assert block.size == (3 * TICKS_PER_INCH, 4 * TICKS_PER_INCH)
    assert inches(block, "t") == [(0, 0), (3, 0), (0, 4)]
    assert block.points[0].at == Point(0, 0)


PLACED = 'block "Wave"\nlanguage 1\nsize 4 in by 2 in\nby "Tam Reedcutter"\nfabric fog as F background light #ffffff\nfabric sea as S accent dark #001122\nrows\n  F S\nend\nsew in rows\npress r1c1 r1c2 toward r1c2\n'


def test_a_placed_fabric_keeps_its_print() -> None:
    printed = PLACED.replace("#001122", "#001122 directional")
    assert printed != PLACED
    block = block_of(HEADING + 'place "wave" as w at 0, 0 size 2 in\n', wave=printed)
    assert Print.ONE_WAY in {fabric.printed for fabric in block.fabrics}


def test_a_block_is_placed_by_its_lower_left_corner_after_turning() -> None:
    block = block_of(HEADING + 'place "wave" as w at 1, 2 size 2 in turn 90\n', wave=PLACED)
    assert inches(block, "w.r1c1") == [(1, 2), (2, 2), (2, 3), (1, 3)]
    assert inches(block, "w.r1c2") == [(1, 3), (2, 3), (2, 4), (1, 4)]
    assert [patch.group for patch in block.patches] == [("w",), ("w",)]


def test_a_mirrored_block_is_flipped() -> None:
    block = block_of(HEADING + 'place "wave" as w at 0, 0 mirrored\n', wave=PLACED)
    assert inches(block, "w.r1c1") == [(2, 0), (4, 0), (4, 2), (2, 2)]


def test_fabrics_of_a_placed_block_are_swapped_recoloured_or_kept() -> None:
    block = block_of(HEADING + 'place "wave" as w at 0, 0\nplace "wave" as v at 0, 2\n', wave=PLACED)
    assert [patch.fabric for patch in block.patches] == ["fog", "w.sea", "fog", "w.sea"]
    kept = block.fabric("w.sea")
    assert (kept.colour, kept.title, block.fabric("fog").colour) == ("#001122", "sea", "#e8eef2")
    swapped = block_of(HEADING + 'place "wave" as w at 0, 0 with sea = D\n', wave=PLACED)
    assert [patch.fabric for patch in swapped.patches] == ["fog", "deep"]


def test_a_placed_block_brings_its_credit_and_its_own_seams() -> None:
    block = block_of(HEADING + 'place "wave" as w at 0, 0\n', wave=PLACED)
    assert [credit.author for credit in block.credits] == ["", "Tam Reedcutter"]
    assert [type(wish) for wish in block.wishes] == [PressWish]
    wish = block.wishes[0]
    assert isinstance(wish, PressWish)
    assert (wish.patches, wish.toward) == (("w.r1c1", "w.r1c2"), "w.r1c2")


def test_a_block_fills_a_cell_and_may_be_turned() -> None:
    text = HEADING.replace("6 in", "4 in by 4 in") + 'rows 1 1 by 1\n  "wave" turn 270 F\nend\n'
    block = block_of(text, wave=PLACED)
    assert inches(block, "r1c1.r1c1") == [(0, 2), (2, 2), (2, 4), (0, 4)]
    upright = block_of(text.replace("270", "90"), wave=PLACED)
    assert inches(upright, "r1c1.r1c1") == [(0, 0), (2, 0), (2, 2), (0, 2)]
    assert block.patches[0].group == ("r1c1",)


def test_a_placed_block_in_a_group_is_numbered() -> None:
    block = block_of(HEADING + 'turn 2 about centre\n  place "wave" as w at 0, 0\nend\n', wave=PLACED)
    assert [patch.id for patch in block.patches] == ["w.1.r1c1", "w.1.r1c2", "w.2.r1c1", "w.2.r1c2"]
    assert [patch.group for patch in block.patches] == [("w.1",), ("w.1",), ("w.2",), ("w.2",)]


def test_wishes_name_patches_and_places() -> None:
    block = block_of(
        HEADING
        + GRID
        + "seam r1c1 r1c2 stops at centre\nset in r1c1 between r1c2 and r2c1\nsew first r1c1 r1c2 as top\n"
        "sew first top r2c1 as most\nsew in columns\npartial seam r1c1 r2c1\npress away from F\npress toward deep\n"
        "press r1c1 r1c2 toward r1c1\npress r2c1 r2c2 open\nspin centre not\n"
    )
    middle = Point(3 * TICKS_PER_INCH, 3 * TICKS_PER_INCH)
    bare = [type(wish)(**{key: getattr(wish, key) for key in wish.__slots__ if key != "span"}, span=None) for wish in block.wishes]  # type: ignore[arg-type]  # fmt: skip
    assert bare == [
        StopWish(("r1c1", "r1c2"), middle, None),  # type: ignore[arg-type]
        SetInWish("r1c1", ("r1c2", "r2c1"), None),  # type: ignore[arg-type]
        FirstWish("top", ("r1c1", "r1c2"), None),  # type: ignore[arg-type]
        FirstWish("most", ("r1c1", "r1c2", "r2c1"), None),  # type: ignore[arg-type]
        RowsWish(True, None),  # type: ignore[arg-type]
        PartialWish(("r1c1", "r2c1"), None),  # type: ignore[arg-type]
        PressFabricWish("fog", True, None),  # type: ignore[arg-type]
        PressFabricWish("deep", False, None),  # type: ignore[arg-type]
        PressWish(("r1c1", "r1c2"), "r1c1", None),  # type: ignore[arg-type]
        PressWish(("r2c1", "r2c2"), None, None),  # type: ignore[arg-type]
        SpinWish(middle, SpinSense.NONE, None),  # type: ignore[arg-type]
    ]


def test_a_size_asked_for_draws_everything_larger_but_the_allowance() -> None:
    text = HEADING + "patch p of fog at 1, 0 size 2 by 3 in\npoint m at 1, 1\n"
    block = block_of(text, Overrides(size="9 in"))
    assert inches(block, "p") == [(1.5, 0), (4.5, 0), (4.5, 4.5), (1.5, 4.5)]
    assert block.size == (9 * TICKS_PER_INCH, 9 * TICKS_PER_INCH)
    assert block.seam_allowance == TICKS_PER_INCH // 4


@pytest.mark.parametrize(("asked", "width"), [("6 1/2 in", 6.5), ("15cm", 15 / 2.54), ("8", 8), ("2 * 4 in", 8)])
def test_a_size_is_read_as_people_write_it(asked: str, width: float) -> None:
    block = block_of(HEADING + GRID, Overrides(size=asked))
    assert block.size[0] / TICKS_PER_INCH == pytest.approx(width, abs=1e-5)


def test_a_bare_size_is_in_the_unit_asked_for() -> None:
    block = block_of(HEADING + GRID, Overrides(size="10", unit=LengthUnit.CENTIMETRE))
    assert block.unit is LengthUnit.CENTIMETRE
    assert block.size[0] / TICKS_PER_INCH == pytest.approx(10 / 2.54, abs=1e-5)


def test_fabrics_are_recoloured_by_name_or_by_role() -> None:
    block = block_of(HEADING + GRID, Overrides(fabrics=(("D", "#abc"), ("background", "112233"))))
    assert [fabric.colour for fabric in block.fabrics] == ["#112233", "#aabbcc"]


@pytest.mark.parametrize(
    "size", ["", "x", "0", "-3 in", "45 deg", "6 in\nlet b = 2", "10**400", "1" + "0" * 400, "1/0"]
)
def test_a_size_that_is_none_is_refused(size: str) -> None:
    from tests.language.reading_blocks import diagnose

    assert [found.code for found in diagnose(HEADING + GRID, Overrides(size=size))] == ["option-size"]


def test_a_colour_or_a_fabric_that_is_none_is_refused() -> None:
    from tests.language.reading_blocks import diagnose

    asked = Overrides(fabrics=(("fog", "blue"), ("sky", "#112233")))
    assert [found.code for found in diagnose(HEADING + GRID, asked)] == ["option-colour", "option-fabric"]


def test_words_of_the_language_may_be_names_where_only_a_name_can_stand() -> None:
    text = HEADING.replace("fog", "light").replace("deep", "open")
    text += "rows as first\n  light open\n  open light\nend\npoint turn at centre\nspin turn clockwise\n"
    assert codes(text) == []


def test_a_group_that_failed_does_not_lead_to_more_messages() -> None:
    text = (
        HEADING
        + "turn 4 about centre\n  point m at z, 0\n  patch p of fog at 0, 0 size 1\nend\nspin m.1 clockwise\npress p.1 p.2 open\n"
    )
    assert codes(text) == ["unknown-value"]
