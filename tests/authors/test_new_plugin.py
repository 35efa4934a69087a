"""`blocklang new plugin NAME` writes a folder that installs, is found, and whose own tests pass."""

import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from blocklang.cli.program import run
from blocklang.cli.starting.plugin_folder import LONGEST_NAME

FILES = {
    "README.md", "pyproject.toml", "tests/test_tide_table.py", "tide_table/__init__.py", "tide_table/py.typed",
}  # fmt: skip
TIMEOUT = 120


@pytest.fixture
def folder(tmp_path, monkeypatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


@pytest.fixture
def plugin(folder) -> Path:
    assert run(["new", "plugin", "tide-table"]) == 0
    return folder / "tide-table"


def python(*arguments: str, cwd: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    """Run Python and return what it said; it must end well."""
    command = [sys.executable, *arguments]
    env = os.environ | environment
    ran = subprocess.run(command, cwd=cwd, env=env, capture_output=True, text=True, check=False, timeout=TIMEOUT)
    assert ran.returncode == 0, ran.stdout + ran.stderr
    return ran


def test_folder_holds_a_package_a_test_and_how_to_install_them(plugin, capsys) -> None:
    assert {path.relative_to(plugin).as_posix() for path in plugin.rglob("*") if path.is_file()} == FILES
    project = tomllib.loads((plugin / "pyproject.toml").read_text(encoding="utf-8"))
    assert project["project"]["entry-points"]["blocklang"] == {"tide-table": "tide_table"}
    assert project["tool"]["hatch"]["build"]["targets"]["wheel"]["packages"] == ["tide_table"]
    texts = "".join(path.read_text(encoding="utf-8") for path in plugin.rglob("*") if path.is_file())
    assert "NAME" not in texts and "PACKAGE" not in texts


@pytest.mark.parametrize(
    ("name", "said"),
    [
        ("diagram", "There is an output `diagram` already"),
        ("json", "`json` means something to Python already"),
        ("class", "`class` means something to Python already"),
        ("blocklang", "`blocklang` means something to Python already"),
        ("Tide Table", "cannot name a plugin"),
        ("tide_table", "cannot name a plugin"),
        ("-", "cannot name a plugin"),
        ("潮", "cannot name a plugin"),
        ("../tide;rm", "cannot name a plugin"),
        ("x" * (LONGEST_NAME + 1), "has at most"),
        ("nowhere/tide-table", "There is no folder `nowhere`"),
    ],
)
def test_name_that_cannot_be_used_is_refused(folder, capsys, name, said) -> None:
    assert run(["new", "plugin", "--", name]) == 2
    assert said in capsys.readouterr().err
    assert not list(folder.iterdir())


def test_what_is_there_is_left_alone(folder, capsys) -> None:
    (folder / "tide-table").write_text("mine", encoding="utf-8")
    assert run(["new", "plugin", "tide-table"]) == 2
    assert capsys.readouterr().err == "`tide-table` is there already, and is left as it is.\n"
    assert (folder / "tide-table").read_text(encoding="utf-8") == "mine"


def test_plugin_without_a_name_and_with_a_blocks_options_is_refused(folder, capsys) -> None:
    assert run(["new", "plugin"]) == 2
    assert "for a block of that name write `blocklang new plugin.block`" in capsys.readouterr().err
    assert run(["new", "plugin", "tide-table", "--size", "9in"]) == 2
    assert "for a new block, not for a plugin" in capsys.readouterr().err
    assert not list(folder.iterdir())


def test_block_called_plugin_can_be_started(folder) -> None:
    assert run(["new", "plugin.block"]) == 0
    assert (folder / "plugin.block").read_text(encoding="utf-8").startswith('block "Plugin"\n')


def test_whatever_cannot_be_written_whole_is_taken_away(folder, monkeypatch) -> None:
    from blocklang.cli.folders import FolderDraft

    add = FolderDraft.add

    def fail(draft: FolderDraft, name: str, data: bytes) -> None:
        if name == "README.md":
            raise KeyboardInterrupt
        add(draft, name, data)

    monkeypatch.setattr(FolderDraft, "add", fail)
    assert run(["new", "plugin", "tide-table"]) == 130
    assert not list(folder.iterdir())


@pytest.mark.slow
def test_plugin_installs_and_its_tests_pass(plugin, folder) -> None:
    """Built and installed by pip, without the network, into a folder that nothing else knows of."""
    pytest.importorskip("hatchling", reason="building without the network needs hatchling")
    pip = ("-m", "pip", "--disable-pip-version-check", "install", "--quiet", "--no-index", "--no-deps")
    python(*pip, "--no-build-isolation", "--target", str(folder / "site"), str(plugin), cwd=folder)
    found = {"PYTHONPATH": str(folder / "site")}
    listed = python("-m", "blocklang", "outputs", cwd=folder, **found)
    assert "tide-table" in listed.stdout
    python("-m", "blocklang", "make", "tide-table", "nine-patch", "-o", "count.txt", cwd=folder, **found)
    assert (folder / "count.txt").read_text(encoding="utf-8") == "fog: 4\nharbour: 5\n"
    tested = python("-m", "pytest", "-q", "-p", "no:cacheprovider", str(plugin / "tests"), cwd=folder, **found)
    assert "4 passed" in tested.stdout
