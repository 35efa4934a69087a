"""What the map says, as plain text: which way seams are pressed, and what is on the bias."""

from collections.abc import Iterator
from textwrap import wrap

from blocklang_drawing import clean_text, lies_of

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang.wording import Language
from blocklang_pressing_map import words
from blocklang_pressing_map.bias_lines import bias_lines

WIDTH = 78


def write_text(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the text, no line wider than a terminal."""
    return "\n".join(_lines(plan, options.language)).rstrip() + "\n"


def _lines(plan: SewingPlan, language: Language) -> Iterator[str]:
    pressing = plan.pressing
    yield from _heading(plan.block.name, "=")
    locks = words.locks(len(pressing.lockable), len(pressing.locked), len(lies_of(plan).spun))
    yield from _wrapped(language.say(locks))
    for title, sentences in ((words.PRESSING, seam_lines(plan)), (words.BIAS, bias_lines(plan))):
        yield ""
        yield from _heading(language.say(title), "-")
        for sentence in sentences:
            yield from _wrapped(language.say(sentence), "- ")


def seam_lines(plan: SewingPlan) -> tuple[str, ...]:
    """Return a sentence for each pair of kinds of patches that are sewn together."""
    labels = plan.labels
    ways: dict[tuple[str, str], set[str | None]] = {}
    for pressed in plan.pressing.directions:
        left, right = plan.graph.segments[pressed.segment].patches
        pair = (min(labels[left], labels[right]), max(labels[left], labels[right]))
        ways.setdefault(pair, set()).add(None if pressed.toward is None else labels[pressed.toward])
    return tuple(words.seam(*pair, found) for pair, found in ways.items())


def _heading(title: str, rule: str) -> Iterator[str]:
    lines = wrap(clean_text(title), WIDTH) or [""]
    yield from lines
    yield rule * max(map(len, lines))


def _wrapped(text: str, start: str = "") -> Iterator[str]:
    yield from wrap(clean_text(text), WIDTH, initial_indent=start, subsequent_indent=" " * len(start))
