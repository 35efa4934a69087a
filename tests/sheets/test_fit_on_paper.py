"""Every PDF output on Letter and A4: its pages' size, its faces, its smallest type, words apart; steps kept whole."""

import re
import unicodedata
from functools import cache

import pypdfium2
import pytest
from blocklang_drawing import Drawing, Text, pages_to_pdf
from blocklang_sewing_sheet.contents import write_sheet
from blocklang_sewing_sheet.words import CONTENTS

from blocklang.cli.plugged import Plugged
from blocklang.hooks import CannotMakeError, OutputOptions, Paper
from tests.library.plans import plan_of
from tests.sheets.on_paper import Run, faces_of, overlapping, runs_on

#: One drawing as large as itself: no page of paper.
NO_PAPER = ("diagram", "quilt-preview")
#: Pieces at full size run over several pages and are cut off at their edges: their words are held apart as drawings.
CUT_OFF = ("foundation", "paper-pieces", "templates", "cutting-outlines")
OUTPUTS = {
    output.name: output
    for output in Plugged().outputs()
    if output.make_folder is None and "pdf" in output.formats and output.name not in NO_PAPER
}
SIZES = {Paper.LETTER: (612.0, 792.0), Paper.A4: (595.28, 841.89)}
VARIANTS = [(Paper.LETTER, False), (Paper.A4, True)]
BLOCKS = ("eight-pointed-star", "drunkards-path", "octagon")
#: Printers leave this much of the paper's edge white (points).
WHITE = 18.0
TURNS = [
    ("churn-dash" if output == "foundation" else BLOCKS[(k + v) % len(BLOCKS)], output, *variant)
    for k, output in enumerate(sorted(OUTPUTS))
    for v, variant in enumerate(VARIANTS)
]


@cache
def made(name: str, output: str, paper: Paper, large: bool) -> bytes:
    settings = (("which", "all"),) if output == "templates" else ()
    options = OutputOptions("pdf", paper=paper, large_print=large, black_and_white=large, settings=settings)
    try:
        return next(file.data for file in OUTPUTS[output].make(plan_of(name), options) if not file.name)
    except CannotMakeError as cannot:
        pytest.skip(str(cannot))


@pytest.mark.parametrize(("name", "output", "paper", "large"), TURNS)
def test_pages_fit_on_the_paper(name: str, output: str, paper: Paper, large: bool) -> None:
    pdf = made(name, output, paper, large)
    faces = faces_of(pdf)
    assert faces and all(faces.values()), faces
    for page in pypdfium2.PdfDocument(pdf):
        assert page.get_size() == pytest.approx(SIZES[paper], abs=0.02)
        runs = runs_on(page)
        assert runs, "a page without a word"
        assert min(run.size for run in runs) >= 8 - 0.01
        if output not in CUT_OFF:
            assert not overlapping(runs)
            assert not [run.text for run in runs if not _on_paper(run, SIZES[paper])]


def _on_paper(run: Run, size: tuple[float, float]) -> bool:
    left, low, right, top = run.box
    return min(left, low) >= WHITE and right <= size[0] - WHITE and top <= size[1] - WHITE


SHEETS = [("log-cabin", Paper.LETTER, False), ("bears-paw", Paper.A4, False), ("drunkards-path", Paper.LETTER, True)]
SHEETS += [
    ("eight-pointed-star", Paper.A4, True),
    ("hexagon-flower-19", Paper.A4, False),
    ("whirl", Paper.LETTER, True),
]


@pytest.mark.parametrize(("name", "paper", "large"), SHEETS)
def test_no_step_of_the_sheet_is_on_two_pages(name: str, paper: Paper, large: bool) -> None:
    pages = pypdfium2.PdfDocument(made(name, "sewing-sheet", paper, large))
    texts = [close(page.get_textpage().get_text_range()) for page in pages]
    steps = write_sheet(plan_of(name), OutputOptions("pdf")).steps
    heads = [close(f"{step.number}{step.title}{step.parts}{step.make}") for step in steps]
    for step, head in zip(steps, heads, strict=True):
        (page,) = (text for text in texts if re.search(rf"(?<!\d){re.escape(head)}", text))
        told = re.split(rf"(?<!\d){re.escape(head)}", page)[1]
        told = told[: min((told.index(other) for other in heads if other in told), default=None)]
        assert all(close(sentence) in told for sentence in (*step.sentences, step.check)), step.title


@pytest.mark.parametrize(("name", "paper", "large"), SHEETS)
def test_no_heading_of_the_sheet_is_left_alone(name: str, paper: Paper, large: bool) -> None:
    headings, found = {close(heading) for heading in CONTENTS.values()}, 0
    for page in pypdfium2.PdfDocument(made(name, "sewing-sheet", paper, large)):
        runs = runs_on(page)
        foot = min(run.line for run in runs)
        for run in runs:
            if close(run.text) in headings and run.size > (18 if large else 15):
                found += 1
                assert any(foot + 5 < other.line < run.line for other in runs), f"nothing below {run.text!r}"
    assert found >= 6


def close(text: str) -> str:
    """Return a text without what differs between lines and printed lines: spaces, joined letters, broken-off hyphens."""
    return re.sub(r"[\s\-\x02\ufffe]+", "", unicodedata.normalize("NFKC", text))


def test_the_check_itself_finds_what_is_wrong() -> None:
    shapes = (Text((40, 60), "hearth", 12.0, "#000000"), Text((44, 64), "log", 7.0, "#000000"))
    apart = (Text((40, 60), "hearth", 12.0, "#000000"), Text((40, 90), "Qu first log", 9.0, "#000000", halo="#ffffff"))
    (page,) = pypdfium2.PdfDocument(pages_to_pdf([Drawing(200.0, 120.0, shapes, "wrong on purpose")]))
    assert overlapping(runs_on(page)) == [("hearth", "log")]
    assert min(run.size for run in runs_on(page)) == pytest.approx(7.0, abs=0.01)
    (page,) = pypdfium2.PdfDocument(pages_to_pdf([Drawing(200.0, 120.0, apart, "as it should be")]))
    assert not overlapping(runs_on(page))
    assert {run.text for run in runs_on(page)} == {"hearth", "Qufirstlog"}
