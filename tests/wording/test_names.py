"""What patches are called in a sentence, in English and in a language that has articles with a gender."""

import pytest

from blocklang.cutting.called import Thing, called, of_fabric, thing_of
from blocklang.cutting.nouns import NOUNS
from blocklang.cutting.words import each_of, several, the, the_patch, two_patches
from blocklang.wording import find_language

CORNER, SQUARE = called(Thing("corner")), called(Thing(shape=NOUNS["square"]))
TOES = called(Thing("toes", NOUNS["square"]))
DIAMOND_B = called(Thing(shape=NOUNS["rhombus"], letter="B"))


@pytest.mark.parametrize(
    ("name", "alone", "one", "patch", "pair", "many", "each"),
    [
        (CORNER, "corner", "the corner", "the corner patch", "two corner patches", "4 corners", "4 corner patches"),
        (SQUARE, "square", "the square", "the square", "two square patches", "4 squares", "4 squares"),
        (
            TOES,
            "toes square",
            "the toes square",
            "the toes square",
            "two toes square patches",
            "4 toes squares",
            "4 toes squares",
        ),
        (
            *(DIAMOND_B, "diamond B", "the diamond B", "the diamond patch B", "two diamond B patches"),
            *("4 of diamond B", "4 diamond patches B"),
        ),
        (
            *(
                of_fabric(CORNER, "Fog"),
                "Fog corner",
                "the Fog corner",
                "the Fog corner patch",
                "two Fog corner patches",
            ),
            *("4 Fog corners", "4 Fog corner patches"),
        ),
        ("brush", "brush", "the brush", "the brush patch", "two brush patches", "4 brushes", "4 brush patches"),
        ("reeds", "reeds", "the reeds", "the reeds patch", "two reeds patches", "4 reeds", "4 reeds patches"),
        (
            "sea patch",
            "sea patch",
            "the sea patch",
            "the sea patch",
            "two sea patch patches",
            "4 sea patches",
            "4 sea patches",
        ),
    ],
)
def test_names_in_english(name, alone, one, patch, pair, many, each):
    assert (name, the(name), the_patch(name), two_patches(name)) == (alone, one, patch, pair)
    assert (several(name, 4), several(name, 1)) == (many, one)
    assert (each_of(name, 4), each_of(name, 1)) == (f"each of the {each}", patch)


def test_names_in_spanish():
    spanish = find_language("es")
    said = [spanish.say(text) for text in (CORNER, the(CORNER), several(CORNER, 2), two_patches(CORNER), the(SQUARE))]
    assert said == ["«corner»", "la pieza «corner»", "dos piezas «corner»", "dos piezas «corner»", "el cuadrado"]
    assert spanish.say(the(TOES)) == "el cuadrado «toes»"
    assert spanish.say(several(SQUARE, 5)) == "5 cuadrados"


def test_any_text_is_taken_for_an_authors_name():
    assert thing_of("ray") == Thing("ray")
    assert thing_of("ray A") == Thing("ray", letter="A")
    assert thing_of(TOES) == Thing("toes", NOUNS["square"])
