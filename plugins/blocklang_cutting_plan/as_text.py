"""The cutting plan as plain text, for a terminal."""

from collections.abc import Iterator
from textwrap import wrap

from blocklang_drawing import clean_text

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_plan.contents import FabricWords, PlanWords, StripWords, cloth_of, write_words

WIDTH = 78


def write_text(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the plan, no line wider than a terminal."""
    return "\n".join(_lines(write_words(plan, cloth_of(plan, options), options))).rstrip() + "\n"


def _lines(sheet: PlanWords) -> Iterator[str]:
    yield from _heading(f"{sheet.headings.title}: {sheet.name}", "=")
    yield from _wrapped(sheet.made_for)
    for fabric in sheet.fabrics:
        yield ""
        yield from _fabric(fabric)
    yield ""
    yield from _heading(sheet.headings.notes, "-")
    for note in sheet.notes:
        yield from _wrapped(note, "- ")


def _fabric(fabric: FabricWords) -> Iterator[str]:
    role = f" ({fabric.role})" if fabric.role else ""
    yield from _heading(f"{fabric.title}{role}: {fabric.and_buy}", "-")
    for fact in fabric.facts:
        yield from _wrapped(fact)
    for letter, sentence in fabric.letters:
        yield from _wrapped(f"{letter}  {sentence}", "  ")
    for piece in fabric.stock:
        left = f"; {piece.below}" if piece.below else ""
        yield from _wrapped(f"{piece.numbers}, {piece.size}{left}:", "* ")
        for strip in piece.strips:
            yield from _strip(strip, "  - ")
    for strip in fabric.strips:
        yield from _strip(strip, "* ")


def _strip(strip: StripWords, start: str) -> Iterator[str]:
    parts = (*strip.cuts, strip.left) if strip.left else strip.cuts
    said = "; ".join(parts)
    yield from _wrapped(f"{strip.numbers}, {strip.wide}. {said[0].upper()}{said[1:]}.", start)


def _heading(title: str, rule: str) -> Iterator[str]:
    lines = wrap(clean_text(title), WIDTH) or [""]
    yield from lines
    yield rule * max(map(len, lines))


def _wrapped(text: str, start: str = "") -> Iterator[str]:
    yield from wrap(clean_text(text), WIDTH, initial_indent=start, subsequent_indent=" " * len(start))
