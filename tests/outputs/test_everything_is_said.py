"""In another language no word of ours stays English: in a language of capitals, only the author's words are small."""

import re
from collections.abc import Iterator
from html.parser import HTMLParser
from string import ascii_uppercase
from xml.etree import ElementTree

import pytest
from blocklang_colouring_page import blocklang_outputs as colouring_page
from blocklang_cutting_list import blocklang_outputs as cutting_list
from blocklang_cutting_plan import blocklang_outputs as cutting_plan
from blocklang_diagram import VIEWS
from blocklang_diagram import blocklang_outputs as diagram
from blocklang_foundation import blocklang_outputs as foundation
from blocklang_handout import blocklang_outputs as handout
from blocklang_paper_pieces import blocklang_outputs as paper_pieces
from blocklang_pressing_map import blocklang_outputs as pressing_map
from blocklang_quilt_preview import blocklang_outputs as quilt_preview
from blocklang_templates import blocklang_outputs as templates
from blocklang_thickness import blocklang_outputs as thickness

from blocklang.block import Block
from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang.wording import Language, Message
from tests.library.plans import plan_of

BLOCKS = ("eight-pointed-star", "fan", "flying-geese")
STOCK = ("stock", "fog: 2 fat quarters, 3 strips 2 1/2 in")
CASES = (
    *((diagram, "svg", ("view", view)) for view in VIEWS),
    (colouring_page, "svg", ("small", "4")),
    (cutting_list, "text", None),
    (cutting_list, "html", None),
    (cutting_list, "csv", None),
    (cutting_plan, "text", STOCK),
    (cutting_plan, "svg", STOCK),
    (foundation, "svg", None),
    (handout, "svg", None),
    (paper_pieces, "text", None),
    (pressing_map, "text", None),
    (pressing_map, "svg", None),
    (quilt_preview, "svg", ("turning", "rows-mirrored")),
    (templates, "svg", ("which", "all")),
    (templates, "svg", ("window", "yes")),
    (thickness, "text", None),
    (thickness, "svg", None),
)
#: Not cut with a template, and no foundation.
IMPOSSIBLE = {("templates", "eight-pointed-star"), ("templates", "flying-geese"), ("foundation", "fan")}
WORD = re.compile(r"[^\W\d_]+")


def in_capitals(said: Message, count: int | None) -> str:
    """Return a message in capitals, its fields as they are."""
    text = said.text if count in (None, 1) else said.plural
    return "".join(part if part.startswith("{") else part.upper() for part in re.split(r"(\{\w+\})", text))


CAPITALS = Language("xx", in_capitals)


class _Read(HTMLParser):
    """Gathers what a page says, to the eye and to a screen reader."""

    def __init__(self) -> None:
        super().__init__()
        self.said: list[str] = []
        self.within = ""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.within = tag
        self.said += [value or "" for name, value in attrs if name in ("alt", "title", "aria-label")]

    def handle_data(self, data: str) -> None:
        if self.within not in ("style", "script"):
            self.said.append(data)


def read(form: str, data: bytes) -> str:
    """Return the words of a file."""
    text = data.decode()
    if form == "svg":
        return " ".join(ElementTree.fromstring(text).itertext())
    if form == "html":
        page = _Read()
        page.feed(text)
        return " ".join(page.said)
    return text


def words_of_author(block: Block) -> set[str]:
    """Return every word that the block file brings, and the signs of a unit and of a product."""
    texts = [block.name, *block.notes, *(point.name for point in block.points), "in", "x"]
    texts += [text for patch in block.patches for text in (patch.id, patch.name)]
    texts += [text for fabric in block.fabrics for text in (fabric.id, fabric.title, fabric.role)]
    texts += [text for c in block.credits for text in (c.name, c.author, c.licence, c.source)]
    return {word.lower() for text in texts for word in WORD.findall(text)}


def left_in_english(plan: SewingPlan, form: str, data: bytes) -> Iterator[str]:
    """Yield the words that are neither in capitals nor the author's."""
    known = words_of_author(plan.block)
    for word in WORD.findall(read(form, data)):
        author = word.rstrip(ascii_uppercase) or word  # an English plural's ending is ours: "diamondS"
        if word != word.upper() and not {word.lower(), author.lower()} & known:
            yield word


@pytest.mark.parametrize("name", BLOCKS)
@pytest.mark.parametrize(("offered", "form", "setting"), CASES)
def test_no_word_is_left_in_english(offered, form, setting, name):
    plan, (output,) = plan_of(name), offered()
    chosen = (setting,) if setting else ()
    if (output.name, name) in IMPOSSIBLE and setting != ("which", "all"):
        pytest.skip("it cannot be made of this block")
    for black_and_white in (False, True):
        options = OutputOptions(form, black_and_white=black_and_white, settings=chosen, language=CAPITALS)
        for file in output.make(plan, options):
            assert list(left_in_english(plan, form, file.data)) == []


def test_what_is_not_said_is_noticed():
    assert list(left_in_english(plan_of("fan"), "text", b"THE STRIP of fog")) == ["of"]
