"""The catalogues: what stands in the code is in them, translated whole, and what is read is what translators see."""

import re
from gettext import GNUTranslations
from io import BytesIO

import pytest
from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po

from blocklang.wording import Place, languages
from tests.wording.catalogue_maker import load

MAKER = load()
CODES = tuple(code for code in languages() if code != "en")
FIELD = re.compile(r"\{(\w+)\}")


def catalogue_of(code):
    with (MAKER.HOME / f"{code}.po").open("rb") as file:
        return read_po(file, locale=code)


def entries_of(code):
    return [entry for entry in catalogue_of(code) if entry.id]


def each(text):
    return (text,) if isinstance(text, str) else tuple(text)


def test_spanish_is_there():
    assert "es" in CODES


def test_the_files_are_what_the_code_and_the_translations_make():
    stale = [path.name for path, data in MAKER.files().items() if path.read_bytes() != data]
    assert not stale, "run python3 dev.py words"


@pytest.mark.parametrize("code", CODES)
def test_every_sentence_is_translated_and_none_is_doubtful(code):
    assert MAKER.untranslated(MAKER.HOME / f"{code}.po") == ()
    assert len(entries_of(code)) == len(MAKER.template_of(MAKER.gather()))


@pytest.mark.parametrize("code", CODES)
def test_plurals_are_complete(code):
    forms = catalogue_of(code).num_plurals
    for entry in entries_of(code):
        assert len(each(entry.string)) == (forms if isinstance(entry.id, tuple) else 1), entry.id


@pytest.mark.parametrize("code", CODES)
def test_translations_name_the_fields_of_their_sentences(code):
    """A field may be left out where the words say it ("two", "each"), but none is added, and none is misspelt."""
    for entry in entries_of(code):
        wanted = {field for text in each(entry.id) for field in FIELD.findall(text)}
        for translation in each(entry.string):
            named = set(FIELD.findall(translation))
            assert named <= wanted, (entry.id, translation)
            assert wanted - named <= {"count"}, (entry.id, translation)
            assert translation.count("{") == len(FIELD.findall(translation)), translation


def test_calls_fill_the_fields_that_their_sentences_name():
    for said in MAKER.gather():
        if said.fields is not None:
            named = {field for text in (said.text, said.plural) for field in FIELD.findall(text)}
            assert named == said.fields - ({"count"} - named) or not said.fields, (said.file, said.line, said.text)


def test_a_new_language_is_a_new_file(tmp_path, monkeypatch):
    monkeypatch.setattr(MAKER, "HOME", tmp_path)
    monkeypatch.setattr(MAKER, "TEMPLATE", tmp_path / "blocklang.pot")
    path = tmp_path / "pl.po"
    path.write_bytes(MAKER.as_po(Catalog(locale="pl"), "pl"))
    first = MAKER.files()
    assert set(first) == {tmp_path / name for name in ("blocklang.pot", "pl.po", "pl.mo")}
    seams = 'msgid "{count} curved seam."\nmsgid_plural "{count} curved seams."\n'
    empty, own = "", ""
    for form, text in enumerate(("szew", "szwy", "szw\u00f3w")):
        empty, own = f'{empty}msgstr[{form}] ""\n', f'{own}msgstr[{form}] "{{count}} {text}."\n'
    assert seams + empty in first[path].decode()
    path.write_text(first[path].decode().replace(seams + empty, seams + own), encoding="utf-8")
    polish = GNUTranslations(BytesIO(MAKER.files()[path.with_suffix(".mo")]))
    said = [polish.ngettext("{count} curved seam.", "{count} curved seams.", count) for count in (1, 3, 7)]
    assert said == ["{count} szew.", "{count} szwy.", "{count} szw\u00f3w."]
    assert polish.gettext("Cutting") == "Cutting"


def test_a_sentence_that_is_not_written_out_is_refused(tmp_path, monkeypatch):
    monkeypatch.setattr(MAKER, "ROOT", tmp_path)
    path = tmp_path / "words.py"
    path.write_text('from blocklang.wording import say\n\nNAME = "x"\nTITLE = say(NAME)\n')
    with pytest.raises(MAKER.NotSaidPlainlyError, match=r"words\.py:4: write the sentence out"):
        tuple(MAKER.gather_from(path))


def test_what_is_said_is_gathered_from_any_name_it_is_imported_by(tmp_path, monkeypatch):
    monkeypatch.setattr(MAKER, "ROOT", tmp_path)
    path = tmp_path / "words.py"
    path.write_text(
        "from blocklang.wording import message, noun, say as tell, say_number\n"
        "def say(text): ...\n"
        'say("not this")\n'
        'tell("One {a} " "line.", context="here", a=1)\n'
        'say_number("{count} gull", "{count} gulls", 3)\n'
        'message("{b}")\n'
        'noun("gull", "gulls")\n'
    )
    found = [(one.text, one.plural, one.context, one.fields) for one in MAKER.gather_from(path)]
    assert found[:3] == [
        ("One {a} line.", "", "here", {"a"}),
        ("{count} gull", "{count} gulls", "", {"count"}),
        ("{b}", "", "", None),
    ]
    assert {text for text, *_ in found[3:]} == {"gull", "gulls"}
    assert len({context for *_, context, _ in found[3:]}) == len(Place)
