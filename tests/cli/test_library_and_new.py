"""`blocklang library`, `blocklang new`, `blocklang completion`."""

import json
import os
import subprocess
import sys

import pytest

from tests.cli.conftest import GOOD


def test_library_lists_what_ships_with_its_origin(command, folder) -> None:
    listed = {one["name"]: one for one in json.loads(command("library", "--format", "json").out)}
    assert listed["nine-patch"]["patches"] == 9
    assert listed["nine-patch"]["origin"] == "blocklang"
    assert all(one["patches"] for one in listed.values())


def test_words_narrow_the_list(command, folder) -> None:
    everything = command("library").out.splitlines()
    stars = command("library", "STAR").out.splitlines()
    assert 0 < len(stars) < len(everything)
    assert set(stars[0].split()) <= set(next(line for line in everything if stars[0].split()[0] in line).split())
    assert command("library", "nosuchword").err == "No block has all of those words.\n"


def test_own_folder_is_searched_after_what_ships(command, folder, monkeypatch) -> None:
    for name in ("nine-patch", "harbour-steps"):
        (folder / f"{name}.block").write_text(GOOD)
    monkeypatch.setenv("BLOCKLANG_LIBRARY", str(folder))
    listed = {one["name"]: one for one in json.loads(command("library", "--format", "json").out)}
    assert listed["harbour-steps"]["origin"] == str(folder)
    assert listed["nine-patch"]["origin"] == "blocklang"
    assert command("check", "harbour-steps").code == 0


@pytest.mark.parametrize(
    ("name", "title"), [("harbour-steps", "Harbour Steps"), ('we"ird', "We Ird"), ("---", "New Block")]
)
def test_new_file_is_right_and_tidy(command, folder, name, title) -> None:
    assert command("new", "--", name).code == 0
    path = folder / f"{name}.block"
    assert f'block "{title}"' in path.read_text()
    assert command("check", f"./{name}.block").code == 0
    assert command("format", "--check", f"./{name}.block").code == 0


def test_new_never_overwrites(command, good) -> None:
    before = good.read_bytes()
    ran = command("new", "good")
    assert (ran.code, ran.err) == (2, "`good.block` is there already, and is left as it is.\n")
    assert good.read_bytes() == before


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_completion_prints_a_script(command, shell) -> None:
    ran = command("completion", shell)
    assert ran.code == 0
    assert "_BLOCKLANG_COMPLETE" in ran.out


def completed(*words: str) -> list[str]:
    typed = " ".join(["blocklang", *words])
    asked = {"_BLOCKLANG_COMPLETE": "bash_complete", "COMP_WORDS": typed, "COMP_CWORD": str(len(words))}
    code = "from blocklang.cli.program import run; run([])"
    ran = subprocess.run(
        [sys.executable, "-c", code], env=os.environ | asked, capture_output=True, text=True, check=True
    )
    return [line.partition(",")[2] for line in ran.stdout.splitlines()]


def test_shell_completes_commands_outputs_and_blocks() -> None:
    assert completed("for") == ["format"]
    assert "nine-patch" in completed("check", "nine")
    assert completed("make", "diag") == ["diagram"]
    assert completed("ver") == ["verify"]


def test_shell_completes_the_blocks_of_a_pack(command, good) -> None:
    assert command("pack", "good.block", "whirl", "-o", "tides").code == 0
    assert completed("plan", "tides.pack/") == ["tides.pack/good", "tides.pack/whirl"]
    assert completed("plan", "tides.pack/w") == ["tides.pack/whirl"]
    assert completed("plan", "none.pack/w") == ["none.pack/w"]  # a folder may be called so: left to the shell
