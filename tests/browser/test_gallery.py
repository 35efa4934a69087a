"""A gallery opened from a disk: finding a block, its sizes, its files, by hand, by keyboard, by ear, and without a script."""

from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from threading import Thread

import pytest

from tests.browser.checker import violations
from tests.browser.test_reading import STICKING_OUT, at_every_width
from tests.gallery.at_hand import gallery_of, of_library, of_text, options_of, small_gallery, write_gallery
from tests.gallery.test_hostile_packs import FILE, WORDS

PAGES = ("index.html", "blocks/eight-pointed-star.html", "blocks/harbour-sampler.html")


@pytest.fixture(scope="session")
def gallery(tmp_path_factory):
    """Return the folder of a small gallery."""
    folder = tmp_path_factory.mktemp("gallery")
    write_gallery(folder, small_gallery())
    return folder


def shown(page):
    return [one.inner_text() for one in page.locator(".card h3").all() if one.is_visible()]


def count(page):
    return page.get_by_role("status").inner_text()


def test_all_blocks_are_there_at_first(open_page, gallery):
    page = open_page(gallery / "index.html")
    assert shown(page) == [
        "Drunkard's Path",
        "Nine Patch",
        "Ohio Star",
        "Harbour Sampler",
        "Eight-pointed Star",
        "Whirl",
    ]
    assert count(page) == "6 of 6 blocks"


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("star", ["Ohio Star", "Eight-pointed Star"]),
        ("  STAR  ohio ", ["Ohio Star"]),
        ("ohio-star", ["Ohio Star"]),
        ("eight pointed", ["Eight-pointed Star"]),
        ("drunkárd", ["Drunkard's Path"]),
        ("fenwick nine patch", ["Nine Patch", "Ohio Star"]),
        ("lighthouse", []),
        (".*", []),
    ],
)
def test_words_are_looked_for(open_page, gallery, typed, found):
    page = open_page(gallery / "index.html")
    page.get_by_role("searchbox").fill(typed)
    assert shown(page) == found
    assert count(page) == f"{len(found)} of 6 blocks"
    assert page.get_by_text("No block is all of that.").is_visible() == (not found)


@pytest.mark.parametrize(
    ("label", "choice", "found"),
    [
        ("Family", "Nine patch", ["Nine Patch", "Ohio Star"]),
        ("Difficulty", "demanding", ["Eight-pointed Star"]),
        ("Patches", "up to 9", ["Nine Patch", "Whirl"]),
        ("Set-in seams", "some", ["Eight-pointed Star"]),
        ("Size as drawn", "over 12 in", ["Harbour Sampler"]),
        ("Fabrics", "over 4", ["Harbour Sampler"]),
    ],
)
def test_each_wish_leaves_what_fits(open_page, gallery, label, choice, found):
    page = open_page(gallery / "index.html")
    page.get_by_role("combobox", name=label).select_option(choice)
    assert shown(page) == found
    assert [one.inner_text() for one in page.locator("main h2").all() if one.is_visible()] != []


def test_wishes_add_up_and_can_be_cleared(open_page, gallery):
    page = open_page(gallery / "index.html")
    page.get_by_role("searchbox").fill("star")
    page.get_by_role("combobox", name="Family").select_option("Nine patch")
    assert shown(page) == ["Ohio Star"]
    assert page.locator("h2", has_text="Stars").is_hidden()
    page.get_by_role("button", name="Clear all").click()
    page.wait_for_function("document.querySelectorAll('.card:not([hidden])').length == 6")
    assert count(page) == "6 of 6 blocks"


def test_wishes_are_there_again_on_the_way_back(open_page, gallery):
    page = open_page(gallery / "index.html")
    page.get_by_role("searchbox").fill("star")
    page.get_by_label("Set-in seams").select_option("some")
    page.get_by_role("link", name="Eight-pointed Star").click()
    assert page.locator("h1").inner_text() == "Eight-pointed Star"
    page.go_back()
    page.wait_for_function("document.querySelectorAll('.card:not([hidden])').length == 1")
    assert page.get_by_role("searchbox").input_value() == "star"
    page.reload()
    assert shown(page) == ["Eight-pointed Star"]


@pytest.mark.parametrize(
    "address", ["#family=nowhere", "#words=%E0%A4%A", "#=", "#words=star&words=ohio", "#family-1", "#size=<b>"]
)
def test_any_address_opens(open_page, gallery, address):
    page = open_page(gallery / "index.html")
    page.goto(f"{(gallery / 'index.html').as_uri()}{address}")
    assert page.locator("h1").inner_text() == "Blocks to sew"
    assert count(page) == f"{len(shown(page))} of 6 blocks"


