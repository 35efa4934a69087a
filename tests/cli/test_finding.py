"""What a file may place: names in the library's order, paths that stay inside."""

import pytest

from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.library import Library, Shelf
from tests.cli.conftest import GOOD


@pytest.fixture
def shelf(tmp_path):
    """A library folder with one block in a folder of its own, and one block outside."""
    (tmp_path / "shelf" / "steps").mkdir(parents=True)
    (tmp_path / "shelf" / "steps" / "harbour.block").write_text(GOOD)
    (tmp_path / "secret.block").write_text(GOOD)
    return Shelf("test", tmp_path / "shelf")


def placing(path) -> SourceText:
    return SourceText(str(path), "")


def test_name_is_found_from_anywhere(shelf) -> None:
    found = Library(shelves=(shelf,)).find("harbour", placing("anywhere.block"))
    assert isinstance(found, SourceText)
    assert found.text == GOOD


def test_first_shelf_wins(shelf, tmp_path) -> None:
    (tmp_path / "second").mkdir()
    (tmp_path / "second" / "harbour.block").write_text("second")
    library = Library(shelves=(Shelf("second", tmp_path / "second"), shelf))
    assert library.entry("harbour").shelf.origin == "second"


def test_plugins_are_asked_only_when_a_name_is_missing(shelf, tmp_path) -> None:
    (tmp_path / "theirs").mkdir()
    (tmp_path / "theirs" / "marsh.block").write_text(GOOD)
    asked = []

    def more_folders():
        asked.append(1)
        return (("saltmarsh", tmp_path / "theirs"),)

    library = Library(shelves=(shelf,), more_folders=more_folders)
    assert library.entry("harbour") is not None
    assert asked == []
    assert library.entry("marsh").shelf.origin == "plugin saltmarsh"
    assert library.entry("tide") is None
    assert asked == [1]


def test_path_beside_the_placing_file_is_found(tmp_path) -> None:
    (tmp_path / "parts").mkdir()
    (tmp_path / "parts" / "wing.block").write_text(GOOD)
    found = Library(home=tmp_path, shelves=()).find("parts/wing.block", placing(tmp_path / "bird.block"))
    assert isinstance(found, SourceText)


def test_path_from_a_part_back_to_the_home_folder_is_found(tmp_path) -> None:
    (tmp_path / "wing.block").write_text(GOOD)
    library = Library(home=tmp_path, shelves=())
    assert isinstance(library.find("../wing.block", placing(tmp_path / "parts" / "x.block")), SourceText)


@pytest.mark.parametrize("name", ["../secret.block", "{outside}/secret.block", "link.block", "linked/secret.block"])
def test_path_that_leads_out_is_refused(shelf, tmp_path, name) -> None:
    home = tmp_path / "home"
    home.mkdir()
    (home / "link.block").symlink_to(tmp_path / "secret.block")
    (home / "linked").symlink_to(tmp_path)
    library = Library(home=home, shelves=(shelf,))
    found = library.find(name.format(outside=tmp_path), placing(home / "a.block"))
    assert isinstance(found, Diagnostic)
    assert found.code == "outside-the-library"


def test_library_block_cannot_reach_the_home_folder(shelf, tmp_path) -> None:
    library = Library(home=tmp_path, shelves=(Shelf("test", shelf.path),))
    elsewhere = Library(home=tmp_path / "home", shelves=(shelf,))
    assert isinstance(elsewhere.find("../../secret.block", placing(shelf.path / "steps" / "harbour.block")), Diagnostic)
    assert library.find("harbour.block", placing(shelf.path / "steps" / "x.block")) is not None


def test_link_in_the_library_that_leads_out_is_passed_over(shelf, tmp_path) -> None:
    (shelf.path / "leak.block").symlink_to(tmp_path / "secret.block")
    assert Library(shelves=(shelf,)).names() == ("harbour",)


def test_missing_path_is_not_found(tmp_path) -> None:
    assert Library(home=tmp_path, shelves=()).find("none.block", placing(tmp_path / "a.block")) is None


def test_nearest_names_are_suggested() -> None:
    assert Library().suggestions("Nine Pach")[0] == "nine-patch"


def test_no_more_files_are_listed_than_the_bound(shelf, monkeypatch) -> None:
    for number in range(4):
        (shelf.path / f"tide-{number}.block").write_text(GOOD)
    monkeypatch.setattr("blocklang.library.MOST_LISTED", 5)
    assert len(Library(shelves=(shelf,)).names()) == 5
    (shelf.path / "tide-4.block").write_text(GOOD)
    assert len(Library(shelves=(shelf,)).names()) == 5
