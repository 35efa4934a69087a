"""Sayings: they are their English text everywhere, and are said again in another language."""

import copy
import json
import pickle
from dataclasses import asdict, dataclass
from enum import StrEnum

import pytest

from blocklang.wording import (
    ENGLISH,
    Language,
    Place,
    Saying,
    Words,
    find_language,
    joined,
    languages,
    listed,
    message,
    noun,
    say,
    say_decimal,
    say_number,
)

SPANISH = {
    "Sew {first} to {second}.": "Una {second} con {first}.",
    "the edge of {what}": "el borde de {what}",
    "{before} and {last}": "{before} y {last}",
    "the square": "el cuadrado",
    "ivy": "hiedra",
    "-": "de el=del|a el=al|y i...=e i...|y hi...=e hi...",
    ".": ",",
}


def _look_up(wanted, count):
    if wanted.plural:
        return {"{count} strip": ("{count} tira", "{count} tiras")}[wanted.text][count != 1]
    return SPANISH.get(wanted.text, wanted.text)


MADE_UP = Language("es", _look_up)


def test_a_saying_is_its_english_text():
    saying = say("Sew {first} to {second}.", first=say("the square"), second="fog")
    assert saying == "Sew the square to fog."
    assert (str(saying), json.dumps(saying)) == ("Sew the square to fog.", '"Sew the square to fog."')
    assert type(str(saying)) is str
    assert {saying: 1} == {"Sew the square to fog.": 1}
    assert sorted([saying, "A"]) == ["A", saying]


def test_it_is_said_again_part_by_part():
    saying = say("Sew {first} to {second}.", first=say("the square"), second="fog")
    assert MADE_UP.say(saying) == "Una fog con el cuadrado."
    assert type(MADE_UP.say(saying)) is str
    assert ENGLISH.say(saying) is saying


def test_the_authors_text_is_never_looked_up_or_filled():
    saying = say("Sew {first} to {second}.", first="{second}", second="the square")
    assert saying == "Sew {second} to the square."
    assert MADE_UP.say(saying) == "Una the square con {second}."
    assert MADE_UP.say("the square") == "the square"


@pytest.mark.parametrize(("count", "english", "spanish"), [(1, "1 strip", "1 tira"), (3, "3 strips", "3 tiras")])
def test_numbers_have_plurals(count, english, spanish):
    saying = say_number("{count} strip", "{count} strips", count)
    assert (saying, MADE_UP.say(saying)) == (english, spanish)


def test_lists_and_sayings_one_after_the_other():
    assert listed(["a"]) == "a"
    assert listed(iter("abc")) == "a, b and c"
    assert MADE_UP.say(listed([say("the square"), "b", "c"])) == "el cuadrado, b y c"
    assert joined((say("the square"), "b"), " + ") == "the square + b"
    assert MADE_UP.say(joined((say("the square"), "b"), " + ")) == "el cuadrado + b"
    assert MADE_UP.say(joined(("a", "b"), say("ivy"))) == "ahiedrab"


def test_decimals_have_the_mark_of_the_language():
    assert (say_decimal("10.5"), MADE_UP.say(say_decimal("10.5"))) == ("10.5", "10,5")


def test_words_run_together_after_all_is_said():
    assert MADE_UP.say(say("the edge of {what}", what=say("the square"))) == "el borde del cuadrado"
    assert MADE_UP.say(say("the edge of {what}", what="elders")) == "el borde de elders"
    assert MADE_UP.say(listed(["fog", say("ivy")])) == "fog e hiedra"


def test_what_an_author_wrote_does_not_run_together():
    saying = say("the edge of {what}", what=say("the edge of {what}", what="casa de el faro"))
    assert MADE_UP.say(saying) == "el borde del borde de casa de el faro"


def test_a_translation_may_leave_out_fields_and_keeps_braces_that_name_none():
    said = Language("xx", lambda wanted, count: "{second}, {third} {")
    assert said.say(say("Sew {first} to {second}.", first="a", second="b")) == "b, {third} {"


def test_a_saying_without_parts_keeps_its_braces_for_later():
    assert say("{done} of {all} steps done") == "{done} of {all} steps done"


@dataclass(frozen=True, slots=True)
class Page:
    """Contents of an output."""

    name: str
    lines: tuple[str, ...]
    others: dict[str, list[str]]
    number: int = 3


class Kind(StrEnum):
    """A text that is no saying."""

    ONE = "the square"


def test_whole_contents_are_told_at_once():
    inner = Page("fog", (say("the square"),), {"the square": [say("the square")]})
    told = MADE_UP.tell((inner, Kind.ONE, None))
    assert told == (Page("fog", ("el cuadrado",), {"the square": ["el cuadrado"]}), Kind.ONE, None)
    assert ENGLISH.tell(inner) is inner
    unsaid = Page("fog", (), {})
    assert MADE_UP.tell((unsaid,))[0] == unsaid


def test_copies_of_sayings_are_sayings():
    saying = listed([say("the square"), "b"])
    for other in (copy.copy(saying), copy.deepcopy(saying), asdict(Page(saying, (), {}))["name"]):
        assert other is saying
    again = pickle.loads(pickle.dumps(saying))
    assert (again, MADE_UP.say(again)) == (saying, "el cuadrado y b")


def test_messages_stand_in_tables():
    kinds = {1: message("the edge of {what}"), 2: message("{count} strip", "{count} strips")}
    assert kinds[1].say(what="a") == "the edge of a"
    assert kinds[2].number(4) == "4 strips"


def test_a_noun_has_a_message_for_each_place():
    diamond = noun("diamond", "diamonds", is_patch=False)
    assert diamond.message(Place.THE_PATCH).text == "diamond patch"
    assert diamond.message(Place.EACH).text == "diamond patches"
    assert diamond.message(Place.SEVERAL).plural == "diamonds"
    assert len({(one.text, one.context) for one in diamond.messages()}) == len(Place)


def test_languages_are_found_by_their_codes():
    assert languages()[0] == "en"
    assert find_language("en") is ENGLISH
    assert find_language("xx") is None
    assert find_language("../es") is None
    assert find_language("es") is find_language("es")


def test_a_stranger_keeps_catalogues_beside_the_module(tmp_path):
    from tests.wording.catalogue_maker import packed

    (tmp_path / "es.mo").write_bytes(packed({"{count} gull": "{count} gaviota"}, "{count} gulls", "{count} gaviotas"))
    words = Words.beside(str(tmp_path / "saltmarsh.py"))
    spanish = find_language("es")
    assert spanish.say(words.say_number("{count} gull", "{count} gulls", 2)) == "2 gaviotas"
    assert spanish.say(words.say("{count} gull", context="a boat", count=1)) == "1 gull"
    other = Words.beside(str(tmp_path / "nothing" / "here.py"))
    assert spanish.say(other.say("gull")) == "gull"
    assert isinstance(other.message("gull").say(), Saying)
