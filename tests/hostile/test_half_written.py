"""Whatever a command writes is whole or as it was, wherever the command is killed; and nothing is overwritten unasked."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

import pytest

from tests.hostile.answering import typed
from tests.hostile.made import SOUND
from tests.support.marking import marks_of

ROOT = Path(__file__).parents[2]
UNTIDY = SOUND.replace("rows", "\n\n\nrows   # tide")
OTHER = SOUND.replace("Harbour Light", "Tide Mill").replace("  F D\n  D F", "  F F\n  D D")


class Writing(NamedTuple):
    """A command that writes: what was there before, how often it touches the disk at least, and what is whole only together."""

    words: tuple[str, ...]
    least: int
    before: tuple[str, ...] = ()
    together: str = ""


COMMANDS = {
    "make": Writing(("make", "diagram", "light.block", "-o", "light.svg"), 3),
    "make-over-a-file": Writing(("make", "diagram", "light.block", "-o", "light.svg"), 3, ("light.svg",)),
    "make-files-beside-each-other": Writing(("make", "colouring-page", "light.block", "-f", "svg", "-o", "light.svg"), 6, ("light.svg",)),
    "make-several": Writing(("make", "diagram", "light.block", "mill.block", "-f", "svg", "-o", "class/"), 6),
    "make-several-over-files": Writing(
        ("make", "diagram", "light.block", "mill.block", "-f", "svg", "-o", "class/", "--force"), 6, ("class/light.svg", "class/mill.svg")
    ),
    "make-a-document-of-several": Writing(("make", "handout", "light.block", "mill.block", "-f", "svg", "-o", "class.svg"), 3),
    "make-a-folder": Writing(("make", "gallery", "light.block", "-o", "pages", "--set", "sheets=no"), 6, together="pages"),
    "format": Writing(("format", "untidy.block"), 3),
    "format-several": Writing(("format", "untidy.block", "untidy-too.block"), 6),
    "new": Writing(("new", "fresh", "--no-questions"), 3),
    "new-plugin": Writing(("new", "plugin", "tide-table"), 4, together="tide-table"),
    "pack": Writing(("pack", "light.block", "mill.block", "-o", "tides"), 3),
    "pack-over-a-pack": Writing(("pack", "light.block", "-o", "tides", "--force"), 3, ("tides.pack",)),
    "new-keys": Writing(("pack", "--new-key", "guild"), 6),
    "verify-pictures": Writing(("verify", "new.pack", "--against", "old.pack", "--pictures", "seen"), 4),
    "unpack": Writing(("unpack", "new.pack", "-o", "out"), 5, together="out"),
    "unpack-over-files": Writing(("unpack", "new.pack", "-o", "out", "--force"), 5, ("out/light.block",)),
}  # fmt: skip
LONGEST = "make-a-folder"  # writes most, and so dies most often
RANDOM = {"new-keys"}  # made of chance, so that only their being there can be compared


@pytest.fixture
def folder(tmp_path, monkeypatch) -> Path:
    """Stand in a folder with blocks and packs."""
    folder = tmp_path / "folder"
    folder.mkdir()
    monkeypatch.chdir(folder)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.delenv("BLOCKLANG_LIBRARY", raising=False)
    for name, text in {"light": SOUND, "mill": OTHER, "untidy": UNTIDY, "untidy-too": UNTIDY}.items():
        Path(f"{name}.block").write_text(text, encoding="utf-8")
    assert typed("pack", "light.block", "mill.block", "-o", "new")[0] == 0
    Path("light.block").write_text(OTHER.replace("Tide Mill", "Harbour Light"), encoding="utf-8")
    assert typed("pack", "light.block", "-o", "old")[0] == 0
    Path("light.block").write_text(SOUND, encoding="utf-8")
    return folder


def put(names: tuple[str, ...]) -> None:
    for name in names:
        Path(name).parent.mkdir(exist_ok=True)
        Path(name).write_text("old", encoding="utf-8")


@pytest.mark.parametrize("name", [pytest.param(n, marks=marks_of(n == LONGEST, 0, 1)) for n in COMMANDS])
def test_what_is_written_is_whole_wherever_the_command_is_killed(name, folder) -> None:
    one = COMMANDS[name]
    put(one.before)
    before = states(folder)
    ran = subprocess.run(
        [sys.executable, "-m", "tests.hostile.dying", str(folder), *one.words],
        cwd=ROOT, capture_output=True, text=True, check=True, timeout=300,
        env=os.environ | {"PYTHONDONTWRITEBYTECODE": "1"},
    )  # fmt: skip
    *deaths, lived = [json.loads(line) for line in ran.stdout.splitlines() if line.startswith("{")]
    assert lived.pop("") == "0", ran.stderr
    assert len(deaths) >= one.least
    assert any(lived[path] != before.get(path) for path in lived), "the command wrote something"
    for state in deaths:
        assert set(before) <= set(state) <= set(lived) | set(before)
        for path, content in state.items():
            assert content in (before.get(path), lived[path]) or (name in RANDOM and content != before.get(path)), path
        inside = {path for path in state if path.startswith(f"{one.together}/")}
        assert (
            not one.together or not inside or inside == {path for path in lived if path.startswith(f"{one.together}/")}
        )


def states(folder: Path) -> dict[str, str]:
    from tests.hostile.dying import _state

    return _state(folder)


class Target(NamedTuple):
    """What a command would write over, and what it does when that is there: `refuses` it, or `replaces` what was named."""

    words: tuple[str, ...]
    there: tuple[str, ...]
    does: str
    force: bool = True


OVERWRITING = {
    "make to a file that is named": Target(("make", "diagram", "light.block", "-o", "light.svg"), ("light.svg",), "replaces", False),
    "make to a block file": Target(("make", "diagram", "light.block", "-f", "svg", "-o", "mill.block"), ("mill.block",), "refuses", False),
    "make to the file it is made from": Target(("make", "diagram", "light.block", "-f", "svg", "-o", "light.block"), ("light.block",), "refuses", False),
    "make to a pack": Target(("make", "diagram", "light.block", "-f", "svg", "-o", "new.pack"), ("new.pack",), "refuses", False),
    "make into a folder": Target(("make", "diagram", "light.block", "-o", "class/"), ("class/light.svg",), "refuses"),
    "make several": Target(("make", "diagram", "light.block", "mill.block", "-f", "svg", "-o", "class/"), ("class/mill.svg",), "refuses"),
    "make a folder": Target(("make", "gallery", "light.block", "-o", "pages", "--set", "sheets=no"), ("pages/index.html",), "refuses"),
    "format": Target(("format", "untidy.block"), (), "replaces", False),
    "new": Target(("new", "mill", "--no-questions"), ("mill.block",), "refuses", False),
    "new plugin": Target(("new", "plugin", "tide-table"), ("tide-table/x",), "refuses", False),
    "pack": Target(("pack", "light.block", "-o", "tides"), ("tides.pack",), "refuses"),
    "pack --new-key, private": Target(("pack", "--new-key", "guild"), ("guild.key",), "refuses"),
    "pack --new-key, public": Target(("pack", "--new-key", "guild"), ("guild.public",), "refuses"),
    "verify --pictures": Target(("verify", "new.pack", "--against", "old.pack", "--pictures", "seen"), ("seen/light-before.svg",), "refuses"),
    "unpack": Target(("unpack", "new.pack", "-o", "out"), ("out/light.block",), "refuses"),
}  # fmt: skip


@pytest.mark.parametrize("name", OVERWRITING)
def test_nothing_is_overwritten_unasked(name, folder) -> None:
    one = OVERWRITING[name]
    if one.there and not Path(one.there[0]).exists():
        put(one.there)
    before = {path: Path(path).read_bytes() for path in one.there or ("untidy.block",)}
    code, _, said = typed(*one.words)
    kept = all(Path(path).read_bytes() == content for path, content in before.items())
    assert (code, kept) == ((2, True) if one.does == "refuses" else (0, False)), said
    if one.does == "refuses" and one.force:
        assert "--force" in said
        assert typed(*one.words, "--force")[0] == 0
        assert not all(Path(path).read_bytes() == content for path, content in before.items())


def test_document_tells_what_each_command_does_with_what_is_there() -> None:
    told = (ROOT / "docs" / "security.md").read_text(encoding="utf-8")
    for name, one in OVERWRITING.items():
        assert f"| `{name}` | {one.does}" in told, name
