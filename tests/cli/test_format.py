"""`blocklang format` lays files out, and never harms one."""

import io
import sys

import pytest

from blocklang.cli import writing


def test_untidy_file_is_laid_out_once(command, folder, good) -> None:
    untidy = folder / "untidy.block"
    untidy.write_text(good.read_text().replace("fabric fog  background", "fabric   fog background"))
    first = command("format", "untidy.block")
    assert (first.code, first.out, first.err) == (0, "", "untidy.block: laid out\n")
    tidy = untidy.read_bytes()
    second = command("format", "untidy.block")
    assert (second.code, second.err, untidy.read_bytes()) == (0, "", tidy)


def test_check_changes_nothing_and_says_which(command, folder, good) -> None:
    untidy = folder / "untidy.block"
    untidy.write_bytes(good.read_bytes().replace(b"size 9 in", b"size   9 in"))
    before = untidy.read_bytes()
    ran = command("format", "--check", "untidy.block")
    assert (ran.code, ran.err, untidy.read_bytes()) == (1, "untidy.block would change\n", before)


@pytest.mark.parametrize("text", [b'block "X\nsize ???\n', b"\xff\xfe not text", b"rows\n"])
def test_file_with_mistakes_is_left_alone(command, folder, text) -> None:
    path = folder / "wrong.block"
    path.write_bytes(text)
    ran = command("format", "wrong.block")
    assert ran.code == 1
    assert ran.err
    assert path.read_bytes() == text


def test_standard_input_goes_to_standard_output(command, good, monkeypatch) -> None:
    tidy = command("format", good)
    assert tidy.code == 0
    untidy = good.read_bytes().replace(b"size 9 in", b"size   9 in")
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(untidy)))
    assert command("format", "-").raw == good.read_bytes()


def test_library_that_ships_is_laid_out(command, folder) -> None:
    from blocklang.library import Library

    ran = command("format", "--check", *sorted(Library().everything()))
    assert (ran.code, ran.err) == (0, "")


def test_write_that_fails_leaves_the_file_and_no_draft(command, folder, good, monkeypatch) -> None:
    untidy = folder / "untidy.block"
    untidy.write_bytes(good.read_bytes().replace(b"size 9 in", b"size   9 in"))
    before = untidy.read_bytes()

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(writing, "_mode_for", full)
    ran = command("format", "untidy.block")
    assert (ran.code, ran.err) == (2, "`untidy.block` cannot be written: no space left on device.\n")
    assert untidy.read_bytes() == before
    assert sorted(path.name for path in folder.iterdir()) == ["good.block", "untidy.block"]
