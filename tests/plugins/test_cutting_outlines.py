"""The output `cutting-outlines`, read by ezdxf and by a few lines of our own, against the areas of the plan."""

import io
import math
import subprocess
import sys
from collections import Counter

import blocklang_cutting_outlines
import pytest

from blocklang.block import LengthUnit
from blocklang.cutting import templates_of
from blocklang.geometry import TICKS_PER_INCH
from blocklang.hooks import CannotMakeError, OutputOptions
from blocklang.testing import Workbench

ezdxf = pytest.importorskip("ezdxf")
from ezdxf.lldxf.encoding import decode_dxf_unicode  # noqa: E402 - it is known to be there now

(OUTPUT,) = blocklang_cutting_outlines.blocklang_outputs()
BLOCKS = ("nine-patch", "drunkards-path", "orange-peel", "eight-pointed-star", "mariners-compass", "hexagon-flower-7")
HANDED = ("mariners-compass", "kaleidoscope", "storm-at-sea", "attic-window")
SQUARE_INCH = TICKS_PER_INCH**2


@pytest.fixture(scope="module")
def bench() -> Workbench:
    return Workbench()


def made(plan, **settings: str) -> bytes:
    options = OutputOptions(
        "dxf", unit=plan.block.unit, copies=plan.cutting.options.copies, settings=tuple(settings.items())
    )
    (file,) = OUTPUT.make(plan, options)
    return file.data


def read(data: bytes):
    """Read a file and let ezdxf look for everything that is wrong with it."""
    document = ezdxf.read(io.StringIO(decode_dxf_unicode(data.decode("cp1252"))))
    audited = document.audit()
    assert (audited.errors, audited.fixes) == ([], [])
    return document


def rings(document, prefix: str) -> list:
    return [one for one in document.modelspace().query("LWPOLYLINE") if one.dxf.layer.startswith(prefix)]


def shape_of(ring):
    """Return the polygon of a closed line; its arcs as ezdxf takes them apart, in chords 1/100000 in from the curve."""
    from shapely.geometry import Polygon

    points: list[tuple[float, float]] = []
    for part in ring.virtual_entities():
        part_points = list(part.flattening(1e-5)) if part.dxftype() == "ARC" else [part.dxf.start, part.dxf.end]
        places = [(round(point.x, 9), round(point.y, 9)) for point in part_points]
        if points and math.dist(points[-1], places[0]) > math.dist(points[-1], places[-1]):
            places.reverse()  # an arc always goes counterclockwise
        if not points and math.dist(places[0], ring[0][:2]) > 1e-6:
            places.reverse()
        points += places
    shape = Polygon(dict.fromkeys(points))
    assert shape.is_valid and ring.closed
    return shape


def area_of(corners: list[tuple[float, float, float]]) -> float:
    """Return the area inside corners with bulges, arcs exact: a bulge b turns an arc through 4 atan b."""
    area = 0.0
    for (x0, y0, bulge), (x1, y1, _) in zip(corners, corners[1:] + corners[:1], strict=True):
        turn = 4 * math.atan(bulge)
        area += (x0 * y1 - x1 * y0) / 2
        if bulge:
            radius = math.dist((x0, y0), (x1, y1)) / 2 / math.sin(turn / 2)
            area += radius**2 * (turn - math.sin(turn)) / 2
    return abs(area)


def plainly_read(data: bytes) -> dict[str, list[float]]:
    """Read the areas of all closed lines by layer from the pairs of lines that a DXF file is made of."""
    lines = data.decode("cp1252").splitlines()
    pairs = list(zip((int(code) for code in lines[::2]), lines[1::2], strict=True))
    areas: dict[str, list[float]] = {}
    starts = [at for at, pair in enumerate(pairs) if pair == (0, "LWPOLYLINE")]
    for start in starts:
        own = pairs[start + 1 : next(at for at in range(start + 1, len(pairs)) if pairs[at][0] == 0)]
        layer = next(value for code, value in own if code == 8)
        corners: list[list[float]] = []
        for code, value in own:
            if code == 10:
                corners.append([float(value), 0.0, 0.0])
            elif code in (20, 42):
                corners[-1][1 if code == 20 else 2] = float(value)
        areas.setdefault(layer, []).append(area_of([tuple(corner) for corner in corners]))
    return areas


def test_plugin_is_sound(bench) -> None:
    bench.plugin(blocklang_cutting_outlines)


@pytest.mark.parametrize("block", ["orange-peel", "eight-pointed-star"])
def test_output_holds(bench, block) -> None:
    honours = ("copies", "unit", "lay", "fabric", "width")
    settings = {"fabric": ["fog", "sand"], "width": ["30", "x", "0"]}
    bench.output(OUTPUT, bench.plan(block), honours=honours, settings=settings)


