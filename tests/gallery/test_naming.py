"""Files in a gallery have names that every system has room for, and no two blocks share one."""

import pytest
from blocklang_gallery.naming import file_stem

from blocklang.packs.file_names import fault_of_path


@pytest.mark.parametrize("name", ["whirl", "ohio-star", "double-irish-chain-a", "economy-9", "a"])
def test_a_plain_name_stays(name):
    assert file_stem(name) == name


STRANGE = [
    "Whirl", "whirl ", "wh irl", "-whirl", "whirl-", "con", "lpt1", "com9", "étoile", "ст", "..", "a/b", "a\\b", 'a"b', "<b>", "",
    "a:b", "aux", "x" * 200, "x" * 41, "a\u202eb", "a\nb", "star?", "star*", "\ud800", "a--b",
]  # fmt: skip


@pytest.mark.parametrize("name", STRANGE)
def test_a_strange_name_is_made_plain(name):
    stem = file_stem(name)
    assert stem != name
    assert len(stem) <= 40
    assert stem.isascii()
    for path in (f"blocks/{stem}.html", f"blocks/{stem}/{stem}-colouring-page.pdf"):
        assert fault_of_path(path) == ""


def test_no_two_names_share_a_file():
    names = [*STRANGE, "whirl", "WHIRL", "wHirl", "wh-irl", "b", "etoile"]
    assert len({file_stem(name) for name in names}) == len(names)
