"""`blocklang check` says what is wrong, where, and with which exit code."""

import io
import json
import sys

import pytest

from blocklang.library import Library


def test_good_file_is_fine(command, good) -> None:
    ran = command("check", "good.block")
    assert (ran.code, ran.out, ran.err) == (0, "good.block: fine\n", "")


def test_bad_file_is_shown_with_its_place_on_standard_error(command, bad) -> None:
    ran = command("check", "bad.block")
    assert (ran.code, ran.out) == (1, "")
    assert "bad.block, line 11, column 3" in ran.err
    assert "`deap`" in ran.err
    assert "`deep`" in ran.err


def test_several_files_are_all_looked_at(command, good, bad) -> None:
    ran = command("check", "bad.block", "good.block", "nine-patch")
    assert ran.code == 1
    assert ran.out == "good.block: fine\nnine-patch: fine\n"


def test_json_has_every_message_on_standard_output(command, bad) -> None:
    ran = command("check", "bad.block", "--format", "json")
    assert (ran.code, ran.err) == (1, "")
    text = json.dumps(json.loads(ran.out))
    assert "unknown-fabric" in text


def test_short_messages_are_one_line_each_with_the_place_in_front(command, bad) -> None:
    ran = command("check", "bad.block", "--format", "short")
    assert (ran.code, ran.err.count("\n")) == (1, 1)
    assert ran.err.startswith("bad.block:11:3: error: ")


def test_patches_that_leave_a_gap_are_an_error(command, folder, good) -> None:
    gap = folder / "gap.block"
    gap.write_text(good.read_text().replace("  fog  deep fog", "  fog  .    fog"))
    ran = command("check", gap)
    assert ran.code == 1
    assert "gap" in ran.err.lower()


def test_missing_file_is_a_fault_of_the_command_line(command, folder) -> None:
    ran = command("check", "harbour.block")
    assert (ran.code, ran.out) == (2, "")
    assert ran.err.startswith("There is no file `harbour.block`.")


def test_unknown_name_brings_the_nearest(command, folder) -> None:
    ran = command("check", "nine-pach")
    assert ran.code == 2
    assert "There is no block `nine-pach` in the library" in ran.err
    assert "`nine-patch`" in ran.err


def test_folder_instead_of_a_file_is_one_sentence(command, folder) -> None:
    (folder / "folder.block").mkdir()
    ran = command("check", "folder.block")
    assert ran.code == 1
    assert "folder" in ran.err
    assert "Traceback" not in ran.err


def test_standard_input_can_be_checked(command, folder, monkeypatch, good) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(good.read_bytes())))
    assert command("check", "-").code == 0


@pytest.mark.parametrize("option", [("--size", "12 in"), ("--size", "15cm"), ("--fabric", "background=#ffffff")])
def test_block_can_be_changed_from_the_command_line(command, good, option) -> None:
    ran = command("check", good, *option)
    assert (ran.code, ran.err) == (0, "")


@pytest.mark.parametrize("option", [("--size", "large"), ("--fabric", "background"), ("--fabric", "sky=blue-ish")])
def test_change_that_makes_no_sense_is_not_taken(command, good, option) -> None:
    ran = command("check", good, *option)
    assert ran.code in (1, 2)
    assert ran.err
    assert "Traceback" not in ran.err


def test_unknown_command_and_unknown_option_are_faults_of_the_command_line(command) -> None:
    assert command("chek").code == 2
    assert "Did you mean `check`?" in command("chek").err
    assert command("check", "--colour", "x").code == 2


def test_interrupting_is_said_in_one_word(command, good, monkeypatch) -> None:
    def interrupted(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("blocklang.cli.walking.Walk.check", interrupted)
    ran = command("check", good)
    assert (ran.code, ran.err.strip()) == (130, "Stopped.")


def test_every_library_block_is_fine(command, folder) -> None:
    names = sorted(Library().everything())
    assert names
    ran = command("check", *names)
    assert (ran.code, ran.out) == (0, "".join(f"{name}: fine\n" for name in names))
