"""Every page of a gallery: it nests, links to what is there and to nothing else, and is the same every time."""

import re
from base64 import b64encode
from hashlib import sha256
from pathlib import PurePosixPath

import pytest

from blocklang.block import LengthUnit
from blocklang.catalogue.working_out import facts_of
from blocklang.hooks import Paper
from blocklang.wording import Language
from tests.gallery.at_hand import gallery_of, of_library, of_text, options_of
from tests.gallery.reading import Page

NAMES = ("whirl", "eight-pointed-star", "flying-geese", "drunkards-path")
BROKEN = 'block "Broken" language 1\nsize 6 in\nfabric fog as F background light #e8eef2\nrows\n  F X\nend\n'


@pytest.fixture(scope="module")
def files():
    return gallery_of([of_library(name) for name in NAMES], options_of("title=Saltmarsh Piecers' Guild", "sheets=no"))


def pages_of(files):
    return {
        name: Page(data.decode())
        for name, data in files.items()
        if name.endswith(".html") and not name.endswith("sheet.html")
    }


def test_there_is_a_page_for_every_block_and_one_to_find_them(files):
    assert sorted(pages_of(files)) == sorted(["index.html", *(f"blocks/{name}.html" for name in NAMES)])


def test_pages_nest_and_every_id_is_there_once(files):
    for name, page in pages_of(files).items():
        assert page.faults == [], name
        ids = [one.attributes["id"] for one in page.elements if "id" in one.attributes]
        assert len(ids) == len(set(ids)), name
        targets = {
            value for one in page.elements for key in ("aria-labelledby", "for") if (value := one.attributes.get(key))
        }
        assert targets <= set(ids), name


def test_every_link_leads_to_a_file_or_a_place_on_the_page(files):
    linked = {"index.html"}
    for name, page in pages_of(files).items():
        ids = {one.attributes.get("id") for one in page.elements}
        for link in page.all("a"):
            href = link.attributes["href"]
            if href.startswith("#"):
                assert href[1:] in ids
                continue
            path = PurePosixPath(name).parent / href
            linked.add(re.sub(r"^blocks/\.\./", "", path.as_posix()))
    assert linked == set(files)


def test_nothing_is_fetched_and_only_our_own_style_and_script_are_taken(files):
    for page in pages_of(files).values():
        (policy,) = [one.attributes["content"] for one in page.all("meta") if one.attributes.get("http-equiv")]
        (style,), (script,) = page.all("style"), page.all("script")
        digests = [b64encode(sha256(one.text.encode()).digest()).decode() for one in (style, script)]
        assert policy == (
            f"default-src 'none'; style-src 'sha256-{digests[0]}'; script-src 'sha256-{digests[1]}'; base-uri 'none'; form-action 'none'"
        )
        names = {key for one in page.elements for key in one.attributes}
        assert not {key for key in names if key.startswith("on") or key in ("src", "style", "srcset", "xlink:href")}
        assert not {one.tag for one in page.elements} & {"img", "iframe", "object", "embed", "link", "base"}


def test_a_card_says_what_the_catalogue_knows(files):
    page = pages_of(files)["index.html"]
    assert page.all("h1")[0].text == "Saltmarsh Piecers' Guild"
    cards = {card.text.split("\n")[2]: card for card in page.marked("card")}
    star = cards["Eight-pointed Star"]
    assert "16 patches, 8 set-in seams, 12 in square, demanding" in star.text.replace("\N{NO-BREAK SPACE}", " ")
    told = {key: value for key, value in star.attributes.items() if key.startswith("data-")}
    assert told == {
        "data-words": "eight-pointed star stars odile fenwick demanding square",
        "data-family": "stars", "data-difficulty": "demanding", "data-patches": "1", "data-setin": "some", "data-size": "2", "data-fabrics": "2",
    }  # fmt: skip


def test_cards_stand_under_their_families_by_title(files):
    page = pages_of(files)["index.html"]
    assert [one.text for one in page.all("h2")] == ["Curves", "Stars", "Strips", "Units", "Credits"]
    assert page.all("footer")[0].text.strip().endswith("4 blocks by Odile Fenwick, CC-BY-4.0")


def test_a_page_tells_its_block(files):
    page = pages_of(files)["blocks/eight-pointed-star.html"]
    facts = facts_of(of_library("eight-pointed-star").plan().assembly)
    said = dict(zip([one.text for one in page.all("dt")], [one.text for one in page.all("dd")], strict=True))
    assert said["Difficulty"] == f"{facts.difficulty} ({', '.join(facts.because)})"
    assert (said["Patches"], said["Seams"], said["Set-in seams"], said["Partial seams"]) == ("16", "24", "8", "none")
    assert (
        "Eight-pointed Star, by Odile Fenwick, CC-BY-4.0, traditional, named in print by 1915"
        in page.all("footer")[0].text
    )


