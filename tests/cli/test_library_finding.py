"""Finding blocks by what they are to sew, in several libraries, quickly."""

import json
import os
import resource
import shutil
import subprocess
import sys
import time
from fractions import Fraction
from pathlib import Path
from types import SimpleNamespace

import pytest

from blocklang.catalogue.index import Index, Known
from blocklang.catalogue.working_out import facts_of
from blocklang.cli.cards import colours_of_terminal, picture_lines
from tests.cli.conftest import GOOD
from tests.support.blocks import block, grid, patch, square
from tests.support.route import assembly_of

MANY = 5_000
#: A search of the indexed library may cost this much processor time, beside starting with all plugins.
MOST_SECONDS = 1.0


def names(ran) -> list[str]:
    assert ran.code == 0, ran.err
    return [line.split()[0] for line in ran.out.splitlines()]


def every(command) -> list[dict[str, object]]:
    return json.loads(command("library", "--format", "json").out)


def longer_side(one: dict[str, str]) -> Fraction:
    """Return the longer side in inches, read off the size as it is shown."""
    sides = [side.removesuffix(" in").split() for side in one["size"].split(" × ")]
    return max(sum(map(Fraction, side), Fraction(0)) for side in sides)


@pytest.mark.parametrize(
    ("arguments", "fits"),
    [
        (("--set-in", "no"), lambda one: one["set_in"] == 0),
        (("--set-in", "some"), lambda one: one["set_in"] > 0),
        (("--patches", "..9"), lambda one: one["patches"] <= 9),
        (("--patches", "9..16", "--curved", "no"), lambda one: 9 <= one["patches"] <= 16 and not one["curves"]),
        (("--partial", "some"), lambda one: one["partials"] > 0),
        (("--shape", "hexagon"), lambda one: one["shape"] == "hexagon"),
        (("--family", "stars", "--difficulty", "demanding"), lambda one: (one["family"], one["difficulty"]) == ("stars", "demanding")),
        (("--size", "12in"), lambda one: longer_side(one) == 12),
        (("star", "--set-in", "no", "--patches", "..40"), lambda one: "star" in f"{one['name']} {one['title']} {one['family']}".lower() and not one["set_in"] and one["patches"] <= 40),
    ],
)  # fmt: skip
def test_options_narrow_the_list_as_they_say(command, folder, arguments, fits) -> None:
    found, all_of_them = names(command("library", *arguments)), every(command)
    assert found == [one["name"] for one in all_of_them if fits(one)]
    assert 0 < len(found) < len(all_of_them)


@pytest.mark.parametrize(
    ("name", "level"),
    [
        ("four-patch", "easy"), ("log-cabin", "easy"), ("ohio-star", "easy"), ("attic-window", "moderate"),
        ("drunkards-path", "moderate"), ("eight-pointed-star", "demanding"), ("mariners-compass", "demanding"),
    ],
)  # fmt: skip
def test_difficulty_is_what_a_teacher_would_say(command, folder, name, level) -> None:
    assert next(one["difficulty"] for one in every(command) if one["name"] == name) == level


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("--patches", "few"), "`--patches few`: `few` is no number of seams or patches"),
        (("--size", "big"), "`--size big`: `big` is no size"),
        (("--set-in", "9..4"), "`9..4` ends before it begins."),
        (("--difficulty", "hard"), "'hard' is not one of"),
    ],
)
def test_what_cannot_be_understood_is_said(command, folder, arguments, sentence) -> None:
    ran = command("library", *arguments)
    assert (ran.code, sentence in ran.err) == (2, True)


def test_nothing_found_is_said(command, folder) -> None:
    assert command("library", "--patches", "999999").err == "No block is all of that.\n"


def test_picture_is_letters_where_there_is_no_terminal(command, folder) -> None:
    ran = command("library", "nine-patch", "--picture", "--patches", "9")
    lines = ran.out.splitlines()
    assert "\x1b" not in ran.out
    assert lines[0].startswith("HHHHH......HHHHH  nine-patch: Nine Patch")
    assert "easy" in lines[3]
    assert any(line.endswith("from blocklang") for line in lines)


def test_libraries_are_searched_in_the_order_written(command, folder, monkeypatch) -> None:
    for shelf, title in (("first", "From the First"), ("second", "From the Second")):
        (folder / shelf).mkdir()
        (folder / shelf / "tide.block").write_text(GOOD.replace("Harbour Steps", title))
    assert command("pack", "first/tide.block", "-o", "tides").code == 0
    for order, title in (
        (("second", "first"), "From the Second"),
        (("first", "second"), "From the First"),
        (("tides.pack", "second"), "From the First"),
        (("second", "tides.pack"), "From the Second"),
    ):
        monkeypatch.setenv("BLOCKLANG_LIBRARY", os.pathsep.join(order))
        found = next(one for one in every(command) if one["name"] == "tide")
        assert (found["title"], found["origin"]) == (title, order[0])


