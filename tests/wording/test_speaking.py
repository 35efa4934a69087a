"""Whole outputs in a made-up language: what is left in English was glued, or never said through the catalogue."""

import re

import pytest

from blocklang.cli.program import run
from blocklang.cli.walking import Walk
from blocklang.hooks import CannotMakeError, OutputOptions
from blocklang.wording import Language, find_language
from tests.gallery.at_hand import gallery_of, of_library, options_of
from tests.library.plans import plan_of
from tests.wording.strange import LETTER, STRANGE, english_in, seen_or_heard

OUTPUTS = {output.name: output for output in Walk().outputs()}
FEW = ("nine-patch", "drunkards-path", "bears-paw")
MANY = (
    *("eight-pointed-star", "log-cabin", "whirl", "roman-stripe", "storm-at-sea", "kaleidoscope", "spools"),
    *("hexagon-flower-7", "falling-timbers", "harbour-sampler", "attic-window", "mariners-compass", "little-red-house"),
    *("fan", "courthouse-steps"),
)


def text_of(output, block, form, language, **more):
    plan = plan_of(block)
    options = OutputOptions(form, unit=plan.block.unit, language=language, **more)
    return "\n".join(file.data.decode() for file in OUTPUTS[output].make(plan, options))


@pytest.mark.parametrize("block", [*FEW, *(pytest.param(name, marks=pytest.mark.slow) for name in MANY)])
def test_a_sewing_sheet_leaves_nothing_in_english(block):
    said = text_of("sewing-sheet", block, "text", STRANGE)
    assert LETTER in said
    assert english_in(said, plan_of(block)) == []


FORMS = [
    (output.name, form) for output in OUTPUTS.values() for form in output.formats if form in ("text", "svg", "html")
]
FORMS.remove(("gallery", "html"))  # is made of several blocks; see below
SLOW = ("foundation",)


@pytest.mark.parametrize(
    ("output", "form"),
    [pytest.param(*one, marks=pytest.mark.slow if one[0] in SLOW else ()) for one in FORMS],
)
def test_no_output_leaves_anything_in_english(output, form):
    for block in ("ohio-star", "drunkards-path"):
        try:
            said = text_of(output, block, form, STRANGE)
        except CannotMakeError:
            continue
        seen = said if form == "text" else seen_or_heard(said)
        assert english_in(seen, plan_of(block)) == [], block
        assert ('<html lang="xx"' in said) == (form == "html")


def test_a_gallery_leaves_nothing_in_english():
    names = ("ohio-star", "drunkards-path")
    made = gallery_of(map(of_library, names), options_of("sheets=no", language=STRANGE))
    pages = [data.decode() for name, data in made.items() if name.endswith(".html")]
    assert len(pages) == 3
    for page in pages:
        assert english_in(seen_or_heard(page), *map(plan_of, names), known=("PDF", "SVG", "kB")) == []
        assert '<html lang="xx"' in page


def test_spanish_finds_every_sentence_that_a_sheet_says():
    spanish, missed = find_language("es"), []

    def look_up(wanted, count):
        said = spanish.look_up(wanted, count)
        if said in (wanted.text, wanted.plural) and re.search("[a-z]{3}", re.sub(r"\{\w+\}", "", wanted.text)):
            missed.append(wanted.text)
        return said

    for block in FEW:
        text_of("sewing-sheet", block, "text", Language("es", look_up))
    assert missed == []


def test_a_sheet_says_its_language_to_browsers():
    assert '<html lang="es"' in text_of("sewing-sheet", "nine-patch", "html", find_language("es"))
    assert '<html lang="en"' in text_of("sewing-sheet", "nine-patch", "html", find_language("en"))


def test_the_same_ticks_count_in_every_language():
    key = re.compile(r'data-ticks="([^"]*)"')
    pages = (text_of("sewing-sheet", "nine-patch", "html", find_language(code)) for code in ("en", "es"))
    assert len({key.search(page)[1] for page in pages}) == 1


def test_metric_lengths_have_a_decimal_comma_in_spanish():
    said = text_of("cutting-list", "drunkards-path", "text", find_language("es"))
    assert not re.search(r"\d\.\d", said)


def test_the_language_is_chosen_by_its_code(tmp_path, capfd):
    path = tmp_path / "list.txt"
    assert run(["make", "cutting-list", "nine-patch", "-o", str(path), "--language", "es"]) == 0
    assert path.read_text(encoding="utf-8") == text_of("cutting-list", "nine-patch", "text", find_language("es"))
    assert run(["make", "cutting-list", "nine-patch", "-o", str(path), "--language", "sea"]) == 2
    assert "There are no words in `sea`; there are words in en, es." in capfd.readouterr().err