@pytest.mark.parametrize("block", BLOCKS)
def test_areas_in_the_block_are_the_finished_and_the_cut_areas(bench, block) -> None:
    plan = bench.plan(block)
    document = read(made(plan, lay="block"))
    finished = [patch.outline.area() / SQUARE_INCH for patch in plan.block.patches]
    assert [shape_of(ring).area for ring in rings(document, "sew-")] == pytest.approx(finished, rel=2e-5)
    assert sum(finished) == pytest.approx(plan.block.outline.area() / SQUARE_INCH, rel=1e-5)
    cut = {place.patch: one.cut.area() for one in templates_of(plan.graph, plan.cutting) for place in one.places}
    expected = [cut[patch] / SQUARE_INCH for patch in range(len(finished))]
    assert [shape_of(ring).area for ring in rings(document, "cut-")] == pytest.approx(expected, rel=2e-5)


@pytest.mark.parametrize("block", BLOCKS)
def test_a_seam_allowance_lies_between_cutting_and_sewing_line(bench, block) -> None:
    document = read(made(bench.plan(block)))
    pairs = list(zip(rings(document, "cut-"), rings(document, "sew-"), strict=True))
    assert pairs
    for cut, sewn in pairs:
        outer, inner = shape_of(cut), shape_of(sewn)
        assert outer.contains(inner)
        assert outer.exterior.distance(inner) == pytest.approx(0.25, abs=2e-3)
        assert cut.dxf.layer.removeprefix("cut-") == sewn.dxf.layer.removeprefix("sew-")


@pytest.mark.parametrize("block", BLOCKS)
def test_no_two_pieces_lie_on_each_other_on_the_mat(bench, block) -> None:
    from shapely.strtree import STRtree

    document = read(made(bench.plan(block), width="24"))
    shapes = [shape_of(ring) for ring in rings(document, "cut-")]
    tree = STRtree(shapes)
    for number, shape in enumerate(shapes):
        assert all(other == number for other in tree.query(shape.buffer(0.2), predicate="intersects"))
        assert shape.bounds[2] <= 24 + 0.25 + 1e-6 or shape.bounds[0] == 0.25


def turns(corners) -> tuple:
    """Return what stays the same when a closed line is turned and moved, but not when it is turned over."""
    if area_signed(corners) < 0:  # travel every line counterclockwise
        ring = corners[::-1]
        corners = [(*ring[at][:2], -ring[(at + 1) % len(ring)][2]) for at in range(len(ring))]
    count, sides = len(corners), []
    for at in range(count):
        (x0, y0, bulge), (x1, y1, _), (x2, y2, _) = (corners[(at + step) % count] for step in range(3))
        turn = math.remainder(math.atan2(y2 - y1, x2 - x1) - math.atan2(y1 - y0, x1 - x0), math.tau)
        sides.append((round(math.dist((x0, y0), (x1, y1)), 2), round(turn, 2), round(bulge, 2)))
    return min(tuple(sides[at:] + sides[:at]) for at in range(count))


def area_signed(corners) -> float:
    following = corners[1:] + corners[:1]
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(corners, following, strict=True))


@pytest.mark.parametrize("block", HANDED)
def test_as_many_pieces_of_each_hand_are_on_the_mat_as_in_the_block(bench, block) -> None:
    plan = bench.plan(block)
    counts = [
        Counter(
            (ring.dxf.layer, turns(list(ring.get_points("xyb")))) for ring in rings(read(made(plan, lay=lay)), "sew-")
        )
        for lay in ("apart", "block")
    ]
    assert counts[0] == counts[1]


def test_there_is_a_block_whose_pieces_have_two_hands(bench) -> None:
    """Otherwise the test above would hold of anything."""
    reversed_ones = [sum(piece.reversed for piece in bench.plan(block).cutting.pieces) for block in HANDED]
    assert any(reversed_ones)


def test_arcs_are_arcs(bench) -> None:
    plan = bench.plan("drunkards-path")
    document = read(made(plan, lay="block"))
    curved = [seam for seam in plan.graph.seams if seam.edge.arc is not None]
    arcs = document.modelspace().query("ARC")
    assert len(arcs) == len(curved) == 16
    assert sum(math.radians(arc.dxf.end_angle - arc.dxf.start_angle) % math.tau * arc.dxf.radius for arc in arcs) == (
        pytest.approx(sum(seam.edge.length() for seam in curved) / TICKS_PER_INCH, rel=1e-6)
    )
    assert all(any(corner[2] for corner in ring.get_points("xyb")) for ring in rings(document, "sew-"))
    assert max(len(ring) for ring in rings(document, "cut-")) <= 8


@pytest.mark.parametrize("block", ["drunkards-path", "whirl", "eight-pointed-star"])
def test_seams_are_drawn_once_each(bench, block) -> None:
    plan = bench.plan(block)
    seams = read(made(plan, lay="block")).modelspace().query('*[layer=="seams"]')
    assert len(seams) == len(plan.graph.seams)
    straight = sum(one.dxf.start.distance(one.dxf.end) for one in seams.query("LINE"))
    expected = sum(seam.edge.length() for seam in plan.graph.seams if seam.edge.arc is None) / TICKS_PER_INCH
    assert straight == pytest.approx(expected, rel=1e-6)