def test_enter_in_the_search_stays_on_the_page(open_page, gallery):
    page = open_page(gallery / "index.html")
    page.get_by_role("searchbox").fill("whirl")
    page.keyboard.press("Enter")
    assert shown(page) == ["Whirl"]


def test_the_keyboard_alone_finds_and_opens_a_block(open_page, gallery):
    page = open_page(gallery / "index.html")
    page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.name") == "words"
    page.keyboard.type("whirl")
    for _ in range(8):
        page.keyboard.press("Tab")
    assert page.evaluate("document.activeElement.innerText") == "Whirl"
    assert page.evaluate("getComputedStyle(document.activeElement, '::after').outlineStyle") == "solid"
    page.keyboard.press("Enter")
    page.wait_for_url("**/blocks/whirl.html")


def test_every_block_opens_from_its_card_and_leads_back(open_page, gallery):
    page = open_page(gallery / "index.html")
    for title in shown(page):
        page.get_by_role("link", name=title, exact=True).click()
        assert page.locator("h1").inner_text() == title
        page.get_by_role("link", name="All blocks").click()
        assert page.locator("h1").inner_text() == "Blocks to sew"


def test_another_size_is_told_at_once(open_page, gallery):
    page = open_page(gallery / "blocks/nine-patch.html")
    said = page.locator(".size").filter(visible=True)
    assert said.count() == 1
    assert "Cut 5 squares 3 1/2 in." in said.inner_text().replace("\N{NO-BREAK SPACE}", " ")
    page.get_by_label("6 in", exact=True).check()
    assert said.count() == 1
    assert "Nine Patch, 6 in square finished" in said.inner_text().replace("\N{NO-BREAK SPACE}", " ")
    assert "Cut 5 squares 2 1/2 in." in said.inner_text().replace("\N{NO-BREAK SPACE}", " ")
    assert "3 1/2 in" not in said.inner_text().replace("\N{NO-BREAK SPACE}", " ")


def test_files_open_from_a_disk(open_page, gallery):
    page = open_page(gallery / "blocks/whirl.html")
    page.get_by_role("link", name="Picture").click()
    page.wait_for_url("**/blocks/whirl/whirl-diagram.svg")
    page.go_back()
    page.get_by_role("link", name="Block file").click()
    page.wait_for_url("**/blocks/whirl/whirl.block")
    assert page.locator("body").inner_text().strip() == of_library("whirl").source.text.strip()


def test_the_block_file_is_taken_from_a_site(open_page, gallery):
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Silent, directory=gallery))
    with server:
        Thread(target=server.serve_forever, daemon=True).start()
        page = open_page(gallery / "index.html", accept_downloads=True)
        page.goto(f"http://127.0.0.1:{server.server_port}/blocks/whirl.html")
        with page.expect_download() as waiting:
            page.get_by_role("link", name="Block file").click()
        assert waiting.value.suggested_filename == "whirl.block"
        assert waiting.value.path().read_text("utf-8") == of_library("whirl").source.text
        server.shutdown()


class Silent(SimpleHTTPRequestHandler):
    """A server that writes nothing down."""

    def log_message(self, *_):
        """Write nothing."""


@pytest.mark.parametrize("name", PAGES)
def test_nothing_sticks_out(open_page, gallery, name):
    page = open_page(gallery / name)
    for width in at_every_width(page):
        assert page.evaluate("document.documentElement.scrollWidth") == width
        assert page.evaluate(STICKING_OUT) == []


def test_large_print_in_black_and_white_fits_too(open_page, tmp_path):
    options = options_of("sheets=no", "sizes=6in", large_print=True, black_and_white=True)
    write_gallery(tmp_path, gallery_of([of_library("whirl"), of_library("ohio-star")], options))
    for name in ("index.html", "blocks/ohio-star.html"):
        page = open_page(tmp_path / name)
        for width in at_every_width(page):
            assert page.evaluate("document.documentElement.scrollWidth") == width
            assert page.evaluate(STICKING_OUT) == []
        assert page.evaluate("parseFloat(getComputedStyle(document.body).fontSize)") >= 20
        assert violations(page) == []


@pytest.mark.parametrize(("name", "width"), [(PAGES[0], 360), (PAGES[0], 1280), (PAGES[1], 1280), (PAGES[2], 360)])
def test_the_accessibility_checker_finds_nothing(open_page, gallery, name, width):
    assert violations(open_page(gallery / name, width)) == []


