"""docs/plugins.md tells every hook and every field as it is, every hook has a test, and nothing told is made up."""

import dataclasses
import inspect
import re
from pathlib import Path

import pytest

from blocklang import hooks, route
from blocklang.cli.choices import overrides_from
from blocklang.cli.walking import Walk
from blocklang.cutting import Claim, CuttingMethod, Template, templates_of
from blocklang.diagnostics import Diagnostic
from blocklang.geometry import Edge
from blocklang.language import Cell, CellArc, CellPatch
from blocklang.pressing import PressingPreference
from blocklang.testing import Workbench

ROOT = Path(__file__).resolve().parents[2]
TEXT = (ROOT / "docs" / "plugins.md").read_text(encoding="utf-8")
PROSE = re.sub(r"^```.*?^```", "", TEXT, flags=re.DOTALL | re.MULTILINE)
HOOKS = [name for name, _ in inspect.getmembers(hooks, inspect.isfunction) if name.startswith("blocklang_")]

#: Which values each hook's section tells, field by field.
TOLD = {
    "blocklang_outputs": (
        hooks.Output, hooks.OutputFile, hooks.OutputOptions, hooks.Setting, hooks.FolderMaker, hooks.Share,
        hooks.BlockAtHand,
    ),
    "blocklang_checks": (hooks.Check, Diagnostic),
    "blocklang_cutting_methods": (CuttingMethod, Claim),
    "blocklang_pressing_preferences": (PressingPreference,),
    "blocklang_cells": (Cell, CellPatch, CellArc),
    "blocklang_library_folders": (),
}  # fmt: skip
#: Values that have a table of their own: it must have the fields in their order and no others.
TABLES = (hooks.Output, hooks.OutputOptions, CuttingMethod, Claim, Cell)
UNTOLD = {"related"}  # a second place in the file, which only the stages use


def section(title: str) -> str:
    """Return a section of the page without its code, up to the next heading of its rank or a higher one."""
    rank = next(line for line in PROSE.splitlines() if re.fullmatch(rf"#+ {re.escape(title)}", line)).partition(" ")[0]
    after = PROSE.partition(f"\n{rank} {title}\n")[2]
    return re.split(rf"^#{{1,{len(rank)}}} ", after, flags=re.MULTILINE)[0]


def fields_of(kind: type) -> tuple[str, ...]:
    """Return the names of a value's fields; of a protocol what it asks for."""
    if dataclasses.is_dataclass(kind):
        return tuple(field.name for field in dataclasses.fields(kind))
    if hasattr(kind, "_fields"):
        return tuple(kind._fields)
    return tuple(name for name in vars(kind) if not name.startswith("_"))


def tables(text: str) -> list[tuple[str, ...]]:
    """Return the first column of every table about fields."""
    found = re.findall(r"^\| field \| what it is \|\n\| --- \| --- \|\n((?:\|.*\n)+)", text, re.MULTILINE)
    return [tuple(re.findall(r"^\| `(\w+)` \|", table, re.MULTILINE)) for table in found]


@pytest.mark.parametrize("name", HOOKS)
def test_hook_is_told_with_its_signature(name) -> None:
    signature = str(inspect.signature(getattr(hooks, name)))
    plain = re.sub(r"['\"]|collections\.abc\.|blocklang\.hooks\.|pathlib\.", "", signature)
    assert f"`def {name}{plain}`" in TEXT


def test_no_hook_is_told_that_is_not_there() -> None:
    assert set(re.findall(r"\bblocklang_[a-z_]+(?=\()", PROSE)) - {"blocklang_workbench"} == set(HOOKS)
    assert re.findall(r"^### (blocklang_\w+)$", PROSE, re.MULTILINE) == list(TOLD)
    assert set(TOLD) == set(HOOKS)


@pytest.mark.parametrize("name", HOOKS)
def test_hook_has_a_section_and_a_whole_example(name) -> None:
    whole = TEXT.partition(f"\n### {name}\n")[2].partition("\n### ")[0].partition("\n## ")[0]
    examples = re.findall(r"^```python\n(.*?)^```", whole, re.DOTALL | re.MULTILINE)
    assert any(f"\n@hookimpl\ndef {name}()" in example for example in examples)


@pytest.mark.parametrize(("hook", "kind"), [(hook, kind) for hook, kinds in TOLD.items() for kind in kinds])
def test_every_field_is_told(hook, kind) -> None:
    text = section(hook)
    assert f"`{kind.__name__}" in text
    told = {word for code in re.findall(r"`([^`]+)`", text) for word in re.findall(r"\w+", code)}
    assert set(fields_of(kind)) - UNTOLD - told == set()


