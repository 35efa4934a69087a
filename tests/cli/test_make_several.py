"""`blocklang make` with several blocks, outputs and formats at once."""

import os
import subprocess
import sys
from pathlib import Path

import pytest

from blocklang.cli.choices import complete_outputs
from blocklang.cli.processes import processes_for
from blocklang.hooks import OutputFile, Setting
from tests.cli.conftest import GOOD
from tests.plugins.strangers import an_output

TIDE = an_output("tide-table", settings=(Setting("hour", "When.", ("dawn", "dusk")),))
BUOY = an_output("buoy-list", formats=("txt", "csv"))
PAIR = an_output("pair", make=lambda plan, options: (OutputFile("", b"all"), OutputFile("one.txt", b"1")))
SUNK = an_output("sunk", make=lambda plan, options: 1 / 0)
BOOK = an_output("book", make_several=lambda plans, options: (OutputFile("", b"".join(told(one) for one in plans)),))


def told(plan) -> bytes:
    return f"{plan.block.name}\n".encode()


def files_in(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in sorted(folder.iterdir())}


@pytest.fixture(autouse=True)
def offered(monkeypatch) -> None:
    """Offer outputs of strangers that take no time."""
    monkeypatch.setattr("blocklang.cli.plugged.Plugged.outputs", lambda self: (TIDE, BUOY, PAIR, SUNK, BOOK))


@pytest.fixture
def marsh(good) -> Path:
    """Write a second block beside the first."""
    path = good.with_name("marsh.block")
    path.write_text(GOOD.replace("Harbour Steps", "Marsh Steps"), encoding="utf-8")
    return path


def test_every_faulty_file_is_told(command, good, folder) -> None:
    for name in ("first.block", "second.block"):
        good.with_name(name).write_text("block\n")
    ran = command("make", "book", "first.block", good, "second.block", "-o", "a.txt")
    assert ran.code == 1 and "first.block" in ran.err and "second.block" in ran.err and "Wrote" not in ran.err
    assert not (folder / "a.txt").exists()


def test_several_outputs_of_several_blocks_go_into_one_folder(command, good, marsh, folder) -> None:
    ran = command("make", "tide-table,buoy-list", good, marsh, "-o", "class")
    assert (ran.code, ran.out) == (0, "")
    written = ["good-tide-table.txt", "good-buoy-list.txt", "marsh-tide-table.txt", "marsh-buoy-list.txt"]
    assert ran.err == "".join(f"Wrote class/{name}\n" for name in written) + "Made 4 of 4 in class.\n"
    assert files_in(folder / "class") == dict.fromkeys(sorted(written), b"hello")


def test_one_output_is_named_after_the_block_alone(command, good, marsh, folder) -> None:
    assert command("make", "tide-table", good, marsh, "-o", "class").code == 0
    assert list(files_in(folder / "class")) == ["good.txt", "marsh.txt"]


def test_one_result_goes_into_a_folder_that_is_named_as_one(command, good, folder) -> None:
    assert command("make", "tide-table", good, "-o", f"new{os.sep}").err == "Wrote new/good.txt\n"
    assert command("make", "tide-table", good, "-o", ".").err == "Wrote good.txt\n"
    assert (folder / "good.txt").read_bytes() == (folder / "new" / "good.txt").read_bytes() == b"hello"


def test_a_format_stands_behind_its_output(command, good, folder) -> None:
    ran = command("make", "buoy-list.csv,buoy-list,tide-table", good, "-o", "class")
    assert ran.code == 0
    assert list(files_in(folder / "class")) == ["good-buoy-list.csv", "good-buoy-list.txt", "good-tide-table.txt"]
    assert command("make", "tide-table.csv", good, "-o", "x/").err.startswith("`tide-table` cannot be made as csv;")


def test_files_beside_a_result_are_named_after_it(command, good, marsh, folder) -> None:
    command("make", "pair", good, marsh, "-o", "class")
    assert list(files_in(folder / "class")) == ["good-one.txt", "good.txt", "marsh-one.txt", "marsh.txt"]


def test_each_block_is_planned_once(command, good, marsh, monkeypatch) -> None:
    from blocklang.cli.walking import Walk

    planned, plan = [], Walk.plan
    monkeypatch.setattr(Walk, "plan", lambda *given: planned.append(given[1]) or plan(*given))
    assert command("make", "tide-table,buoy-list,book", good, marsh, "-o", "class").code == 0
    assert planned == [str(good), str(marsh)]