def test_nor_where_wishes_are_written_and_nothing_is_found(open_page, gallery):
    page = open_page(gallery / "index.html")
    page.get_by_role("searchbox").fill("lighthouse")
    assert violations(page) == []


@pytest.mark.parametrize("name", PAGES)
def test_headings_and_landmarks_are_in_order(open_page, gallery, name):
    page = open_page(gallery / name)
    levels = page.evaluate("[...document.querySelectorAll('h1,h2,h3,h4')].map(one => Number(one.tagName[1]))")
    assert levels.count(1) == 1
    assert levels[0] == 1
    assert all(later <= earlier + 1 for earlier, later in zip(levels, levels[1:], strict=False))
    marks = page.evaluate("[...document.body.children].map(one => one.tagName).filter(name => name != 'SCRIPT')")
    assert marks == ["HEADER", "NAV", "MAIN", "FOOTER"]


def test_a_finger_finds_every_control(open_page, gallery):
    for name in PAGES[:2]:
        page = open_page(gallery / name, 360)
        for control in (
            page.locator("button, select, input[type=search], input[type=color], .choices label")
            .filter(visible=True)
            .all()
        ):
            assert control.bounding_box()["height"] >= 44


def test_no_request_leaves_a_page(chromium, gallery):
    context, asked = chromium.new_context(), []
    context.route("**/*", lambda route: (asked.append(route.request.url), route.continue_()))
    page = context.new_page()
    for name in PAGES:
        page.goto((gallery / name).as_uri())
        page.wait_for_timeout(50)
    page.get_by_label("6 in", exact=True).check()
    page.emulate_media(media="print")
    page.wait_for_timeout(50)
    context.close()
    assert asked == [(gallery / name).as_uri() for name in PAGES]


def test_without_a_script_every_block_and_every_size_can_be_read(open_page, gallery):
    page = open_page(gallery / "index.html", java_script_enabled=False)
    assert len(shown(page)) == 6
    assert page.get_by_role("navigation").is_visible()
    assert page.get_by_role("searchbox").count() == 0
    page.get_by_role("link", name="Nine Patch", exact=True).click()
    assert page.locator("#colouring").is_hidden()
    page.get_by_label("12 in", exact=True).check()
    assert "Cut 5 squares 4 1/2 in." in page.locator("main").inner_text().replace("\N{NO-BREAK SPACE}", " ")
    assert page.get_by_role("link", name="Cutting list").is_visible()


def test_a_page_prints_what_is_chosen_and_nothing_to_press(open_page, gallery):
    page = open_page(gallery / "blocks/nine-patch.html")
    page.get_by_label("6 in", exact=True).check()
    page.emulate_media(media="print")
    assert page.locator(".size").filter(visible=True).count() == 1
    assert page.get_by_role("heading", name="Nine Patch, 6 in square finished").is_visible()
    assert not page.locator("button, input, nav, .files").filter(visible=True).count()
    page = open_page(gallery / "index.html")
    page.get_by_role("searchbox").fill("star")
    page.emulate_media(media="print")
    assert shown(page) == ["Ohio Star", "Eight-pointed Star"]
    assert not page.locator("form, .count").filter(visible=True).count()


@pytest.mark.parametrize("name", PAGES)
def test_nothing_is_printed_too_small(open_page, gallery, name):
    page = open_page(gallery / name, 680)  # as wide as the paper between its margins
    page.emulate_media(media="print")
    sizes = page.evaluate("""() => [...document.querySelectorAll("body *:not(svg, svg *, script)")]
        .filter(one => one.innerText?.trim() && one.checkVisibility()).map(one => parseFloat(getComputedStyle(one).fontSize) * 0.75)""")
    assert min(sizes) >= 9


def test_a_strangers_words_run_nowhere(open_page, tmp_path):
    blocks = [of_text(f"harmless-{number}", FILE.replace("WORDS", words)) for number, words in enumerate(WORDS)]
    write_gallery(tmp_path, gallery_of(blocks, options_of("sheets=no", "sizes=3in", f"title={WORDS[0]}")))
    page = open_page(tmp_path / "index.html")
    page.get_by_role("searchbox").fill("<script>alert(1)")
    assert shown(page) == [words for words in sorted(WORDS, key=str.casefold) if "<script>" in words]
    for number, words in enumerate(WORDS):
        page.goto((tmp_path / f"blocks/harmless-{number}.html").as_uri())
        assert page.locator("h1").inner_text() == words
        page.locator("input[data-fabric=fog]").fill("#aabbcc")
        assert page.evaluate("document.querySelectorAll('script').length") == 1
        assert page.evaluate("document.querySelectorAll('img, iframe, object, embed, foreignObject, form').length") == 0
