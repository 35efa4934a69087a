"""Files are whole or untouched."""

from pathlib import Path

import pytest

from blocklang.cli.failing import CommandFault
from blocklang.cli.writing import write_files


def test_files_are_written_together(tmp_path) -> None:
    write_files({tmp_path / "a": b"1", tmp_path / "b": b"2"})
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {"a": b"1", "b": b"2"}


def test_none_is_touched_when_one_cannot_be_written(tmp_path) -> None:
    (tmp_path / "a").write_bytes(b"old")
    with pytest.raises(CommandFault, match="There is no folder"):
        write_files({tmp_path / "a": b"new", tmp_path / "missing" / "b": b"2"})
    assert {path.name: path.read_bytes() for path in tmp_path.iterdir()} == {"a": b"old"}


@pytest.mark.parametrize(
    ("path", "sentence"),
    [
        ("/dev/null", "is not a plain file: use `-o -`"),
        ("/", "is a folder: give a file name"),
        ("/proc/sheet.pdf", "cannot be written"),
        ("/no/such/folder/sheet.pdf", "There is no folder `/no/such/folder`"),
    ],
)
def test_place_that_cannot_be_written_is_one_sentence(path, sentence) -> None:
    with pytest.raises(CommandFault, match=sentence):
        write_files({Path(path): b"x"})


def test_mode_of_a_file_is_kept_and_a_link_stays_a_link(tmp_path) -> None:
    real, link = tmp_path / "real", tmp_path / "link"
    real.write_bytes(b"old")
    real.chmod(0o640)
    link.symlink_to(real)
    write_files({link: b"new"})
    assert link.is_symlink()
    assert (real.read_bytes(), real.stat().st_mode & 0o777) == (b"new", 0o640)


def test_new_file_gets_the_usual_mode(tmp_path) -> None:
    (tmp_path / "usual").write_bytes(b"")
    write_files({tmp_path / "new": b"x"})
    assert (tmp_path / "new").stat().st_mode == (tmp_path / "usual").stat().st_mode
