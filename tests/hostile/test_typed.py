"""Hostile command lines: each ends with its exit code and one sentence, whatever the system thinks of the words in it."""

from pathlib import Path

import pytest

from tests.hostile.answering import typed
from tests.hostile.made import SOUND

LONG = "a" * 300
TOO_LONG = "cannot be used: file name too long."
LINES: dict[str, tuple[tuple[str, ...], int, str]] = {
    "name too long": (("check", LONG), 2, TOO_LONG),
    "file name too long": (("check", f"{LONG}.block"), 2, TOO_LONG),
    "name in a pack too long": (("check", f"{LONG}.pack/x"), 2, TOO_LONG),
    "result too long": (("make", "diagram", "light.block", "-o", f"{LONG}.svg"), 2, TOO_LONG),
    "folder too long": (("make", "diagram", "light.block", "-o", f"{LONG}/x.svg"), 2, TOO_LONG),
    "new file too long": (("new", LONG, "--no-questions"), 2, TOO_LONG),
    "format too long": (("format", f"{LONG}.block"), 2, TOO_LONG),
    "pack too long": (("pack", "light.block", "-o", LONG), 2, TOO_LONG),
    "keys too long": (("pack", "--new-key", LONG), 2, TOO_LONG),
    "verify too long": (("verify", f"{LONG}.pack"), 2, TOO_LONG),
    "unpack too long": (("unpack", f"{LONG}.pack"), 2, TOO_LONG),
    "link to itself": (("check", "round.block"), 2, "There is no file `round.block`."),
    "folder that links to itself": (("check", "ring/x.block"), 2, "There is no file `ring/x.block`."),
    "result in a folder that links to itself": (("make", "diagram", "light.block", "-o", "ring/x.svg"), 2, "There is no folder `ring`"),
    "endless file": (("check", "/dev/zero"), 1, "A block file holds at most"),
    "endless pack": (("verify", "/dev/zero"), 1, "A pack has at most"),
    "endless key": (("verify", "light.block", "--key", "/dev/zero"), 1, "It is not a zip archive"),
    "size over a nought of another script": (("check", "light.block", "--size", "1/\u0660in"), 1, "is not a width that a block can have"),
    "oversize over a nought of another script": (("plan", "light.block", "--oversize", "1/\u0660in"), 2, "is not a length."),
    "size of another size": (("check", "light.block", "--size", "size * 2\nrows"), 1, "is not a width that a block can have"),
    "size in a megabyte": (("check", "light.block", "--size", "9" * 1_000_000), 1, "is not a width that a block can have"),
    "shrinkage that is no number": (("plan", "light.block", "--shrinkage", "nan"), 2, "nan is not a number."),
    "shrinkage without end": (("plan", "light.block", "--shrinkage", "inf"), 2, "is not in the range"),
    "copies without end": (("plan", "light.block", "--copies", "9" * 5_000), 2, "--copies"),
    "colour in the digits of another script": (("check", "light.block", "--fabric", "fog=#\u0661\u0662\u0663"), 1, "is not a colour"),
    "fabric of nothing": (("check", "light.block", "--fabric", "=#fff"), 2, "should look like"),
    "setting of nothing": (("make", "diagram", "light.block", "-o", "-", "--set", "="), 2, "should look like"),
    "stock in a megabyte": (("make", "cutting-plan", "light.block", "-o", "-", "-f", "text", "--set", f"stock={'9' * 100_000}"), 1, "too long to read"),
    "result named as a block": (("make", "diagram", "light.block", "-f", "svg", "-o", "x.block"), 2, "is a name for a block or a pack"),
}  # fmt: skip


@pytest.mark.parametrize("name", LINES)
def test_hostile_line_is_answered(name, tmp_path, monkeypatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("light.block").write_text(SOUND, encoding="utf-8")
    Path("round.block").symlink_to("round.block")
    Path("ring").symlink_to("ring")
    words, code, sentence = LINES[name]
    ended, _, said = typed(*words)
    assert (ended, sentence in said) == (code, True), said[:500]
    assert len(said) < 6_000


@pytest.mark.parametrize("shelf", ["ring", LONG, f"{LONG}.pack", "/dev/zero", "light.block", ""])
def test_library_that_is_none_is_passed_over(shelf, tmp_path, monkeypatch) -> None:
    monkeypatch.chdir(tmp_path)
    Path("light.block").write_text(SOUND, encoding="utf-8")
    Path("ring").symlink_to("ring")
    monkeypatch.setenv("BLOCKLANG_LIBRARY", shelf)
    assert typed("check", "nine-patch")[:2] == (0, "nine-patch: fine\n")
    assert typed("check", "nosuch")[0] == 2
