"""The sheet as plain text, for a terminal."""

from collections.abc import Iterator, Mapping
from textwrap import wrap

from blocklang_drawing import clean_text

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_sewing_sheet import words
from blocklang_sewing_sheet.contents import Sheet, StepEntry, write_sheet

WIDTH = 78


def write_text(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the sheet, no line wider than a terminal."""
    headings = options.language.tell(words.CONTENTS)
    return "\n".join(_lines(write_sheet(plan, options), headings)).rstrip() + "\n"


def _lines(sheet: Sheet, headings: Mapping[str, str]) -> Iterator[str]:
    yield from _heading(sheet.name, "=")
    yield from _wrapped(sheet.byline)
    yield from _wrapped(sheet.size)
    for note in sheet.notes:
        yield from _wrapped(note)
    for name, sentences in (("at_a_glance", sheet.facts), ("before", sheet.before + sheet.cautions)):
        yield from _section(headings[name], sentences)
    yield from _cutting(sheet, headings["cutting"])
    yield ""
    yield from _heading(headings["steps"], "-")
    for note in sheet.step_notes:
        yield from _wrapped(note)
    for step in sheet.steps:
        yield from _step(step)
    yield from _section(headings["finishing"], sheet.finishing)
    if sheet.credits:
        yield from _section(headings["credits"], sheet.credits)


def _cutting(sheet: Sheet, heading: str) -> Iterator[str]:
    yield ""
    yield from _heading(heading, "-")
    for fabric in sheet.fabrics:
        title = f"{fabric.title} ({fabric.role})" if fabric.role else fabric.title
        yield from _wrapped(f"{title}: {fabric.amount}" if fabric.amount else title)
        for sentence in fabric.cutting:
            yield from _wrapped(sentence, "  ")
    for note in sheet.strip_sets + sheet.cutting_notes:
        yield from _wrapped(note, "- ")


def _step(step: StepEntry) -> Iterator[str]:
    yield ""
    yield from _wrapped(f"{step.number}. {step.title}. {step.make}.")
    yield from _wrapped(step.parts, "   ")
    for sentence in step.sentences:
        yield from _wrapped(sentence, "   - ")
    yield from _wrapped(step.check, "   - ")


def _section(title: str, sentences: tuple[str, ...]) -> Iterator[str]:
    yield ""
    yield from _heading(title, "-")
    for sentence in sentences:
        yield from _wrapped(sentence, "- ")


def _heading(title: str, rule: str) -> Iterator[str]:
    lines = wrap(clean_text(title), WIDTH) or [""]
    yield from lines
    yield rule * max(map(len, lines))


def _wrapped(text: str, start: str = "") -> Iterator[str]:
    yield from wrap(clean_text(text), WIDTH, initial_indent=start, subsequent_indent=" " * len(start))
