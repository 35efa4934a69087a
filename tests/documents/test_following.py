"""Every command of README.md and docs/ can be typed as it stands, in the order in which it stands there.

Pages with tests of their own are left to them. Searching the library is left to tests/cli, because an
index of all blocks has to be made for it.
"""

import re
from pathlib import Path

import pytest

from tests.cli.conftest import command  # noqa: F401  the fixture that runs a command line
from tests.support.answers import holds

ROOT = Path(__file__).parents[2]
WITH_TESTS_OF_THEIR_OWN = ("tutorial.md", "cookbook.md", "gallery.md", "making.md")
PAGES = [
    ROOT / "README.md",
    *(page for page in sorted(ROOT.glob("docs/*.md")) if page.name not in WITH_TESTS_OF_THEIR_OWN),
]
TYPED = re.compile(
    r"^\$ (?P<line>blocklang .*)\n(?P<said>(?:(?!\$ |```).*\n)*)|`(?P<inline>blocklang [a-z]+ [^`]*)`", re.MULTILINE
)
FORMS = re.compile(r"\b(?:FILE|BLOCK|NAME|FOLDER)\b|^blocklang (?:library|completion)\b|\bold\.pack\b|--watch")


def typed(page: Path) -> list[tuple[str, str]]:
    """Return a page's commands, each with what it is shown to answer; those that only show a form are left out."""
    text = page.read_text(encoding="utf-8")
    found = [
        (match["line"] or " ".join(match["inline"].split()), match["said"] or "") for match in TYPED.finditer(text)
    ]
    return [(line, said) for line, said in found if not FORMS.search(line)]


FOLLOWED = [page for page in PAGES if typed(page)]


def words_of(line: str) -> list[str]:
    import shlex

    return shlex.split(line)[1:]


@pytest.mark.parametrize("page", FOLLOWED, ids=lambda page: page.name)
def test_a_page_can_be_followed(tmp_path, monkeypatch, command, page: Path) -> None:  # noqa: F811
    monkeypatch.chdir(tmp_path)
    if page.name != "README.md":
        assert command("new", "harbour-steps").code == 0
    for line, said in typed(page):
        ran = command(*words_of(line))
        assert ran.code == (1 if "error: " in said else 0), (line, ran.err)
        assert not said or holds(ran.out + ran.err, said), (line, ran.out + ran.err)


def test_the_pages_that_tell_commands_are_followed() -> None:
    assert {"README.md", "sharing.md", "thickness.md", "foundation.md"} <= {page.name for page in FOLLOWED}
    assert sum(len(typed(page)) for page in FOLLOWED) >= 15
