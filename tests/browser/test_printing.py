"""The sheet printed from the browser: the right paper, no step on two pages, and boxes to tick with a pencil."""

import re
import unicodedata

import pypdfium2
import pytest
from blocklang_sewing_sheet.contents import write_sheet

from blocklang.hooks import OutputOptions, Paper
from tests.browser.test_reading import NAMES
from tests.library.plans import plan_of

SIZES = {Paper.LETTER: (612, 792), Paper.A4: (595.28, 841.89)}
KINDS = [(name, Paper.LETTER, False) for name in NAMES] + [
    ("log-cabin", Paper.A4, False),
    ("eight-pointed-star", Paper.A4, True),
    ("drunkards-path", Paper.LETTER, True),
]


def printed(page):
    return page.pdf(prefer_css_page_size=True, print_background=False)


def text_of(page):
    return page.get_textpage().get_text_range()


def close(text):
    """Return a text without what differs between lines and printed lines: spaces, joined letters, broken-off hyphens."""
    return re.sub(r"[\s\-\x02\ufffe]+", "", unicodedata.normalize("NFKC", text))


@pytest.mark.parametrize(("name", "paper", "large"), KINDS)
def test_no_step_is_on_two_pages(open_page, sheet, name, paper, large):
    pages = list(pypdfium2.PdfDocument(printed(open_page(sheet(name, paper=paper, large_print=large)))))
    for page in pages:
        assert page.get_size() == pytest.approx(SIZES[paper], abs=1)
    texts = [close(text_of(page)) for page in pages]
    feet = [f"{number}/{len(texts)}" for number in range(1, len(texts) + 1)]
    assert all(map(str.startswith, texts, feet))
    texts = list(map(str.removeprefix, texts, feet))
    steps = write_sheet(plan_of(name), OutputOptions("html")).steps
    for step in steps:
        (found,) = filter(None, map(head_of(step).search, texts))
        told = found.string[found.end() :]
        later = filter(None, (head_of(other).search(told) for other in steps))
        told = told[: min((other.start() for other in later), default=None)]
        assert all(close(sentence) in told for sentence in (*step.sentences, step.check))


def head_of(step):
    return re.compile(rf"(?<!\d){step.number}{re.escape(close(step.title + step.parts + step.make))}")


def test_ticks_print_as_empty_boxes(open_page, sheet):
    page = open_page(sheet("whirl"))
    empty = images(printed(page))
    for box in page.get_by_role("checkbox").all():
        box.check()
    assert images(printed(page)) == empty


def test_what_only_a_screen_needs_is_not_printed(open_page, sheet):
    page = open_page(sheet("whirl"))
    text = "".join(map(text_of, pypdfium2.PdfDocument(printed(page))))
    assert "Done" in text
    assert "steps done" not in text
    assert "Clear all" not in text
    page.emulate_media(media="print")
    assert not page.get_by_role("navigation").is_visible()
    assert not page.locator(".narrow").first.is_visible()


@pytest.mark.parametrize(("large", "least", "least_in_pictures"), [(False, 9, 8), (True, 12, 10)])
def test_nothing_is_printed_too_small(open_page, sheet, large, least, least_in_pictures):
    page = open_page(sheet("eight-pointed-star", large_print=large), 680)  # as wide as the paper between its margins
    page.emulate_media(media="print")
    sizes = page.evaluate("""() => [...document.querySelectorAll("body *:not(svg, svg *, script)")]
        .filter(one => one.innerText?.trim()).map(one => parseFloat(getComputedStyle(one).fontSize) * 0.75)""")
    figures = page.evaluate("""() => [...document.querySelectorAll("svg text")].filter(one => one.checkVisibility())
        .map(one => parseFloat(one.getAttribute("font-size")) * one.getScreenCTM().a * 0.75)""")
    assert min(sizes) >= least
    assert min(figures) >= least_in_pictures


def images(pdf):
    return [page.render(scale=1.5).to_numpy().tobytes() for page in pypdfium2.PdfDocument(pdf)]