def test_what_fails_keeps_nothing_else_from_being_written(command, good, marsh, bad, folder) -> None:
    ran = command("make", "tide-table,sunk,book", bad, good, marsh, "-o", "class")
    assert ran.code == 1
    assert "The output `sunk` cannot be made of good" in ran.err
    assert ran.err.endswith("Made 2 of 7 in class; not made: tide-table of bad; sunk of bad, good, marsh; book.\n")
    assert list(files_in(folder / "class")) == ["good-tide-table.txt", "marsh-tide-table.txt"]


def test_document_of_all_lies_beside_what_is_made_of_each(command, good, marsh, folder) -> None:
    assert command("make", "book,tide-table", good, marsh, "-o", "class").code == 0
    assert files_in(folder / "class")["book.txt"] == b"Harbour Steps\nMarsh Steps\n"
    assert len(files_in(folder / "class")) == 3


def test_file_that_is_there_is_left_as_it_is_unless_forced(command, good, marsh, folder) -> None:
    (folder / "class").mkdir()
    (folder / "class" / "marsh.txt").write_bytes(b"mine")
    ran = command("make", "tide-table", good, marsh, "-o", "class")
    assert (ran.code, ran.err) == (
        2,
        "`class/marsh.txt` is there already, and is left as it is; --force writes over it.\n",
    )
    assert files_in(folder / "class") == {"marsh.txt": b"mine"}
    assert command("make", "tide-table", good, marsh, "-o", "class", "--force").code == 0
    assert files_in(folder / "class") == {"good.txt": b"hello", "marsh.txt": b"hello"}


def test_file_beside_a_result_that_is_there_already_costs_only_that_result(command, good, marsh, folder) -> None:
    (folder / "class").mkdir()
    (folder / "class" / "good-one.txt").write_bytes(b"mine")
    ran = command("make", "pair", good, marsh, "-o", "class")
    assert ran.code == 2 and "`class/good-one.txt` is there already" in ran.err
    assert ran.err.endswith("Made 1 of 2 in class; not made: pair of good.\n")
    assert files_in(folder / "class") == {"good-one.txt": b"mine", "marsh-one.txt": b"1", "marsh.txt": b"all"}


@pytest.mark.parametrize(
    ("arguments", "sentence"),
    [
        (("tide-table,buoy-list", "good.block", "-o", "a.txt"), "These are 2 results, and `a.txt` is one"),
        (("tide-table", "good.block", "marsh.block", "-o", "-"), "is made of one block at a time: give one FILE"),
        (("tide-table", "good.block", "deep/good.block", "-o", "class"), "would both become `class/good.txt`"),
        (("tide-table", "good.block", "deep/Good.block", "-o", "class"), "would both become `class/Good.txt`"),
        (("tide-table", "good.block", "god.block", "-o", "class"), "There is no file `god.block`."),
        (("tide-table", "good.block", "-", "-o", "class"), "A block from standard input has no name"),
        (("tide-table,buoy-list", "good.block", "-o", "c", "--set", "x=1"), "None of `tide-table`, `buoy-list` has"),
        (("tide-table,buoy-list", "good.block", "-o", "c", "--set", "hour=noon"), "is one of dawn, dusk."),
        (("tide-table,buoy", "good.block", "-o", "c"), "There is no output `buoy`."),
        (("tide-table,", "good.block", "-o", "c"), "There is no output ``."),
        (("tide-table", "-o", "c"), "Name the FILE to make it from."),
        (("tide-table", "good.block", "marsh.block", "-o", "no/class"), "There is no folder `no`"),
        (
            ("tide-table", "good.block", "marsh.block", "-o", "marsh.block"),
            "`marsh.block` is not a folder, and several",
        ),
        (("tide-table", "good.block", "-o", "marsh.block/"), "`marsh.block` is not a folder"),
        (("tide-table,buoy-list", "good.block", "-o", "/proc/class"), "`/proc/class` cannot be written"),
        (("tide-table", "good.block", "-o", "c", "--language", "xx"), "There are no words in `xx`"),
    ],
)
def test_slip_in_what_is_typed_makes_nothing(command, marsh, folder, arguments, sentence) -> None:
    for name in ("good", "Good"):
        (folder / "deep").mkdir(exist_ok=True)
        (folder / "deep" / f"{name}.block").write_text(GOOD)
    before = sorted(folder.rglob("*"))
    ran = command("make", *arguments)
    assert (ran.code, ran.out) == (2, "")
    assert sentence in ran.err
    assert sorted(folder.rglob("*")) == before


