"""The pytest plugin as somebody else's tests meet it: in a run and a folder of their own."""

import re
import subprocess
import sys
from functools import partial
from pathlib import Path

import pytest

from blocklang.testing import Workbench

pytest_plugins = ["pytester"]

TESTS = """
import pytest
from blocklang.hooks import Output, OutputFile

OUTPUT = Output("names", ("txt",), "txt", "Names.", lambda plan, options: (OutputFile("", b"a\\n"),))


@pytest.mark.blocklang_blocks("nine-patch", "whirl")
def test_output(blocklang_workbench, blocklang_block):
    blocklang_workbench.output(OUTPUT, blocklang_workbench.plan(blocklang_block))


def test_broken(blocklang_workbench):
    plan = blocklang_workbench.plan("nine-patch")
    blocklang_workbench.output(OUTPUT, plan, honours=("paper",))


@pytest.mark.parametrize("blocklang_block", ["four-patch"])
def test_own_choice(blocklang_block):
    assert blocklang_block == "four-patch"
"""


@pytest.fixture(scope="module")
def loaded() -> None:
    """Load what is heavy before `pytester` notes which modules there are: what comes later is taken away, and then again."""
    Workbench().plan("nine-patch")


@pytest.fixture
def authors(loaded, pytester):
    """Stand in a folder of somebody else's tests."""
    pytester.makepyfile(test_names=TESTS)
    return pytester


@pytest.fixture
def run(authors, monkeypatch):
    """Run those tests in this process, without the plugins of others, which take long to load."""
    monkeypatch.setenv("PYTEST_DISABLE_PLUGIN_AUTOLOAD", "1")
    return partial(authors.runpytest_inprocess, "-p", "blocklang_pytest")


def held(ran) -> None:
    """Look at what a run of the tests has said."""
    text = ran.stdout.str()
    ran.assert_outcomes(passed=3, failed=1)
    assert "The output `names` of the block Nine Patch makes no difference for paper." in text
    assert "blocklang: what took longest" in text
    assert re.search(r"\d\.\d\d s  output names of whirl\n", text)
    assert re.search(r"in all, \d+ times\n", text)


def test_blocks_are_given_one_by_one_and_times_told(run) -> None:
    held(run("--strict-markers"))


@pytest.mark.slow
def test_times_are_gathered_from_several_processes(authors) -> None:
    held(authors.runpytest_subprocess("-n", "2"))


def test_blocks_can_be_narrowed_for_one_run(run) -> None:
    ran = run("-k", "test_output", "--blocklang-blocks", "whi*", "-v")
    assert re.findall(r"test_output\[([\w-]+)\] PASSED", ran.stdout.str()) == ["whirl"]


def test_pattern_that_fits_nothing_is_told(authors, run) -> None:
    authors.makepyfile(test_names=TESTS.replace('"nine-patch", "whirl"', '"nosuch*"'))
    ran = run()
    assert "No block of the library fits nosuch*." in ran.stdout.str()


def test_without_a_mark_every_block_is_given(authors, run) -> None:
    authors.makepyfile(test_names="def test_it(blocklang_block):\n    pass\n")
    listed = run("--collect-only", "-q").stdout.str()
    blocks = Path(__file__).parents[2] / "blocks"
    assert set(re.findall(r"test_it\[([\w-]+)\]", listed)) == {path.stem for path in blocks.rglob("*.block")}


def test_two_fixtures_are_offered(run) -> None:
    assert set(re.findall(r"^(blocklang_\w+)", run("--fixtures").stdout.str(), re.MULTILINE)) == {
        "blocklang_workbench",
        "blocklang_block",
    }


def test_other_peoples_runs_are_left_alone(tmp_path) -> None:
    """Of blocklang nothing but the small module of the plugin is imported, and nothing is added to what is printed."""
    text = """
import sys

def test_it():
    names = sorted(name for name in sys.modules if name.startswith("blocklang"))
    assert names == ["blocklang_pytest"]
    assert not {"click", "numpy", "shapely", "highspy", "lark"} & set(sys.modules)
"""
    (tmp_path / "test_it.py").write_text(text, encoding="utf-8")
    command = [sys.executable, "-m", "pytest", "-p", "no:cacheprovider"]
    ran = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stdout
    assert "what took longest" not in ran.stdout