def test_tables_have_the_fields_in_their_order_and_no_others() -> None:
    assert tables(PROSE) == [fields_of(kind) for kind in TABLES]


@pytest.mark.parametrize("name", HOOKS)
def test_hook_is_tested(name) -> None:
    tests = "".join(path.read_text(encoding="utf-8") for path in (ROOT / "tests" / "plugins").glob("*.py"))
    assert re.search(rf"def {name}\(|extensions\.{name.removeprefix('blocklang_')}\(", tests)


def test_picture_of_when_a_plugin_is_asked_names_every_hook_and_what_is_called() -> None:
    (picture,) = re.findall(r"^```text\n(.*?)^```", TEXT, re.DOTALL | re.MULTILINE)
    assert sorted(re.findall(r"\b(blocklang_\w+)\(\)", picture)) == sorted(HOOKS)
    kinds = {kind.__name__: kind for kinds in TOLD.values() for kind in kinds}
    called = re.findall(r"└ (\w+)\.(\w+)", picture)
    assert {kind for kind, _ in called} == {"Cell", "PressingPreference", "CuttingMethod", "Check", "Output"}
    assert all(field in fields_of(kinds[kind]) for kind, field in called)
    assert max(map(len, picture.splitlines())) <= 120


def test_names_told_of_a_plan_are_there() -> None:
    plan = Workbench().plan("ohio-star")
    step = plan.steps[-1]
    known = {"plan": plan, "step": step, "join": step.joins[0], "i": 0}
    rows = re.findall(r"^\| `((?:plan|step)\b[^`]*)` \| (.*) \|$", section("What a plan holds"), re.MULTILINE)
    assert len(rows) == 11
    for where, told in rows:
        value = eval(where, dict(known))
        value = value[0] if isinstance(value, tuple) and value else value
        parts = [part for name in dir(value) if not name.startswith("_") for part in parts_of(getattr(value, name))]
        for name in re.findall(r"`(\w+)`", told):
            assert hasattr(value, name) or any(hasattr(part, name) for part in parts), (where, name)


def parts_of(value: object) -> tuple[object, ...]:
    return value[:1] if isinstance(value, tuple) else ()


def test_names_told_of_edges_and_templates_are_there() -> None:
    text = section("What a plan holds")
    for name in re.findall(r"`edge\.(\w+)\(\)`", text):
        assert callable(getattr(Edge, name))
    plan = Workbench().plan("nine-patch")
    template = templates_of(plan.graph, plan.cutting)[0]
    assert isinstance(template, Template) and {"finished", "cut", "places"} <= set(fields_of(Template))
    assert template.places[0].motion.lay((0, 0)) == (0.0, 0.0)
    assert template.places[0].motion.mirrored is False


def test_methods_of_the_workbench_are_told_as_they_are() -> None:
    rows = re.findall(r"^\| `(\w+)\(([^)]*)\)` \|", section("Testing a plugin"), re.MULTILINE)
    told = {name: re.findall(r"\w+", arguments) for name, arguments in rows}
    public = {name for name, value in vars(Workbench).items() if inspect.isfunction(value) and not name.startswith("_")}
    assert public == set(told)
    for name, arguments in told.items():
        assert list(inspect.signature(getattr(Workbench, name)).parameters)[1:] == arguments


def test_public_modules_are_those_that_the_check_lets_through() -> None:
    checked = re.search(r"PUBLIC = \{(.*?)\}", (ROOT / ".ci" / "check_plugin_imports.py").read_text(), re.DOTALL)
    allowed = set(re.findall(r'"([\w.]+)"', checked[1])) - {"blocklang"}
    text = section("What you may import")
    told = set(re.findall(r"`(blocklang\.\w+)`", text))
    assert told == {".".join(name.split(".")[:2]) for name in allowed}
    deeper = {name.split(".")[2] for name in allowed if name.count(".") == 2}
    assert deeper <= set(re.findall(r"`(\w+)`", text))


def test_block_in_the_readme_is_right_and_tidy() -> None:
    from blocklang.diagnostics import SourceText
    from blocklang.language import format_text

    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    (text,) = re.findall(r"```\n(block .*?)```", readme, re.DOTALL)
    walk = Walk()
    source = SourceText("README.md", text)
    checked = route.check(route.draft(source, overrides_from(None, ()), walk.library, walk.plugged.cells))
    assert checked.diagnostics == ()
    assert format_text(source) == (text, ())
