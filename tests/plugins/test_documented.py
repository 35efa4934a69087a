"""docs/plugins.md tells every hook as it is, every hook has a test, and its example works."""

import inspect
import re
import tomllib
from pathlib import Path

import pytest

from blocklang import hooks, route
from blocklang.cli.choices import overrides_from
from blocklang.cli.walking import Walk
from blocklang.hooks import OutputOptions

ROOT = Path(__file__).resolve().parents[2]
TEXT = (ROOT / "docs" / "plugins.md").read_text(encoding="utf-8")
HOOKS = [name for name, _ in inspect.getmembers(hooks, inspect.isfunction) if name.startswith("blocklang_")]


@pytest.mark.parametrize("name", HOOKS)
def test_hook_is_told_with_its_signature(name) -> None:
    signature = str(inspect.signature(getattr(hooks, name)))
    plain = re.sub(r"['\"]|collections\.abc\.|blocklang\.hooks\.|pathlib\.", "", signature)
    assert f"`def {name}{plain}`" in TEXT


@pytest.mark.parametrize("name", HOOKS)
def test_hook_is_tested(name) -> None:
    tests = "".join(path.read_text(encoding="utf-8") for path in (ROOT / "tests" / "plugins").glob("*.py"))
    assert re.search(rf"def {name}\(|extensions\.{name.removeprefix('blocklang_')}\(", tests)


def test_example_counts_the_patches_of_each_fabric() -> None:
    code, entry = re.findall(r"```(?:python|toml)\n(.*?)```", TEXT, re.DOTALL)[:2]
    module: dict[str, object] = {}
    exec(compile(code, "docs/plugins.md", "exec"), module)
    (output,) = module["blocklang_outputs"]()  # type: ignore[operator]
    assert output.name in tomllib.loads(entry)["project"]["entry-points"]["blocklang"]
    walk = Walk()
    plan = walk.plan("nine-patch", overrides_from(None, ()), 2)
    assert not route.has_errors(plan.diagnostics)
    (file,) = output.make(plan.plan, OutputOptions("txt", copies=2))
    counts = dict(line.split(": ") for line in file.data.decode().splitlines())
    assert sum(map(int, counts.values())) == 2 * 9
    assert sorted(map(int, counts.values())) == [8, 10]


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