def test_folder_that_would_be_empty_is_not_left_behind(command, good, folder) -> None:
    assert command("make", "sunk,sunk.txt", good, "-o", "class").code == 1
    assert command("make", "sunk", good, "-o", "class/").code == 1
    assert not (folder / "class").exists()


def test_setting_goes_to_the_outputs_that_have_it(command, good, monkeypatch) -> None:
    seen = {}

    def noting(name: str):
        def make(plan: object, options) -> tuple[OutputFile, ...]:
            seen[name] = options.settings
            return (OutputFile("", b""),)

        return make

    outputs = (an_output("a", make=noting("a"), settings=TIDE.settings), an_output("b", make=noting("b")))
    monkeypatch.setattr("blocklang.cli.plugged.Plugged.outputs", lambda self: outputs)
    command("make", "a,b", good, "-o", "class", "--set", "hour=dawn")
    assert seen == {"a": (("hour", "dawn"),), "b": ()}


def test_folder_stands_for_the_blocks_in_it(command, good, marsh, folder) -> None:
    (folder / "deep").mkdir()
    (folder / "deep" / "reed.block").write_text(GOOD)
    assert command("make", "tide-table", ".", "-o", "class").code == 0
    assert list(files_in(folder / "class")) == ["good.txt", "marsh.txt", "reed.txt"]


def test_pack_stands_for_the_blocks_in_it(command, good, marsh, folder) -> None:
    assert command("pack", good, marsh, "-o", "tides").code == 0
    assert command("make", "tide-table", "tides.pack", "-o", "class").code == 0
    assert list(files_in(folder / "class")) == ["good.txt", "marsh.txt"]
    (folder / "tides.pack").write_bytes(b"not a pack")
    assert command("make", "tide-table", "tides.pack", "-o", "other").err.endswith("Nothing is made of `tides.pack`.\n")


def test_empty_folder_is_told(command, folder) -> None:
    (folder / "empty").mkdir()
    ran = command("make", "tide-table", "empty", "-o", "class")
    assert (ran.code, ran.err) == (2, "There is no block in `empty`.\n")


@pytest.mark.parametrize(
    ("typed", "offered_words"),
    [
        ("b", ["buoy-list", "book"]),
        ("sunk,bu", ["sunk,buoy-list"]),
        ("sunk,buoy-list.", ["sunk,buoy-list.txt", "sunk,buoy-list.csv"]),
    ],
)
def test_shell_completes_outputs_after_a_comma_and_their_formats(typed, offered_words) -> None:
    assert [item.value for item in complete_outputs(None, None, typed)] == offered_words


def test_processes_change_neither_a_byte_nor_a_word(good, marsh, bad, folder) -> None:
    said = []
    for count in ("1", "2"):
        arguments = ("diagram,cutting-list", "marsh.block", "bad.block", "good.block", "whirl", "-o", "class")
        command = [sys.executable, "-m", "blocklang", "make", *arguments, "--processes", count, "--copies", "3"]
        ran = subprocess.run(command, cwd=folder, capture_output=True, text=True, timeout=120, check=False)
        said.append((ran.returncode, ran.stdout, ran.stderr))
        (folder / "class").rename(folder / count)
    assert said[0] == said[1]
    assert said[0][0] == 1 and said[0][2].endswith("not made: diagram of bad; cutting-list of bad.\n")
    assert files_in(folder / "1") == files_in(folder / "2")
    assert len(files_in(folder / "2")) == 6
    assert b"3 blocks" in files_in(folder / "2")["good-cutting-list.txt"]  # what was typed reaches every process


@pytest.mark.parametrize(
    ("items", "asked", "expected"),
    [(1, None, 1), (11, None, 1), (12, None, 2), (84, None, 4), (84, 1, 1), (84, 64, 64), (3, 64, 3), (0, None, 1)],
)
def test_more_processes_are_started_for_more_blocks(monkeypatch, items, asked, expected) -> None:
    monkeypatch.setattr("os.cpu_count", lambda: 4)
    assert processes_for(items, asked) == expected


def test_name_in_the_library_comes_before_a_folder_of_that_name(command, good, folder) -> None:
    (folder / "nine-patch").mkdir()
    good.rename(folder / "nine-patch" / "good.block")
    assert command("make", "tide-table", "nine-patch", "-o", "one/").err == "Wrote one/nine-patch.txt\n"
    assert command("make", "tide-table", "nine-patch/", "-o", "two/").err == "Wrote two/good.txt\n"
