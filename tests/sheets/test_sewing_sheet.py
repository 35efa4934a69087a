"""The sewing sheet in its three formats."""

import re
import time
from dataclasses import replace
from html.parser import HTMLParser
from io import BytesIO

import pytest
from blocklang_sewing_sheet import blocklang_outputs, words
from blocklang_sewing_sheet.contents import write_sheet
from blocklang_sewing_sheet.step_words import step_sentences
from pypdf import PdfReader

from blocklang.assembly import Count, JoinKind
from blocklang.block import Credit, LengthUnit
from blocklang.hooks import OutputOptions, Paper
from tests.sheets.plans import NAMES, named_plan, plan_of
from tests.support import blocks

(OUTPUT,) = blocklang_outputs()
HOSTILE = ("</svg><script>alert(1)</script>", '"]]>', '#import "x": *; $ math $ @ref <label> \\ [', "nul\x00bell\x07")
VOID = {"meta", "link", "br", "hr", "img", "input"}


def made(plan, **options):
    (file,) = OUTPUT.make(plan, OutputOptions(**options))
    assert file.name == ""
    return file.data


def pages_of(pdf):
    return PdfReader(BytesIO(pdf)).pages


class Balanced(HTMLParser):
    """Reads a page strictly: every tag is closed in order."""

    def __init__(self):
        super().__init__()
        self.open, self.tags, self.links, self.ids, self.text = [], [], [], [], []

    def handle_starttag(self, tag, attrs):
        self.tags.append(tag)
        self.links += [value for name, value in attrs if name in ("src", "href", "xlink:href", "action", "data")]
        self.ids += [value for name, value in attrs if name == "id"]
        if tag not in VOID:
            self.open.append(tag)

    def handle_endtag(self, tag):
        assert self.open.pop() == tag

    def handle_data(self, data):
        self.text.append(data)


def read(html):
    page = Balanced()
    page.feed(html.decode())
    page.close()
    assert page.open == []
    return page


def in_our_words(plan):
    # The wording of cutting notes and step titles belongs to other stages, and is tested there.
    steps = tuple(replace(step, title=f"Title {step.number}") for step in plan.steps)
    return replace(plan, steps=steps, cutting=replace(plan.cutting, notes=("Trim every unit to size.",)))


@pytest.mark.parametrize("name", ["four-patch", "whirl"])
def test_text(name, snapshot):
    assert made(in_our_words(named_plan(name)), format="text").decode() == snapshot


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("kind", OUTPUT.formats)
def test_the_same_bytes_every_time(name, kind):
    assert made(named_plan(name), format=kind) == made(named_plan(name), format=kind)


@pytest.mark.parametrize("name", NAMES)
def test_text_fits_a_terminal(name):
    assert max(map(len, made(named_plan(name), format="text").decode().splitlines())) <= 78


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize(("paper", "size"), [(Paper.LETTER, (612.0, 792.0)), (Paper.A4, (595.276, 841.89))])
def test_pdf_pages_have_the_size_of_the_paper(name, paper, size):
    for page in pages_of(made(named_plan(name), format="pdf", paper=paper)):
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(size, abs=0.01)


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("large", [False, True])
def test_no_step_is_split_and_pages_are_numbered(name, large):
    plan = named_plan(name)
    pages = [page.extract_text() for page in pages_of(made(plan, format="pdf", large_print=large))]
    sheet = write_sheet(plan, OutputOptions("pdf"))
    assert all(f"{number} / {len(pages)}" in text for number, text in enumerate(pages, 1))
    homes = [" ".join(text.split()) for text in pages]
    for step in sheet.steps:
        home = [text for text in homes if step.title in text and step.make in text]
        assert home
        assert any(all(sentence in text for sentence in (*step.sentences, step.check)) for text in home)


def test_pdf_carries_no_date():
    reader = PdfReader(BytesIO(made(named_plan("star"), format="pdf")))
    assert "/CreationDate" not in (reader.metadata or {})
    assert reader.metadata.title == "Star"


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_stay_words(text):
    plan = named_plan("four-patch")
    fabrics = tuple(replace(fabric, title=text, role=text) for fabric in plan.block.fabrics)
    credit = Credit(text, text, text, text)
    block = replace(plan.block, name=text, fabrics=fabrics, credits=(credit,), notes=(text,))
    steps = tuple(replace(step, title=text) for step in plan.steps)
    hostile = replace(plan, block=block, graph=replace(plan.graph, block=block), steps=steps)
    page = read(made(hostile, format="html"))
    assert page.tags.count("script") == 1
    assert any(text.split()[0].split("\x00")[0] in data for data in page.text)
    shown = "".join(page.extract_text() for page in pages_of(made(hostile, format="pdf")))
    assert "".join(text.split()).replace("\x00", "").replace("\x07", "")[:8] in "".join(shown.split())
    assert not re.search(r"[\x00-\x08\x0b-\x1f]", made(hostile, format="text").decode())


def test_the_fewest_possible_is_said_only_when_proven():
    assert words.pivots_line(Count(8, 8, True)) == "8 set-in pivots, proven the fewest possible."
    assert words.pivots_line(Count(9, 8, False)) == "9 set-in pivots."
    plan = named_plan("star")
    doubtful = replace(plan, assembly=replace(plan.assembly, pivots=Count(8, 7, False)))
    assert "8 set-in pivots, proven the fewest possible." in made(plan, format="text").decode()
    assert "proven" not in made(doubtful, format="text").decode().split("partial")[0]


def test_copies_are_counted():
    text = made(named_plan("star"), format="text", copies=20).decode()
    assert "Make 80 (4 for each of 20 blocks)" in text
    assert "Make 4." in made(named_plan("star"), format="text").decode()


def test_centimetres():
    text = made(named_plan("four-patch"), format="text", unit=LengthUnit.CENTIMETRE).decode()
    assert "16.5 cm square" in text.replace("about ", "")


def test_black_and_white_has_no_coloured_cloth():
    html = made(named_plan("row-of-nine"), format="html", black_and_white=True).decode()
    colours = {f'fill="{fabric.colour}"' for fabric in named_plan("row-of-nine").block.fabrics}
    assert not [colour for colour in colours if colour in html]


@pytest.mark.parametrize("name", NAMES)
def test_every_step_is_told(name):
    plan = named_plan(name)
    for step in plan.steps:
        said = step_sentences(plan, step, LengthUnit.INCH)
        assert len(said) >= 3
        assert all(sentence.endswith(".") for sentence in said)
        stops = any(join.start_stops or join.end_stops for join in step.joins)
        if step.kind is JoinKind.STRAIGHT and len(step.joins) == step.times:
            assert (words.RAW_TO_RAW in said) != stops
        assert (words.TO_PIVOT in said) == (step.kind is JoinKind.SET_IN)
        assert (step.measures is not None) == said[-1].startswith("Check")


def test_pressing_is_told_by_name_only_when_it_is_all_one_way():
    plan = named_plan("path")
    (sentence,) = [s for s in step_sentences(plan, plan.steps[0], LengthUnit.INCH) if s.startswith("Press")]
    toward = {plan.block.patches[p.toward].name for join in plan.steps[0].joins for p in join.press}
    assert toward in ({"pie"}, {"ground"})
    assert sentence == f"Press the seam toward the {toward.pop()}."


def test_a_sheet_of_many_patches_stays_small_and_quick():
    plan = plan_of(blocks.grid(26, 25, 2.0))
    started = time.process_time()
    html = made(plan, format="html", black_and_white=True)
    assert time.process_time() - started < 8
    assert len(html) < 3_000_000