@pytest.mark.parametrize("block", ["drunkards-path", "nine-patch"])
def test_read_without_a_library_the_areas_are_the_same(bench, block) -> None:
    plan = bench.plan(block)
    areas = plainly_read(made(plan, lay="block"))
    for fabric in plan.block.fabrics:
        finished = sorted(p.outline.area() / SQUARE_INCH for p in plan.block.patches if p.fabric == fabric.id)
        assert sorted(areas[f"sew-{fabric.id}"]) == pytest.approx(finished, rel=1e-6)
    assert plainly_read(made(plan)).keys() == areas.keys()


def test_units_are_said_and_used(bench) -> None:
    for unit, code, per_inch in (
        (LengthUnit.INCH, 1, 1),
        (LengthUnit.CENTIMETRE, 5, 2.54),
        (LengthUnit.MILLIMETRE, 4, 25.4),
    ):
        document = read(made(bench.plan("nine-patch", unit=unit, size="9in"), lay="block"))
        assert document.header["$INSUNITS"] == code
        assert document.header["$EXTMAX"][0] == pytest.approx(9.25 * per_inch)
        assert document.header["$EXTMIN"][0] == pytest.approx(-0.25 * per_inch)


def test_copies_are_all_there_and_striped_patches_have_a_layer_of_their_own(bench) -> None:
    plan = bench.plan("eight-pointed-star", copies=2)
    layers = Counter(ring.dxf.layer for ring in rings(read(made(plan)), "cut-"))
    assert layers == {"cut-strip-set": 16, "cut-fog": 16}


def test_one_fabric_can_be_chosen(bench) -> None:
    plan = bench.plan("nine-patch")
    for lay in ("apart", "block"):
        assert {ring.dxf.layer for ring in rings(read(made(plan, lay=lay, fabric="fog")), "cut-")} == {"cut-fog"}
    with pytest.raises(CannotMakeError, match="has no fabric `tweed`: it has fog, harbour"):
        made(plan, fabric="tweed")
    star = bench.plan("eight-pointed-star")
    with pytest.raises(CannotMakeError, match="in strip sets only"):
        made(star, fabric=star.block.patches[0].stripes.fabrics[0])


def test_more_pieces_than_a_program_opens_are_refused(bench) -> None:
    plan = bench.plan("nine-patch", copies=1000)
    with pytest.raises(CannotMakeError, match=r"at most 5,000 pieces, and this would have 9,000: ask for fewer copies"):
        made(plan)
    assert len(rings(read(made(bench.plan("nine-patch", copies=20), fabric="fog")), "cut-")) == 80
    made(plan, lay="block")


def test_names_lie_inside_their_pieces(bench) -> None:
    from shapely.geometry import Point

    document = read(made(bench.plan("drunkards-path")))
    inside = [shape_of(ring) for ring in rings(document, "sew-")]
    texts = document.modelspace().query("TEXT")
    assert len(texts) == len(inside)
    for text, shape in zip(texts, inside, strict=True):
        assert shape.contains(Point(*text.dxf.align_point.vec2))
        assert 0.03 < text.dxf.height <= 0.125


@pytest.mark.parametrize("width", ["", "x", "-3", "0.5", "1e9", "nan", "٣", "123456789"])
def test_width_that_cannot_be_used_is_refused(bench, width) -> None:
    with pytest.raises(CannotMakeError, match=r"^Write how wide the mat is in in, such as"):
        made(bench.plan("nine-patch"), width=width)


def test_names_in_any_script_come_through(bench, tmp_path) -> None:
    path = tmp_path / "own.block"
    fabrics = "fabric Möwe ground light #e8eef2\nfabric 潮 accent dark #1f3a5f\nfabric a𠮷 sea dark #1f3a5f\n"
    path.write_text(f'block "Own"\nlanguage 1\nsize 6 in by 2 in\n{fabrics}rows\n Möwe 潮 a𠮷\nend\n', encoding="utf-8")
    document = read(made(bench.plan(path)))
    assert {ring.dxf.layer for ring in rings(document, "cut-")} == {"cut-Möwe", "cut-潮", "cut-a_"}


def test_without_the_library_one_sentence_says_what_to_install(bench, monkeypatch) -> None:
    monkeypatch.setitem(sys.modules, "ezdxf", None)
    with pytest.raises(CannotMakeError, match="needs the package ezdxf"):
        made(bench.plan("nine-patch"))


def test_bytes_are_the_same_in_another_process(bench, tmp_path) -> None:
    command = [sys.executable, "-m", "blocklang", "make", "cutting-outlines", "nine-patch", "-o", "other.dxf"]
    subprocess.run(command, cwd=tmp_path, env={"PYTHONHASHSEED": "1", "HOME": str(tmp_path)}, check=True)
    assert (tmp_path / "other.dxf").read_bytes() == made(bench.plan("nine-patch"))


def test_settings_of_the_library_are_left_as_they_were(bench) -> None:
    made(bench.plan("nine-patch"))
    assert ezdxf.options.write_fixed_meta_data_for_testing is False
