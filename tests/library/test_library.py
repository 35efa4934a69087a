"""The library's blocks: replayed from outside, locked, and sewn in the order that the trade teaches."""

import json
import os
import re
from pathlib import Path
from xml.etree import ElementTree

import jsonschema
import pytest
from blocklang_cutting_list import blocklang_outputs as cutting_outputs
from blocklang_diagram import blocklang_outputs as diagram_outputs
from blocklang_sewing_sheet import blocklang_outputs as sheet_outputs
from blocklang_sewing_sheet.as_text import WIDTH

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from tests.library.plans import BLOCKS, NAMES, json_of, plan_of
from tests.library.telling import told
from tests.support.replay import replay

TOLD = Path(__file__).with_name("told")
SCHEMA = jsonschema.Draft202012Validator(
    json.loads((Path(__file__).parents[2] / "docs" / "plan.schema.json").read_text())
)


def test_the_museum_star_has_648_diamonds() -> None:
    """Smithsonian NMAH, "Rising Sun" quilt, 1825-1835."""
    diamonds = [patch for patch in plan_of("large-star").block.patches if patch.fabric != "fog"]
    assert len(diamonds) == 648 == 8 * 9**2


@pytest.mark.parametrize("name", NAMES)
def test_a_library_block_is_sewn_drawn_and_cut(name: str) -> None:
    """All in one test, so that every block is planned once."""
    plan = json_of(name)
    SCHEMA.validate(plan)
    replay(plan)
    _is_drawn(plan_of(name))
    _is_cut(plan_of(name))
    _has_its_sheet(plan_of(name))
    _is_as_it_was(name)


def _is_drawn(plan: SewingPlan) -> None:
    (output,) = diagram_outputs()
    (file,) = output.make(plan, OutputOptions("svg"))
    text = file.data.decode()
    assert ElementTree.fromstring(text).tag.endswith("svg")
    assert all(fabric.colour in text for fabric in plan.block.fabrics)


def _is_cut(plan: SewingPlan) -> None:
    (output,) = cutting_outputs()
    (file,) = output.make(plan, OutputOptions("text"))
    text = file.data.decode().lower()
    assert all((fabric.title or fabric.id).lower() in text for fabric in plan.block.fabrics)


def _has_its_sheet(plan: SewingPlan) -> None:
    (output,) = sheet_outputs()
    (file,) = output.make(plan, OutputOptions("text"))
    text = file.data.decode()
    assert [int(number) for number in re.findall(r"^(\d+)\. ", text, re.MULTILINE)] == [
        one.number for one in plan.steps
    ]
    assert all((fabric.title or fabric.id) in text for fabric in plan.block.fabrics)
    assert max(map(len, text.splitlines())) <= WIDTH


def _is_as_it_was(name: str) -> None:
    """Hold picture, steps, pressing and cutting against what is kept; `BLOCKLANG_RENEW=1` keeps what is there now."""
    kept, now = TOLD / f"{name}.txt", told(plan_of(name), json_of(name))
    if os.environ.get("BLOCKLANG_RENEW"):
        kept.parent.mkdir(exist_ok=True)
        kept.write_text(now, encoding="utf-8")
    assert now == kept.read_text(encoding="utf-8")


def test_nothing_is_kept_of_blocks_that_are_gone() -> None:
    assert sorted(path.stem for path in TOLD.glob("*.txt")) == sorted(NAMES)


LOCKING = ("four-patch", "nine-patch", "pinwheel", "shoo-fly", "churn-dash", "eight-pointed-star")


@pytest.mark.parametrize("name", LOCKING)
def test_everything_locks(name: str) -> None:
    pressing = json_of(name)["pressing"]
    assert pressing["lockable"] == pressing["locked"] > 0
    assert pressing["proven"]


def test_the_star_s_centre_is_spun_as_the_file_says() -> None:
    centre = [junction for junction in json_of("eight-pointed-star")["junctions"] if junction["at"] == [6, 6]]
    assert [junction["spin"] for junction in centre] == ["clockwise"]


def test_the_log_cabin_is_sewn_round_by_round() -> None:
    """One strip a step from the middle outward: common practice."""
    plan = plan_of("log-cabin")
    sizes = [len(plan.unit(step.makes[0]).patches) for step in plan.steps]
    assert sizes == list(range(2, 18))


def test_the_bears_paw_is_sewn_in_paws_then_rows() -> None:
    plan = plan_of("bears-paw")
    last = plan.steps[-1]
    assert last.times == 1 and len(last.joins) == 2
    assert any(step.times == 4 and len(plan.unit(step.makes[0]).patches) == 10 for step in plan.steps)


def test_each_placed_block_is_finished_before_the_next_is_begun() -> None:
    plan = plan_of("harbour-sampler")
    groups = [{plan.block.patches[p].group[:1] for p in plan.unit(step.makes[0]).patches} for step in plan.steps]
    alone = [next(iter(group)) for group in groups if len(group) == 1]
    blocks = [name for place, name in enumerate(alone) if place == 0 or alone[place - 1] != name]
    assert len(blocks) == len(set(blocks)) == 4
    assert all(len(group) > 1 for group in groups[len(alone) :])


@pytest.mark.parametrize("path", sorted(BLOCKS.glob("*/*.block")), ids=lambda path: path.stem)
def test_library_files_are_laid_out_by_the_formatter(path: Path) -> None:
    from blocklang.language import format_text, read_source

    source = read_source(path)
    assert not isinstance(source, tuple)
    text, faults = format_text(source)
    assert (text, faults) == (path.read_text(encoding="utf-8"), ())


def test_the_star_in_the_library_is_cut_and_sewn_as_it_is_taught() -> None:
    """Strips of 1 3/8 in to sets trimmed to 3, cut at 45 degrees 3 in apart; own geometry, rounded up to eighths."""
    plan = plan_of("eight-pointed-star")
    assert [(str(step.kind), step.times) for step in plan.steps] == [
        ("straight", 4),
        ("set-in", 4),
        ("straight", 2),
        ("straight", 1),
        ("set-in", 1),
    ]
    made = plan.cutting.strip_sets[0]
    assert [float(m.shown) for m in (made.strip, made.sewn, made.trimmed, made.sub_cut)] == [1.375, 3.125, 3.0, 3.0]
    assert (made.angle, made.holds) == (45, 8)
    cuts = {piece.name: (float(piece.cut[0].shown), piece.shapes, piece.yields) for piece in plan.cutting.pieces}
    assert cuts["corner"] == (4.125, 4, 1)
    assert cuts["side"] == (6.25, 1, 4)
