"""Other colours on the page of a block: painted at once, kept in this browser, told as a command that makes them."""

import re

import pytest

from blocklang.cli.program import run
from tests.browser.test_gallery import gallery

__all__ = ["gallery"]

STAR = "blocks/eight-pointed-star.html"


def choose(page, fabric, colour):
    page.locator(f"input[data-fabric={fabric}]").fill(colour)


def fills(page, number):
    return page.evaluate(f"[...document.querySelectorAll('.cloth-{number} > *')].map(one => one.getAttribute('fill'))")


def line(page):
    return page.locator("#line").inner_text()


def test_a_colour_shows_wherever_the_fabric_does(open_page, gallery):
    page = open_page(gallery / STAR)
    others = [fills(page, number) for number in (1, 2, 3)]
    assert set(fills(page, 0)) == {"#e8eef2"}
    choose(page, "fog", "#f3d9a4")
    assert set(fills(page, 0)) == {"#f3d9a4"}
    assert len(fills(page, 0)) == 4  # the picture, and a swatch for each of three sizes
    assert [fills(page, number) for number in (1, 2, 3)] == others


def test_lines_between_dark_patches_stay_light(open_page, gallery):
    page = open_page(gallery / "blocks/ohio-star.html")
    inks = """() => [...document.querySelectorAll("#picture [class^=edge]")].map(one => one.firstElementChild?.getAttribute("stroke")).filter(Boolean)"""
    before = page.evaluate(inks)
    assert before == sorted(before, key="#ffffff #17303f".index)
    for fabric in page.evaluate("[...document.querySelectorAll('input[type=color]')].map(one => one.dataset.fabric)"):
        choose(page, fabric, "#101820")
        assert (inked := page.evaluate(inks)) == sorted(inked, key="#ffffff #17303f".index)
    assert page.evaluate(inks) == ["#ffffff"] * len(before)
    page.get_by_role("button", name="Colours of the block").click()
    assert sorted(page.evaluate(inks)) == sorted(before)


def test_colours_are_kept_and_given_back(open_page, gallery):
    page = open_page(gallery / STAR)
    reset = page.get_by_role("button", name="Colours of the block")
    assert reset.is_disabled()
    choose(page, "deep", "#402060")
    page.wait_for_timeout(300)  # the browser writes down what it keeps in its own time
    page.reload()
    assert set(fills(page, 1)) == {"#402060"}
    reset.click()
    assert set(fills(page, 1)) == {"#1f3a5f"}
    assert page.evaluate("localStorage.length") == 0
    page.wait_for_timeout(300)
    page.reload()
    assert set(fills(page, 1)) == {"#1f3a5f"}
    assert reset.is_disabled()


def test_colours_are_the_blocks_own(open_page, gallery):
    page = open_page(gallery / STAR)
    choose(page, "fog", "#f3d9a4")
    page.goto((gallery / "blocks/whirl.html").as_uri())
    assert set(fills(page, 0)) == {"#e8eef2"}


def test_two_windows_show_the_same(open_page, gallery):
    page = open_page(gallery / STAR)
    other = page.context.new_page()
    other.goto((gallery / STAR).as_uri())
    choose(page, "coral", "#aabbcc")
    other.wait_for_function("document.querySelector('.cloth-3 > *').getAttribute('fill') == '#aabbcc'")


def test_what_is_kept_may_be_anything(open_page, gallery):
    page = open_page(gallery / STAR)
    for kept in (
        "null",
        "[]",
        "7",
        "{",
        '{"fog": 7, "deep": "red", "tide": "#12345", "coral": null}',
        '{"fog": "url(x)"}',
        '"x"',
    ):
        page.evaluate("kept => localStorage.setItem(document.querySelector('main').dataset.keeps, kept)", kept)
        page.wait_for_timeout(300)
        page.reload()
        assert [set(fills(page, number)) for number in range(4)] == [{"#e8eef2"}, {"#1f3a5f"}, {"#5b93a8"}, {"#d9643a"}]


def test_where_nothing_is_kept_it_still_paints(open_page, gallery):
    page = open_page(gallery / STAR)
    page.add_init_script("Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no'); }})")
    page.reload()
    choose(page, "fog", "#f3d9a4")
    assert set(fills(page, 0)) == {"#f3d9a4"}


def test_the_line_says_what_was_chosen(open_page, gallery):
    page = open_page(gallery / STAR)
    plain = "blocklang make sewing-sheet eight-pointed-star.block -o eight-pointed-star.pdf"
    assert line(page) == plain
    choose(page, "fog", "#f3d9a4")
    choose(page, "coral", "#aabbcc")
    page.get_by_label("6 in", exact=True).check()
    assert line(page) == plain.replace(" -o", " --size 6in --fabric fog=#f3d9a4 --fabric coral=#aabbcc -o")
    page.get_by_role("button", name="Colours of the block").click()
    page.get_by_label("as drawn").check()
    assert line(page) == plain


def test_the_line_makes_a_sheet_in_these_colours(open_page, gallery, tmp_path, monkeypatch):
    page = open_page(gallery / "blocks/whirl.html")
    choose(page, "tide", "#aabbcc")
    page.get_by_label("6 in", exact=True).check()
    program, *words = line(page).split(" ")
    assert program == "blocklang"
    (tmp_path / "whirl.block").write_bytes((gallery / "blocks/whirl/whirl.block").read_bytes())
    monkeypatch.chdir(tmp_path)
    assert run([word.replace(".pdf", ".html") for word in words]) == 0
    made = (tmp_path / "whirl.html").read_text("utf-8")
    assert "#aabbcc" in made
    assert "#4d8296" not in made
    assert re.search(r"6\s1/2\sin square", made)


@pytest.mark.parametrize("granted", [["clipboard-read", "clipboard-write"], []])
def test_the_line_can_be_copied(open_page, gallery, granted):
    page = open_page(gallery / STAR, permissions=granted)
    page.get_by_role("button", name="Copy this line").click()
    page.wait_for_function("document.getElementById('said').textContent == 'Copied.'")
    assert page.evaluate("getSelection().toString()") == line(page)


def test_the_keyboard_reaches_every_colour(open_page, gallery):
    page = open_page(gallery / STAR)
    page.get_by_role("link", name="Try other colours").click()
    reached = []
    for _ in range(20):
        page.keyboard.press("Tab")
        reached.append(page.evaluate("document.activeElement.dataset.fabric ?? null"))
        if page.evaluate("document.activeElement.id") == "copy":
            break
    assert [fabric for fabric in dict.fromkeys(reached) if fabric] == ["fog", "deep", "tide", "coral"]
