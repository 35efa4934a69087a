"""The files of a new plugin; NAME and PACKAGE stand for what it is called."""

PROJECT = """\
[build-system]
requires = ["hatchling"]
build-backend = "hatchling.build"

[project]
name = "NAME"
version = "0.1.0"
description = "Adds the output NAME to blocklang."
readme = "README.md"
requires-python = ">=3.11"
dependencies = ["blocklang"]

[project.optional-dependencies]
test = ["pytest>=8.2"]

# This is how blocklang finds the plugin.
[project.entry-points.blocklang]
NAME = "PACKAGE"

[tool.hatch.build]
dev-mode-dirs = ["."]

[tool.hatch.build.targets.wheel]
packages = ["PACKAGE"]
"""

PACKAGE = '''\
"""The output `NAME`: how many patches there are of each fabric."""

from blocklang.hooks import Output, OutputFile, OutputOptions, hookimpl
from blocklang.plan import SewingPlan


@hookimpl
def blocklang_outputs() -> tuple[Output, ...]:
    """Offer the output."""
    return (Output("NAME", ("txt",), "txt", "How many patches there are of each fabric.", make),)


def make(plan: SewingPlan, options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return one line a fabric."""
    cut = [patch.fabric for patch in plan.block.patches]
    lines = [f"{fabric.id}: {cut.count(fabric.id) * options.copies}\\n" for fabric in plan.block.fabrics]
    return (OutputFile("", "".join(lines).encode()),)
'''

TEST = '''\
"""The plugin is sound, and its output holds for blocks of the library; without the mark, for all of them."""

import PACKAGE
import pytest


def test_plugin_is_sound(blocklang_workbench) -> None:
    blocklang_workbench.plugin(PACKAGE)


@pytest.mark.blocklang_blocks("nine-patch", "ohio-star", "drunkards-path")
def test_output_holds(blocklang_workbench, blocklang_block) -> None:
    (output,) = PACKAGE.blocklang_outputs()
    plan = blocklang_workbench.plan(blocklang_block)
    blocklang_workbench.output(output, plan, honours=("copies",))
'''

README = """\
# NAME

A plugin for blocklang: it adds the output `NAME`, which counts the patches of each fabric. Change
`PACKAGE/__init__.py` into what you want to make.

```
pip install -e ".[test]"
blocklang make NAME nine-patch -o count.txt
pytest
```
"""

FILES = {
    "pyproject.toml": PROJECT,
    "README.md": README,
    "PACKAGE/__init__.py": PACKAGE,
    "PACKAGE/py.typed": "",
    "tests/test_PACKAGE.py": TEST,
}
