"""The cutting list as plain text, for a terminal."""

from collections.abc import Iterator
from textwrap import wrap

from blocklang_drawing import clean_text

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_list.listing import Entry, Listing, list_cutting

WIDTH = 78


def write_text(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the list, no line wider than a terminal."""
    return "\n".join(_lines(list_cutting(plan, options))).rstrip() + "\n"


def _lines(listing: Listing) -> Iterator[str]:
    yield from _heading(f"{listing.headings.title}: {listing.name}", "=")
    yield from _wrapped(listing.made_for)
    for entry in listing.entries:
        yield ""
        yield from _entry(entry)
    said = listing.headings
    for title, sentences in ((said.strip_sets, listing.strip_sets), (said.notes, listing.notes)):
        if sentences:
            yield ""
            yield from _heading(title, "-")
            for sentence in sentences:
                yield from _wrapped(sentence, "- ")
    yield from _other_ways(listing)
    yield ""
    yield from _wrapped(said.blade)


def _other_ways(listing: Listing) -> Iterator[str]:
    if not listing.other_ways:
        return
    yield ""
    yield from _heading(listing.headings.other_ways, "-")
    yield from _wrapped(listing.headings.other_ways_are)
    for way in listing.other_ways:
        yield ""
        yield from _wrapped(f"{way.title}: {way.units}")
        for number, sentence in enumerate(way.sentences, 1):
            yield from _wrapped(sentence, f"  {number:>2}. ")


def _entry(entry: Entry) -> Iterator[str]:
    role = f" ({entry.role})" if entry.role else ""
    yield from _wrapped(f"{entry.title}{role}: {entry.buy}")
    for strip in entry.strips:
        yield from _wrapped(strip, "  * ")
    for piece in entry.pieces:
        yield from _wrapped(f"{piece.name}: {piece.sentence} {piece.exactly}".rstrip(), "  - ")


def _heading(title: str, rule: str) -> Iterator[str]:
    lines = wrap(clean_text(title), WIDTH) or [""]
    yield from lines
    yield rule * max(map(len, lines))


def _wrapped(text: str, start: str = "") -> Iterator[str]:
    yield from wrap(clean_text(text), WIDTH, initial_indent=start, subsequent_indent=" " * len(start))