def test_changed_file_is_seen_and_a_broken_index_is_built_again(command, folder, monkeypatch) -> None:
    monkeypatch.setenv("BLOCKLANG_LIBRARY", str(folder / "shelf"))
    (folder / "shelf").mkdir()
    file = folder / "shelf" / "tide.block"
    for title in ("First Tide", "Other Tide"):
        file.write_text(GOOD.replace("Harbour Steps", title))
        assert next(one["title"] for one in every(command) if one["name"] == "tide") == title
    index = Path(os.environ["XDG_CACHE_HOME"]) / "blocklang" / "index.json"
    whole = index.read_bytes()
    monkeypatch.setenv("XDG_CACHE_HOME", str(folder / "cache"))
    broken = folder / "cache" / "blocklang" / "index.json"
    broken.parent.mkdir(parents=True)
    broken.write_bytes(whole[: len(whole) // 2])
    ran = command("library", "tide")
    assert (ran.code, ran.err) == (0, "")
    assert "Other Tide" in ran.out


def test_block_is_read_again_when_what_it_places_changes(command, folder, monkeypatch) -> None:
    monkeypatch.setenv("BLOCKLANG_LIBRARY", str(folder / "shelf"))
    (folder / "shelf").mkdir()
    (folder / "shelf" / "wing.block").write_text(GOOD)
    outer = 'block "Sail" language 1\nsize 9 in\nplace "wing" as a at 0, 0 size 9 in\n'
    (folder / "shelf" / "sail.block").write_text(outer)
    assert next(one["patches"] for one in every(command) if one["name"] == "sail") == 9
    smaller = GOOD.partition("rows")[0] + "rows\n  deep fog\n  fog  deep\nend\n"
    (folder / "shelf" / "wing.block").write_text(smaller)
    assert next(one["patches"] for one in every(command) if one["name"] == "sail") == 4


def test_faulty_file_is_listed_and_found_by_its_name_only(command, folder, monkeypatch) -> None:
    monkeypatch.setenv("BLOCKLANG_LIBRARY", str(folder))
    (folder / "tide.block").write_text("block")
    assert "(has mistakes)" in command("library", "tide").out
    assert "tide" not in names(command("library", "--patches", "..9"))


def test_search_of_five_thousand_files_takes_less_than_a_second(command, folder) -> None:
    """Working out 5,000 blocks takes minutes; here the index learns the facts of one for all of them."""
    shelf, cache, then = folder / "shelf", folder / "cache", time.time() - 3600
    shelf.mkdir()
    command("library")
    shutil.copytree(Path(os.environ["XDG_CACHE_HOME"]) / "blocklang", cache / "blocklang")
    index = Index.load(cache / "blocklang" / "index.json")
    facts = facts_of(assembly_of(grid(3, 3)))
    for number in range(MANY):
        path = shelf / f"steps-{number}.block"
        path.write_text(GOOD.replace("Harbour Steps", f"Steps {number}"))
        os.utime(path, (then, then))
        stamp = index.stamp(str(path))
        assert stamp is not None
        index.learn(str(path), Known(stamp, facts))
    index.save()
    # Compiled modules are kept, as they are wherever blocklang is installed.
    environment = {key: value for key, value in os.environ.items() if key != "PYTHONDONTWRITEBYTECODE"}
    environment |= {
        "BLOCKLANG_LIBRARY": str(shelf),
        "XDG_CACHE_HOME": str(cache),
        "PYTHONPYCACHEPREFIX": str(folder / "c"),
    }

    def spent(*arguments: str) -> tuple[float, str]:
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        words = [sys.executable, "-m", "blocklang", *arguments]
        ran = subprocess.run(words, env=environment, capture_output=True, text=True, check=True)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime, ran.stdout

    starts = min(spent("outputs")[0] for _ in range(2))
    searches = [spent("library", "steps", "--set-in", "no", "--patches", "..40") for _ in range(3)]
    for _, out in searches:
        assert sum(line.startswith("steps-") for line in out.splitlines()) == MANY
    took = min(seconds for seconds, _ in searches) - starts
    assert took < MOST_SECONDS, f"{took:.2f} s beside the {starts:.2f} s that it takes to start with plugins"


def test_picture_in_full_colour_is_half_blocks() -> None:
    halves = [
        patch("low", "deep", [(0, 0), (4, 0), (4, 2), (0, 2)]),
        patch("high", "fog", [(0, 2), (4, 2), (4, 4), (0, 4)]),
    ]
    lines = picture_lines(block(halves, square(4)), "24 bit")
    fog, deep = "232;238;242", "31;58;95"
    assert lines == [
        *[f"\x1b[38;2;{fog};48;2;{fog}m▀" * 16 + "\x1b[0m"] * 4,
        *[f"\x1b[38;2;{deep};48;2;{deep}m▀" * 16 + "\x1b[0m"] * 4,
    ]


def test_picture_on_eight_colours_keeps_the_letters() -> None:
    """Two fabrics may get one of eight colours, so the letters stay."""
    lines = picture_lines(grid(2, 2), "8 colours")
    assert {sign for line in lines for sign in line if sign.isalpha() or sign == "."} - {"m"} == {".", "D"}
    assert all(line.endswith("\x1b[0m") for line in lines)


@pytest.mark.parametrize(
    ("terminal", "variables", "paint"),
    [
        (False, {"COLORTERM": "truecolor", "TERM": "xterm"}, ""),
        (True, {"COLORTERM": "truecolor", "TERM": "xterm"}, "24 bit"),
        (True, {"COLORTERM": "", "TERM": "xterm"}, "8 colours"),
        (True, {"COLORTERM": "truecolor", "TERM": "dumb"}, ""),
        (True, {"COLORTERM": "truecolor", "TERM": "xterm", "NO_COLOR": "1"}, ""),
    ],
)
def test_colours_are_for_terminals(monkeypatch, terminal, variables, paint) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    monkeypatch.setattr(sys, "stdout", SimpleNamespace(isatty=lambda: terminal))
    assert colours_of_terminal() == paint


def test_name_that_the_library_lacks_is_found_beside_the_file(command, folder) -> None:
    (folder / "wing-of-ours.block").write_text(GOOD)
    (folder / "sail.block").write_text(
        'block "Sail" language 1\nsize 9 in\nplace "wing-of-ours" as a at 0, 0 size 9 in\n'
    )
    assert command("check", "sail.block").out == "sail.block: fine\n"
    (folder / "inner").mkdir()
    shutil.move(folder / "sail.block", folder / "inner" / "sail.block")
    assert command("check", "inner/sail.block").code == 1  # the folder above is not the file's own
