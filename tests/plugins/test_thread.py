"""The output `thread`: against lengths worked out from the plan as JSON, and by hand."""

import csv
import io
import json
import math

import blocklang_thread
import pytest

from blocklang.hooks import CannotMakeError, OutputOptions
from blocklang.plan_json import plan_to_json
from blocklang.testing import Workbench

(OUTPUT,) = blocklang_thread.blocklang_outputs()
BLOCKS = ("nine-patch", "eight-pointed-star", "drunkards-path", "whirl", "hexagon-flower-7", "log-cabin")


@pytest.fixture(scope="module")
def bench() -> Workbench:
    return Workbench()


def told(plan, **more) -> dict:
    options = OutputOptions("json", unit=plan.block.unit, copies=plan.cutting.options.copies, **more)
    return json.loads(OUTPUT.make(plan, options)[0].data)


def test_plugin_is_sound(bench) -> None:
    bench.plugin(blocklang_thread)


@pytest.mark.parametrize("block", BLOCKS)
def test_output_holds(bench, block) -> None:
    settings = {"stitch-length": ["2.5", "2.5 mm"], "thread-factor": ["2.5"]}
    honours = ("copies", "unit", "language", "stitch-length", "thread-factor")
    bench.output(OUTPUT, bench.plan(block), honours=honours, settings=settings)


@pytest.mark.parametrize("block", BLOCKS)
def test_what_is_sewn_is_the_seams_of_the_plan_and_their_ends(bench, block) -> None:
    plan = bench.plan(block)
    shown = json.loads(plan_to_json(plan))
    for step, found in zip(shown["steps"], told(plan)["steps"], strict=True):
        lengths = [
            sum(map(math.dist, join["path"], join["path"][1:]))
            + shown["seam_allowance"] * [join["start"], join["end"]].count("raw-edge")
            for join in step["joins"]
        ]
        assert found["seams"] == len(lengths)
        # Arcs are chords in the JSON, 0.001 in from the curve; round 1 in and more they are at most 1/3000 too short.
        assert -0.001 <= found["sewn"] - sum(lengths) <= sum(lengths) / 3000 + 0.001
        assert abs(found["stitches"] - sum(lengths) * 12.7) <= len(lengths) + 1


def test_nine_patch_by_hand(bench) -> None:
    """Rows of 9 in: four and two seams of 3 1/2 in, then two of 9 1/2 in; 12.7 stitches to the inch."""
    found = told(bench.plan("nine-patch"))
    assert [(step["seams"], step["sewn"]) for step in found["steps"]] == [(4, 14.0), (2, 7.0), (2, 19.0)]
    assert found["total"]["stitches"] == 6 * 45 + 2 * 121  # 3.5 * 12.7 = 44.45, 9.5 * 12.7 = 120.65
    chained, rest = 3 * (14 + 0.5 * 3) + 12, 3 * (7 + 19) + 12 * 4
    assert found["total"]["thread"] == pytest.approx(chained + rest)


def test_copies_lengthen_the_chain_and_not_its_ends(bench) -> None:
    one, many = (told(bench.plan("nine-patch", copies=copies))["steps"][0] for copies in (1, 10))
    assert (many["seams"], many["sewn"], many["stitches"]) == (40, 140.0, 10 * one["stitches"])
    assert many["thread"] == pytest.approx(3 * (140 + 0.5 * 39) + 12)


def test_settings_are_used(bench) -> None:
    plan = bench.plan("nine-patch")
    usual = told(plan)["total"]
    longer = told(plan, settings=(("stitch-length", "4"),))["total"]
    assert longer["stitches"] == 6 * 23 + 2 * 61  # 6.35 to the inch: 22.2 and 60.3
    assert longer["thread"] == usual["thread"]
    thicker = told(plan, settings=(("thread-factor", "4"),))["total"]
    assert thicker["thread"] - usual["thread"] == pytest.approx(40 + 0.5 * 3)


@pytest.mark.parametrize("setting", ["stitch-length", "thread-factor"])
@pytest.mark.parametrize("text", ["", "x", "0", "-2", "1e3", "nan", "inf", "٣", "2,5", "2..", "999", "0.00000001"])
def test_setting_that_cannot_be_used_is_refused(bench, setting, text) -> None:
    with pytest.raises(CannotMakeError, match=rf"^Write a number from .* --set {setting}="):
        told(bench.plan("nine-patch"), settings=((setting, text),))


def test_table_has_the_numbers_of_the_json(bench) -> None:
    plan = bench.plan("eight-pointed-star")
    data = OUTPUT.make(plan, OutputOptions("csv"))[0].data.decode()
    head, *rows = csv.reader(io.StringIO(data, newline=""))
    assert head == ["step", "title", "seams", "sewn, in", "stitches", "thread, in"]
    for row, step in zip(rows, told(plan)["steps"], strict=True):
        assert [row[0], row[1], row[2], row[4]] == [str(step[key]) for key in ("number", "title", "seams", "stitches")]
        assert float(row[3]) == pytest.approx(step["sewn"], abs=0.006)
        assert float(row[5]) == pytest.approx(step["thread"], abs=0.006)


def test_text_says_that_it_is_an_estimate(bench) -> None:
    text = OUTPUT.make(bench.plan("nine-patch"), OutputOptions("text"))[0].data.decode()
    assert text.startswith("Thread for 1 block of Nine Patch: an estimate\n")
    assert "In all: 8 seams, 40 in sewn: 512 stitches, about 5.2 yd of thread.\n" in text
    assert "common practice" in text
    assert max(map(len, text.splitlines())) <= 120


def test_several_in_another_unit(bench) -> None:
    from blocklang.block import LengthUnit

    plan = bench.plan("nine-patch", copies=2, unit=LengthUnit.CENTIMETRE)
    text = OUTPUT.make(plan, OutputOptions("text", unit=LengthUnit.CENTIMETRE, copies=2))[0].data.decode()
    assert text.startswith("Thread for 2 blocks of Nine Patch: an estimate\n")
    assert " cm sewn" in text and " m of thread" in text and " in sewn" not in text
