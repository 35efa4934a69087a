"""The papers and the order as plain text, for a terminal."""

from collections.abc import Iterator
from textwrap import wrap

from blocklang_drawing import clean_text

from blocklang_paper_pieces.contents import Contents

WIDTH = 78


def write_text(contents: Contents) -> str:
    """Return everything that the pages say, no line wider than a terminal."""
    return "\n".join(_lines(contents)).rstrip() + "\n"


def _lines(contents: Contents) -> Iterator[str]:
    yield from _heading(f"{contents.headings.subject}: {contents.name}", "=")
    for sentence in contents.facts:
        yield from _wrapped(sentence)
    yield from _section(contents.headings.making)
    for place, sentence in enumerate(contents.making, 1):
        yield from _wrapped(sentence, f"{place}. ")
    yield from _section(contents.headings.papers)
    for paper in contents.papers:
        said = ", ".join((paper.counted, *paper.lines))
        yield from _wrapped(f"{paper.name}: {said}", f"{paper.number}. ")
    yield from _section(contents.headings.order)
    for each in contents.rounds:
        yield each.title
        for line in each.joinings:
            yield from _wrapped(f"{line.patch} ({line.fabric}): {line.joined}", f"  {line.place}. ")


def _section(title: str) -> Iterator[str]:
    yield ""
    yield from _heading(title, "-")


def _heading(title: str, rule: str) -> Iterator[str]:
    lines = wrap(clean_text(title), WIDTH) or [""]
    yield from lines
    yield rule * max(map(len, lines))


def _wrapped(text: str, start: str = "") -> Iterator[str]:
    yield from wrap(clean_text(text), WIDTH, initial_indent=start, subsequent_indent=" " * len(start))
