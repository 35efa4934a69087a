"""Ticking off steps: by hand, by keyboard, by ear, after a reload, and without a script."""

import pytest

from blocklang.hooks import Paper
from tests.library.plans import plan_of

STAR = "eight-pointed-star"


def box(page, step):
    return page.get_by_role("checkbox", name=f"Done: Step {step}", exact=True)


def ticked(page):
    return page.evaluate("[...document.querySelectorAll('input:checked')].map(one => Number(one.dataset.step))")


def test_ticks_survive_a_reload(open_page, sheet):
    page = open_page(sheet(STAR))
    assert page.get_by_role("status").inner_text() == "0 of 5 steps done"
    box(page, 1).check()
    box(page, 3).check()
    box(page, 4).check()
    box(page, 4).uncheck()
    page.wait_for_timeout(300)  # the browser writes down what it keeps in its own time
    page.reload()
    assert ticked(page) == [1, 3]
    assert page.get_by_role("status").inner_text() == "2 of 5 steps done"


def test_ticks_are_the_blocks_own(open_page, sheet):
    page = open_page(sheet(STAR))
    box(page, 2).check()
    page.goto(sheet("whirl").as_uri())
    assert ticked(page) == []
    page.goto(sheet(STAR, large_print=True, paper=Paper.A4).as_uri())
    assert ticked(page) == [2]


def test_two_windows_tell_the_same(open_page, sheet):
    page = open_page(sheet(STAR))
    other = page.context.new_page()
    other.goto(sheet(STAR).as_uri())
    box(page, 5).check()
    other.wait_for_function("document.querySelectorAll('input:checked').length == 1")
    assert ticked(other) == [5]


def test_the_keyboard_alone_can_tick(open_page, sheet):
    page = open_page(sheet(STAR))
    reached = []
    for _ in range(30):
        page.keyboard.press("Tab")
        step = page.evaluate("document.activeElement.dataset.step ?? null")
        if step:
            assert page.evaluate("getComputedStyle(document.activeElement).outlineStyle") == "solid"
            assert page.evaluate("parseFloat(getComputedStyle(document.activeElement).outlineWidth)") >= 2
            reached.append(step)
            page.keyboard.press("Space")
        if page.evaluate("document.activeElement.id") == "clear":
            break
    assert reached == ["1", "2", "3", "4", "5"]
    assert page.get_by_role("status").inner_text() == "5 of 5 steps done"
    page.keyboard.press("Enter")
    assert ticked(page) == []
    assert page.evaluate("document.activeElement.dataset.step") == "1"


def test_what_has_the_focus_is_not_under_the_count(open_page, sheet):
    page = open_page(sheet(STAR), 360)
    page.emulate_media(reduced_motion="reduce")  # else the page may still be gliding there when it is measured
    for step in (5, 4, 3, 2, 1):
        box(page, step).focus()
        below = page.evaluate("document.getElementById('count').getBoundingClientRect().bottom")
        assert page.evaluate("document.activeElement.getBoundingClientRect().top") >= below


def test_a_finger_finds_the_box(open_page, sheet):
    page = open_page(sheet(STAR), 360)
    for label in page.locator("label").all():
        size = label.bounding_box()
        assert min(size["width"], size["height"]) >= 44


def test_the_count_is_told_politely(open_page, sheet):
    page = open_page(sheet(STAR))
    tree = page.locator("main").aria_snapshot()
    assert "- status: 0 of 5 steps done" in tree
    assert [f'checkbox "Done: Step {step}"' in tree for step in (1, 2, 3, 4, 5)] == [True] * 5


@pytest.mark.parametrize("name", [STAR, "log-cabin"])
def test_without_a_script_everything_can_be_read_and_ticked(open_page, sheet, name):
    page = open_page(sheet(name), java_script_enabled=False)
    said = page.locator("body").inner_text().replace("\N{NO-BREAK SPACE}", " ")
    for step in plan_of(name).steps:
        assert step.title in said
    assert "steps done" not in said
    assert not page.locator("#clear").is_visible()
    box(page, 1).check()
    assert box(page, 1).is_checked()


def test_where_nothing_is_kept_it_still_counts(open_page, sheet):
    page = open_page(sheet(STAR))
    page.add_init_script("Object.defineProperty(window, 'localStorage', {get() { throw new DOMException('no'); }})")
    page.wait_for_timeout(300)  # the browser writes down what it keeps in its own time
    page.reload()
    box(page, 1).check()
    assert page.get_by_role("status").inner_text() == "1 of 5 steps done"


def test_what_is_kept_may_be_anything(open_page, sheet):
    page = open_page(sheet("whirl"))
    for kept in ("null", "{}", "7", "[", '["1", {}, 99]'):
        page.evaluate("kept => localStorage.setItem(document.querySelector('main').dataset.ticks, kept)", kept)
        page.wait_for_timeout(300)  # the browser writes down what it keeps in its own time
        page.reload()
        assert ticked(page) == []
        assert page.get_by_role("status").inner_text() == "0 of 5 steps done"
