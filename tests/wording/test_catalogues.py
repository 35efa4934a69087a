"""The catalogues: what stands in the code is in them, translated whole, and what is read is what translators see."""

import re

import pytest
from babel.messages.pofile import read_po

from blocklang.wording import Place, languages
from tests.wording.catalogue_maker import load

MAKER = load()
CODES = tuple(code for code in languages() if code != "en")
FIELD = re.compile(r"\{(\w+)\}")


def entries_of(code):
    with (MAKER.HOME / f"{code}.po").open("rb") as file:
        return [entry for entry in read_po(file, locale=code) if entry.id]


def each(text):
    return (text,) if isinstance(text, str) else tuple(text)


def test_spanish_is_there():
    assert CODES == ("es",)


def test_the_files_are_what_the_code_and_the_translations_make():
    stale = [path.name for path, data in MAKER.files().items() if path.read_bytes() != data]
    assert not stale, "run python3 dev.py words"


@pytest.mark.parametrize("code", CODES)
def test_every_sentence_is_translated_and_none_is_doubtful(code):
    assert MAKER.untranslated(MAKER.HOME / f"{code}.po") == ()
    assert len(entries_of(code)) == len(MAKER.template_of(MAKER.gather()))


@pytest.mark.parametrize("code", CODES)
def test_plurals_are_complete(code):
    for entry in entries_of(code):
        assert len(each(entry.string)) == (2 if isinstance(entry.id, tuple) else 1), entry.id


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
