"""docs/cookbook.md: every step, slip, answer, number and picture is what the program makes of it."""

import json
import os
import re
from collections.abc import Callable
from functools import cache
from pathlib import Path

import pytest
from blocklang_diagram import blocklang_outputs

from blocklang.cli.choices import overrides_from
from blocklang.cli.walking import Walk
from blocklang.diagnostics import SourceText
from blocklang.geometry import TICKS_PER_INCH
from blocklang.graph.counting import count_seams
from blocklang.hooks import OutputOptions
from blocklang.language import format_text
from blocklang.plan import SewingPlan
from blocklang.plan_json import plan_to_json
from tests.cli.conftest import command  # noqa: F401  the fixture that runs a command line
from tests.cookbook.page import DOCS, KINDS, TEXT, Draft, Shown, drafts, fences
from tests.support.answers import holds
from tests.support.replay import replay

DRAFTS = drafts()
SHOWN = [(draft, shown) for draft in DRAFTS for shown in draft.shown]
RENEW = bool(os.environ.get("BLOCKLANG_RENEW"))
UNFINISHED = {"no-patches", "gap", "unused-fabric"}
every_draft = pytest.mark.parametrize("draft", DRAFTS, ids=lambda draft: draft.name)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with every finished file of the page."""
    monkeypatch.chdir(tmp_path)
    for draft in DRAFTS:
        (tmp_path / draft.name).write_text(draft.final, encoding="utf-8")
    return tmp_path


@pytest.fixture(scope="module")
def plan_of(tmp_path_factory: pytest.TempPathFactory) -> Callable[[Draft], SewingPlan]:
    """Plan a finished file of the page, once for all tests."""
    files = tmp_path_factory.mktemp("cookbook")
    for draft in DRAFTS:
        (files / draft.name).write_text(draft.final, encoding="utf-8")
    return cache(lambda draft: planned(files / draft.name))


def planned(path: Path) -> SewingPlan:
    made = Walk().plan(str(path), overrides_from(None, ()), 1)
    assert made.diagnostics == ()
    assert made.plan is not None
    return made.plan


def test_there_are_ten_drafts_and_nothing_on_the_page_is_left_unread() -> None:
    assert len(DRAFTS) == 10
    assert {kind for kind, _ in fences()} == set(KINDS)
    answers = sum(body.count("\n$ ") + body.startswith("$ ") for kind, body in fences() if kind == "console")
    assert len(SHOWN) == answers
    assert sum(len(draft.growing) for draft in DRAFTS) == sum(kind == "step" for kind, _ in fences())
    assert TEXT.count("slip.**") == sum(shown.wrong for _, shown in SHOWN) >= len(DRAFTS)


@every_draft
def test_the_steps_lead_to_the_file(folder: Path, draft: Draft) -> None:
    """What is not drawn yet is the only fault on the way."""
    for text in draft.growing:
        (folder / draft.name).write_text(text, encoding="utf-8")
        found = Walk().check(draft.name, overrides_from(None, ())).diagnostics
        assert {one.code for one in found} <= UNFINISHED, [one.found for one in found]
    assert draft.growing[-1].split() == draft.final.split()


@every_draft
def test_the_file_is_tidy_and_can_be_sewn(plan_of, draft: Draft) -> None:
    assert format_text(SourceText(draft.name, draft.final)) == (draft.final, ())
    replay(json.loads(plan_to_json(plan_of(draft))))


@pytest.mark.parametrize(("draft", "shown"), SHOWN, ids=[f"{d.name}: {s.command[:40]}" for d, s in SHOWN])
def test_every_command_answers_as_the_page_shows(folder: Path, command, draft: Draft, shown: Shown) -> None:  # noqa: F811
    (folder / draft.name).write_text(shown.file, encoding="utf-8")
    program, *arguments = shown.command.split()
    ran = command(*arguments)
    assert program == "blocklang" and draft.name in arguments
    assert ran.code == (1 if shown.wrong else 0)
    assert holds(ran.out + ran.err, shown.said), ran.out + ran.err


def test_an_answer_that_differs_is_noticed() -> None:
    assert holds("a\nb\nc\n", "a\n...\nc\n") and holds("a\nb\nc\n", "...\nb\n...\n") and holds("a\n", "a\n")
    assert not holds("a\nb\nc\n", "a\n...\nd\n") and not holds("a\nb\n", "a\n") and not holds("a\n", "...\nb\n...\n")


@every_draft
def test_the_table_counts_each_block_as_its_plan_does(plan_of, draft: Draft) -> None:
    plan = plan_of(draft)
    counts = (len(plan.block.patches), count_seams(plan.graph), len(plan.steps), plan.assembly.pivots.count)
    anchor = draft.title.lower().replace(" ", "-")
    (row,) = (line for line in TEXT.splitlines() if line.startswith(f"| [{draft.title}](#{anchor}) |"))
    assert row.split(" | ")[2:] == [finished_size(plan), *map(str, counts[:3]), f"{counts[3]} |"]


def finished_size(plan: SewingPlan) -> str:
    corners = [edge.start for edge in plan.block.outline.edges]
    across, up = ([getattr(corner, way) / TICKS_PER_INCH for corner in corners] for way in "xy")
    return f"{round(max(across) - min(across), 3):g} in × {round(max(up) - min(up), 3):g} in"


def test_a_sky_of_one_piece_on_each_side_is_set_in_as_the_page_says(folder: Path) -> None:
    (draft,) = (one for one in DRAFTS if one.title == "Lighthouse")
    three = re.compile(r"(  patch \w+ of fog .*\n){3}")
    assert len(three.findall(draft.final)) == 1
    (folder / draft.name).write_text(
        three.sub("  patch sky of fog through a b c f n nw\n", draft.final).replace("  point d at 0, 8\n", ""),
        encoding="utf-8",
    )
    assert f"there would be {planned(folder / draft.name).assembly.pivots.count} set-in corners" in " ".join(
        TEXT.split()
    )


def test_the_table_lists_the_drafts_in_their_order() -> None:
    assert re.findall(r"^\| \[([^\]]+)\]", TEXT, re.MULTILINE) == [draft.title for draft in DRAFTS]


@every_draft
def test_the_pictures_are_those_that_the_file_makes(plan_of, draft: Draft) -> None:
    name = draft.name.removesuffix(".block")
    plain, apart = DOCS / draft.picture, DOCS / draft.apart
    assert (plain.name, apart.name) == (f"{name}.svg", f"{name}-apart.svg")
    is_kept(plain, drawn(plan_of(draft)))
    numbers = [int(number) for number in re.findall(r"\d+", draft.before.partition(":")[0])]
    undone = numbers[-1] - numbers[0] + 1
    picture = drawn(plan_of(draft), ("view", "laid-apart"), ("steps", str(undone)))
    is_kept(apart, picture)
    assert f"{draft.before}." in picture.decode()


def drawn(plan: SewingPlan, *settings: tuple[str, str]) -> bytes:
    (output,) = blocklang_outputs()
    (file,) = output.make(plan, OutputOptions("svg", settings=settings))
    return file.data


def is_kept(path: Path, picture: bytes) -> None:
    if RENEW:
        path.parent.mkdir(exist_ok=True)
        path.write_bytes(picture)
    assert path.read_bytes() == picture


def test_no_picture_is_left_without_its_file() -> None:
    kept = sorted(f"cookbook/{path.name}" for path in (DOCS / "cookbook").iterdir())
    assert kept == sorted(name for draft in DRAFTS for name in (draft.picture, draft.apart))
