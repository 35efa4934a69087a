"""What settings and black and white bring into an output is said in another language, too."""

import re

import pytest
from blocklang_colouring_page import blocklang_outputs as colouring_page
from blocklang_cutting_list import blocklang_outputs as cutting_list
from blocklang_cutting_plan import blocklang_outputs as cutting_plan
from blocklang_diagram import VIEWS
from blocklang_diagram import blocklang_outputs as diagram
from blocklang_foundation import blocklang_outputs as foundation
from blocklang_pressing_map import blocklang_outputs as pressing_map
from blocklang_quilt_preview import blocklang_outputs as quilt_preview
from blocklang_quilt_preview.arrangements import ARRANGEMENTS
from blocklang_templates import blocklang_outputs as templates
from blocklang_thickness import blocklang_outputs as thickness

from blocklang.block import LengthUnit
from blocklang.hooks import OutputOptions
from blocklang.wording import find_language
from tests.library.plans import plan_of
from tests.wording.strange import STRANGE, english_in, seen_or_heard

STOCK = ("stock", "fog: 2 fat quarters, 3 strips 2 1/2 in, 2 squares 5 in")
#: The output, its format, a setting, and a block that has something to say in it.
CASES = (
    *((diagram, "svg", ("view", view), "eight-pointed-star") for view in VIEWS),
    *((quilt_preview, "svg", ("turning", name), "flying-geese") for name in ARRANGEMENTS if "other" not in name),
    (colouring_page, "svg", ("large", "no"), "flying-geese"),
    (cutting_list, "text", None, "flying-geese"),
    (cutting_list, "html", None, "flying-geese"),
    (cutting_list, "csv", None, "eight-pointed-star"),
    (cutting_plan, "text", STOCK, "flying-geese"),
    (cutting_plan, "svg", STOCK, "eight-pointed-star"),
    (cutting_plan, "text", ("shrinkage", "3"), "fan"),
    (foundation, "svg", None, "flying-geese"),
    (pressing_map, "svg", None, "eight-pointed-star"),
    (templates, "svg", ("which", "all"), "eight-pointed-star"),
    (templates, "svg", ("window", "yes"), "fan"),
    (thickness, "svg", None, "fan"),
)
#: Signs that are the same in every language: of a product, and of a unit of length in a table.
SIGNS = {"x", "in"}


@pytest.mark.parametrize(("offered", "form", "setting", "name"), CASES)
def test_no_word_is_left_in_english(offered, form, setting, name):
    if setting and setting[1] in ("every-other", "pinwheel", "barn-raising"):
        name = "fan"  # a square
    plan, (output,) = plan_of(name), offered()
    options = OutputOptions(
        form, black_and_white=True, large_print=True, settings=(setting,) if setting else (), language=STRANGE
    )
    for file in output.make(plan, options):
        said = file.data.decode()
        shown = seen_or_heard(said) if form in ("svg", "html") else said
        assert set(english_in(shown, plan)) <= SIGNS


def test_pictures_have_the_signs_of_the_language():
    (drawn,) = (offered.make for offered in cutting_plan())
    options = OutputOptions("svg", unit=LengthUnit.CENTIMETRE, language=find_language("es"))
    picture = drawn(plan_of("fan"), options)[0].data.decode()
    assert "6,4 cm de ancho" in picture  # 63.5 mm, up to the next
    inches = drawn(plan_of("fan"), OutputOptions("svg", language=find_language("es")))[0].data.decode()
    assert "2 1/2″ de ancho" in inches
    assert not re.search(r"\d in\b", inches)