def test_every_fabric_can_be_given_another_colour_wherever_it_is_drawn(files):
    for name in NAMES:
        block, page = of_library(name).plan().block, pages_of(files)[f"blocks/{name}.html"]
        inputs = [one.attributes for one in page.all("input") if one.attributes["type"] == "color"]
        assert [(one["data-fabric"], one["value"]) for one in inputs] == [
            (fabric.id, fabric.colour) for fabric in block.fabrics
        ]
        sizes = len([one for one in page.all("input") if one.attributes["type"] == "radio"])
        for number in range(len(block.fabrics)):
            assert len(page.marked(f"cloth-{number}")) == 1 + sizes  # in the picture, and a swatch for each size


def test_the_block_file_is_the_one_that_was_read(files):
    for name in NAMES:
        assert files[f"blocks/{name}/{name}.block"] == of_library(name).source.text.encode()


def test_what_is_to_be_taken_is_there(files):
    star = "blocks/eight-pointed-star/eight-pointed-star"
    path = "blocks/drunkards-path/drunkards-path"
    assert files[f"{star}-cutting-list.pdf"].startswith(b"%PDF")
    assert files[f"{star}-diagram.svg"].startswith(b"<?xml")
    assert f"{star}-templates.pdf" not in files  # a ruler cuts all of it
    assert files[f"{path}-templates.pdf"].startswith(b"%PDF")


def test_the_same_blocks_make_the_same_bytes(files):
    again = gallery_of([of_library("whirl")], options_of("title=Saltmarsh Piecers' Guild", "sheets=no"))
    del again["index.html"]
    assert again == {name: data for name, data in files.items() if name.startswith("blocks/whirl")}


def test_sheets_are_made_to_print_and_to_follow_on_a_screen():
    files = gallery_of([of_library("whirl")], options_of("sizes=,"))
    assert files["blocks/whirl/whirl-sewing-sheet.pdf"].startswith(b"%PDF")
    assert b"<title>Whirl: sewing sheet</title>" in files["blocks/whirl/whirl-sewing-sheet.html"]
    links = [one.attributes["href"] for one in Page(files["blocks/whirl.html"].decode()).all("a")]
    assert [link for link in links if "sheet" in link] == [
        "whirl/whirl-sewing-sheet.pdf",
        "whirl/whirl-sewing-sheet.html",
    ]


def test_without_sheets_none_is_made():
    block = of_library("whirl")
    files = gallery_of([block], options_of("sheets=no"))
    assert not [name for name in files if "sheet" in name]
    assert not [made for made in block.asked if "sheet" in made]


def test_a_block_with_mistakes_is_left_out():
    files = gallery_of([of_text("broken", BROKEN), of_library("whirl")], options_of("sheets=no"))
    assert "blocks/broken.html" not in files
    assert len(Page(files["index.html"].decode()).marked("card")) == 1


def test_in_another_language_blocks_are_found_by_its_words():
    options = options_of("sheets=no", "sizes=,", language=Language("xx", lambda said, count: f"~{said.text}"))
    files = gallery_of([of_library("eight-pointed-star")], options)
    for name in ("index.html", "blocks/eight-pointed-star.html"):
        page = Page(files[name].decode())
        assert page.faults == []
        assert page.all("html")[0].attributes["lang"] == "xx"
        assert [one.text for one in page.all("h2")] == [one.text for one in page.all("h2") if one.text.startswith("~")]
    (line,) = Page(files["blocks/eight-pointed-star.html"].decode()).marked("line")
    assert line.attributes["data-command"] == "blocklang make sewing-sheet eight-pointed-star.block --language xx"
    (card,) = Page(files["index.html"].decode()).marked("card")
    assert card.attributes["data-words"] == "eight-pointed star ~stars odile fenwick ~demanding square"
    assert card.attributes["data-difficulty"] == "demanding"


def test_a_gallery_of_nothing_can_be_read():
    page = Page(gallery_of([], options_of())["index.html"].decode())
    assert page.faults == []
    assert page.marked("card") == []


def test_in_black_and_white_there_are_no_colours_to_change():
    files = gallery_of(
        [of_library("whirl")], options_of("sheets=no", black_and_white=True, large_print=True, paper=Paper.A4)
    )
    page = Page(files["blocks/whirl.html"].decode())
    assert page.faults == []
    assert not [one for one in page.all("input") if one.attributes["type"] == "color"]
    assert "size: a4" in page.all("style")[0].text
    assert page.all("html")[0].attributes["class"] == "large"
    assert re.findall(r"#1f3a5f", files["blocks/whirl.html"].decode()) == []


def test_in_centimetres_every_length_is():
    files = gallery_of([of_library("nine-patch")], options_of("sheets=no", unit=LengthUnit.CENTIMETRE))
    for name in ("index.html", "blocks/nine-patch.html"):
        assert not re.search(
            r"\d\s?in\b", Page(files[name].decode()).all("main")[0].text.replace("\N{NO-BREAK SPACE}", " ")
        ), name
