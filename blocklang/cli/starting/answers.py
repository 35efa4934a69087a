"""What is known about a new block, the file that this makes, and what would be wrong with it."""

import re
import unicodedata
from dataclasses import dataclass

from blocklang.cli.starting.designs import DESIGNS, FEWEST_FABRICS, MOST_FABRICS, Design
from blocklang.cli.starting.fabrics import PALETTE, Cloth
from blocklang.diagnostics import Severity, SourceText

LONGEST_TITLE = 80
_QUOTES = frozenset('"“”')
_PLAIN_LICENCE = re.compile(r"[^\W\d_]\w*([-.]\w+)*")
_SIZE = re.compile(
    r"(?P<number>\d+ +\d+/\d+|\d+/\d+|\d* ?[¼½¾⅓⅔⅛⅜⅝⅞]|\d+(\.\d+)?|\.\d+) *(?P<unit>in|inch|inches|cm|mm)?", re.ASCII
)


@dataclass(frozen=True, slots=True)
class Answers:
    """Everything that a new block file is made from; `size` is "" where the design's own is meant."""

    title: str
    design: Design = DESIGNS[0]
    size: str = ""
    cloths: tuple[Cloth, ...] = ()
    author: str = ""
    licence: str = ""

    @property
    def all_cloths(self) -> tuple[Cloth, ...]:
        """The fabrics chosen; while they are too few, with others of the palette up to as many as the design has."""
        if len(self.cloths) >= FEWEST_FABRICS:
            return self.cloths
        taken = {cloth.name for cloth in self.cloths}
        rest = (cloth for cloth in PALETTE if cloth.name not in taken)
        missing = range(self.design.usual - len(self.cloths))
        return (*self.cloths, *(cloth for _, cloth in zip(missing, rest, strict=False)))


def fault_of_text(text: str, what: str) -> str:
    """Say why a text cannot stand between quotes on a line of a file; "" when it can."""
    if len(text) > LONGEST_TITLE:
        return f"{what} has at most {LONGEST_TITLE} characters; this has {len(text)}."
    if not _QUOTES.isdisjoint(text):
        return f"{what} stands between quotes in the file, so it has no double quotes inside: use single ones."
    if any(unicodedata.category(letter) in ("Cc", "Cf", "Cs", "Co", "Zl", "Zp") for letter in text):
        return f"{what} is one line of plain text; this has a character that cannot be seen."
    return ""


def read_size(text: str) -> str | None:
    """Return a length with its unit, inches where none is written; None when it is not one length."""
    found = _SIZE.fullmatch(" ".join(text.split()).removesuffix('"').rstrip())
    if found is None:
        return None
    unit = (found["unit"] or "in").replace("inches", "in").replace("inch", "in")
    return f"{found['number']} {unit}"


def write_block(answers: Answers) -> str:
    """Return the text of the file in its one layout."""
    from blocklang.language import format_text

    text, diagnostics = format_text(SourceText("new", _draft(answers)))
    assert text is not None, diagnostics  # whoever asks has looked for faults first
    return text


def fault_of(answers: Answers) -> str:
    """Say in one or two sentences what is wrong with a new block so far; "" when it can be written."""
    fault = fault_of_text(answers.title, "A title") or fault_of_text(answers.author, "A name")
    fault = fault or fault_of_text(answers.licence, "A licence")
    if fault:
        return fault
    if not answers.title:
        return "A block has a title."
    if not (FEWEST_FABRICS <= len(answers.all_cloths) <= MOST_FABRICS):
        return f"A new block starts with {FEWEST_FABRICS} to {MOST_FABRICS} fabrics."
    return _fault_of_draft(answers)


def _draft(answers: Answers) -> str:
    cloths = answers.all_cloths
    fabrics = [cloth.line(role) for cloth, role in zip(cloths, answers.design.roles, strict=False)]
    return "\n".join(
        [
            f'block "{answers.title}"',
            "language 1",
            f"size {answers.size or answers.design.size}",
            *_credit(answers),
            "",
            "# Each fabric: a name, its role, how light it is, its colour.",
            *fabrics,
            "",
            answers.design.draw(tuple(cloth.name for cloth in cloths)),
        ]
    )


def _credit(answers: Answers) -> list[str]:
    licence = answers.licence
    shown = licence if _PLAIN_LICENCE.fullmatch(licence) else f'"{licence}"'
    words = [f'by "{answers.author}"'] if answers.author else []
    words += [f"licence {shown}"] if licence else []
    return [" ".join(words)] if words else []


def _fault_of_draft(answers: Answers) -> str:
    """Walk the route as far as `check` does, so that nothing is written that `check` would refuse."""
    from blocklang import route
    from blocklang.language import Overrides
    from blocklang.library import Library

    drafted = route.draft(SourceText("new", _draft(answers)), Overrides(None, ()), Library(), tuple)
    checked = route.check(drafted)
    errors = (one for one in checked.diagnostics if one.severity is Severity.ERROR)
    first = next(errors, None)
    return "" if first is None else " ".join(filter(None, (first.found, first.advice)))
