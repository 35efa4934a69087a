"""docs/spanish-terms.md and the Spanish catalogue keep to the same words: one word for one thing."""

import re
import unicodedata
from pathlib import Path

import pytest
from babel.messages.pofile import read_po

import blocklang.wording

PAGE = Path(__file__).parents[2] / "docs" / "spanish-terms.md"
ROW = re.compile(r"^\| ([^|]+) \| ([^|]+) \| ([ABC]) \| ([^|]*)\|$", re.MULTILINE)
ROWS = [tuple(cell.strip() for cell in row) for row in ROW.findall(PAGE.read_text(encoding="utf-8"))]
#: Of a longer word so much stays the same in all its forms.
STEM = 5


def spanish() -> str:
    """Return all translations, one a line."""
    path = Path(blocklang.wording.__file__).with_name("es.po")
    with path.open("rb") as file:
        found = [entry.string for entry in read_po(file, locale="es") if entry.id]
    return "\n".join(plain(text) for each in found for text in ([each] if isinstance(each, str) else each))


def plain(text: str) -> str:
    """Return a text in small letters without accents, which come and go with the form of a word."""
    return "".join(c for c in unicodedata.normalize("NFD", text.lower()) if not unicodedata.combining(c))


SAID = spanish()


def test_every_word_has_its_row():
    assert len(ROWS) == PAGE.read_text(encoding="utf-8").count("\n| ") - 2  # the head of the table
    assert len({trade for trade, *_ in ROWS}) == len(ROWS) > 40


@pytest.mark.parametrize(("trade", "terms"), [row[:2] for row in ROWS])
def test_the_sheets_say_the_word(trade, terms):
    for term in re.split(r"[,;] ?", terms.replace("«", "").replace("»", "")):
        for word in re.findall(r"\w+", plain(term)):
            assert re.search(rf"\b{re.escape(word[:STEM])}", SAID), f"{trade}: {term}"


@pytest.mark.parametrize(("trade", "others"), [(row[0], row[3]) for row in ROWS])
def test_the_sheets_say_no_other_word_for_it(trade, others):
    for other in re.findall(r"\*([^*]+)\*", others):
        assert not re.search(rf"\b{re.escape(plain(other))}\b", SAID), f"{trade}: {other}"


def test_nobody_is_called_by_a_familiar_form():
    assert not re.search(r"\b(tu|tus|ti|te|vos|os|vosotros|vosotras|puedes|tienes|debes)\b", SAID)
