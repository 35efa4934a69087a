"""The thickness in words, for a terminal."""

from collections.abc import Iterator
from textwrap import wrap

from blocklang_drawing import clean_text

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang.wording import Language
from blocklang_thickness import words
from blocklang_thickness.facts import Facts, facts_of

WIDTH = 78


def write_text(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the text, no line wider than a terminal."""
    return "\n".join(_lines(plan.block.name, facts_of(plan), options.language)).rstrip() + "\n"


def _lines(name: str, facts: Facts, language: Language) -> Iterator[str]:
    yield from _heading(name, "=")
    for sentence in facts.sentences:
        yield from _wrapped(language.say(sentence))
    yield ""
    yield from _heading(language.say(words.LEVELS), "-")
    for level, share in facts.levels:
        yield from _wrapped(language.say(words.level(level, share)), "- ")
    yield ""
    yield from _heading(language.say(words.PILES), "-")
    counts: dict[int, int] = {}
    for pile in facts.thickness.piles:
        counts[pile.layers] = counts.get(pile.layers, 0) + 1
    for level in sorted(counts, reverse=True):
        yield from _wrapped(language.say(words.piles(level, counts[level])), "- ")


def _heading(title: str, rule: str) -> Iterator[str]:
    lines = wrap(clean_text(title), WIDTH) or [""]
    yield from lines
    yield rule * max(map(len, lines))


def _wrapped(text: str, start: str = "") -> Iterator[str]:
    yield from wrap(clean_text(text), WIDTH, initial_indent=start, subsequent_indent=" " * len(start))
