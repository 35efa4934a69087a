"""`blocklang make gallery`, as people type it."""

from pathlib import Path

import pytest

from blocklang.cli.program import run
from tests.gallery.reading import Page

HOSTILE = """block "</script><script>alert(1)</script>" language 1
by "Odile Fenwick" licence CC-BY-4.0
size 6 in
fabric fog as F background light #e8eef2
fabric deep as D accent dark #1f3a5f
rows
  F D
  D F
end
"""
SETTINGS = ("--set", "sheets=no", "--set", "sizes=6in")


def tree(folder: Path) -> dict[str, bytes]:
    return {path.relative_to(folder).as_posix(): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


@pytest.fixture
def here(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    return tmp_path


def test_one_process_or_two_make_the_same_bytes(here, capsys):
    for count in ("1", "2"):
        asked = [
            "make",
            "gallery",
            "whirl",
            "nine-patch",
            "ohio-star",
            "flying-geese",
            "-o",
            count,
            "--processes",
            count,
            *SETTINGS,
        ]
        assert run(asked) == 0, capsys.readouterr().err
    assert tree(here / "1") == tree(here / "2")
    assert "index.html" in tree(here / "1")


def test_a_pack_of_a_strangers_blocks(here, capsys):
    (here / "harmless.block").write_text(HOSTILE, encoding="utf-8")
    assert run(["pack", "harmless.block", "whirl", "-o", "tides"]) == 0
    (here / "harmless.block").unlink()
    assert run(["make", "gallery", "tides.pack", "-o", "site", *SETTINGS]) == 0, capsys.readouterr().err
    assert capsys.readouterr().err.endswith("Wrote site: 11 files of 2 blocks.\n")
    for name in ("index.html", "blocks/harmless.html", "blocks/whirl.html"):
        page = Page((here / "site" / name).read_text("utf-8"))
        assert page.faults == []
        assert len(page.all("script")) == 1
    assert (here / "site/blocks/harmless/harmless.block").read_text("utf-8") == HOSTILE


def test_a_wrong_size_is_one_sentence(here, capsys):
    assert run(["make", "gallery", "whirl", "nine-patch", "-o", "site", "--set", "sizes=six"]) == 1
    said = capsys.readouterr().err
    assert said.count("`six` is no size: write --set sizes=6in,9in,12in.") == 1
    assert not (here / "site").exists()


def test_a_block_that_needs_no_template_is_not_complained_about(here, capsys):
    assert run(["make", "gallery", "nine-patch", "-o", "site", *SETTINGS]) == 0
    assert capsys.readouterr().err == "Wrote site: 6 files of 1 block.\n"


def test_what_was_typed_counts_for_every_page(here, capsys):
    typed = ["--size", "8in", "--fabric", "background=#aabbcc", "--copies", "12", *SETTINGS]
    assert run(["make", "gallery", "nine-patch", "-o", "site", *typed]) == 0, capsys.readouterr().err
    page = Page((here / "site/blocks/nine-patch.html").read_text("utf-8"))
    told = page.all("main")[0].text.replace("\N{NO-BREAK SPACE}", " ")
    assert "Nine Patch, 8 in square finished" in told
    assert "The cutting is for 12 blocks" in told
    assert "#aabbcc" in page.html
