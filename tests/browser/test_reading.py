"""The sheet on a telephone, a tablet and a desk: it fits, everybody can read it, and it asks nothing of the network."""

import pytest

from tests.browser.checker import violations
from tests.library.plans import plan_of

NAMES = ("eight-pointed-star", "log-cabin", "hexagon-flower-7", "drunkards-path", "whirl")
WIDTHS = (360, 768, 1280)
STICKING_OUT = """() => [...document.body.querySelectorAll("*")].filter(one => !one.closest("svg svg, svg *, .unseen"))
    .filter(one => one.getBoundingClientRect().right > document.documentElement.clientWidth + 0.5 || one.getBoundingClientRect().left < -0.5)
    .map(one => one.outerHTML.slice(0, 80))"""
SMALLEST = """() => Math.min(...[...document.querySelectorAll("svg text")].filter(one => one.checkVisibility())
    .map(one => parseFloat(one.getAttribute("font-size")) * one.getScreenCTM().a))"""


def at_every_width(page):
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 800})
        yield width


@pytest.mark.parametrize("name", NAMES)
def test_nothing_sticks_out_and_every_figure_can_be_read(open_page, sheet, name):
    page = open_page(sheet(name))
    for width in at_every_width(page):
        assert page.evaluate("document.documentElement.scrollWidth") == width
        assert page.evaluate(STICKING_OUT) == []
        assert page.evaluate(SMALLEST) >= 9  # pixels


def test_large_print_fits_too_and_is_larger(open_page, sheet):
    plain = open_page(sheet("eight-pointed-star"))
    large = open_page(sheet("eight-pointed-star", large_print=True))
    for width in at_every_width(large):
        assert large.evaluate("document.documentElement.scrollWidth") == width
        assert large.evaluate(STICKING_OUT) == []
        assert large.evaluate(SMALLEST) >= 12  # pixels
    sizes = [page.evaluate("parseFloat(getComputedStyle(document.body).fontSize)") for page in (plain, large)]
    assert sizes[1] >= 1.25 * sizes[0]
    assert sizes[1] >= 20


@pytest.mark.parametrize("name", NAMES)
def test_the_accessibility_checker_finds_nothing(open_page, sheet, name):
    assert violations(open_page(sheet(name))) == []


def test_the_accessibility_checker_finds_nothing_on_a_telephone_with_ticks(open_page, sheet):
    page = open_page(sheet("eight-pointed-star", large_print=True), 360)
    page.get_by_role("checkbox", name="Done: Step 1", exact=True).check()
    assert violations(page) == []


def test_the_accessibility_checker_does_find_things(open_page, sheet):
    page = open_page(sheet("whirl"))
    page.evaluate("document.querySelector('label').replaceWith(document.querySelector('input'))")
    page.evaluate("document.querySelector('input').removeAttribute('aria-label')")
    page.evaluate("document.querySelector('figure svg title').remove()")
    page.evaluate("document.querySelector('h1').style.color = '#bbb'")
    found = {fault.split(":")[0] for fault in violations(page)}
    assert {"label", "svg-img-alt", "color-contrast"} <= found


@pytest.mark.parametrize("name", NAMES)
def test_headings_and_landmarks_are_in_order(open_page, sheet, name):
    page = open_page(sheet(name))
    levels = page.evaluate("[...document.querySelectorAll('h1,h2,h3,h4,h5,h6')].map(one => Number(one.tagName[1]))")
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(later <= earlier + 1 for earlier, later in zip(levels, levels[1:], strict=False))
    marks = page.evaluate("[...document.body.children].map(one => one.tagName).filter(name => name != 'SCRIPT')")
    assert marks == ["HEADER", "NAV", "MAIN", "FOOTER"]
    for step in plan_of(name).steps:
        assert page.get_by_role("article", name=f"Step {step.number}: {step.title}").count() == 1


@pytest.mark.parametrize("name", NAMES)
def test_no_request_leaves_the_page(chromium, sheet, name):
    context, asked = chromium.new_context(), []
    context.route("**/*", lambda route: (asked.append(route.request.url), route.continue_()))
    page = context.new_page()
    page.goto(sheet(name).as_uri())
    page.get_by_role("checkbox", name="Done: Step 1", exact=True).check()
    page.wait_for_timeout(300)  # the browser writes down what it keeps in its own time
    page.reload()
    page.emulate_media(media="print")
    page.wait_for_timeout(100)
    context.close()
    assert asked == [sheet(name).as_uri()] * 2


def test_the_policy_stops_what_is_not_the_pages_own(chromium, sheet):
    context, asked, said = chromium.new_context(), [], []
    page = context.new_page()
    page.on("console", lambda message: said.append(message.text))
    page.goto(sheet("whirl").as_uri())
    context.route("**/*", lambda route: (asked.append(route.request.url), route.abort()))
    page.evaluate("""() => {
        document.body.insertAdjacentHTML("beforeend", '<img src="other.png" onerror="window.ran = 1"><b style="color:red">b</b>');
        const script = document.createElement("script");
        script.textContent = "window.ran = 1";
        document.body.append(script);
    }""")
    page.wait_for_timeout(100)
    assert page.evaluate("window.ran") is None
    assert asked == []
    assert sum("Content Security Policy" in text for text in said) >= 3
    context.close()


def test_less_movement_where_that_is_asked_for(open_page, sheet):
    for wish, found in (("reduce", "auto"), ("no-preference", "smooth")):
        page = open_page(sheet("whirl"), reduced_motion=wish)
        assert page.evaluate("getComputedStyle(document.documentElement).scrollBehavior") == found
        moving = page.evaluate("getComputedStyle(document.querySelector('.step')).transitionDuration")
        assert (moving == "0s") == (wish == "reduce")
