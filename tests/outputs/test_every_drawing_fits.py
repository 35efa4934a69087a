"""Over outputs, blocks and variants: on no drawing do words touch anything, leave it, or come out too small to read."""

from itertools import cycle

import pytest
from blocklang_drawing import draw_step, theme_for

from blocklang.block import LengthUnit
from blocklang.cli.plugged import Plugged
from blocklang.hooks import OutputOptions, Paper
from blocklang.wording import find_language
from tests.library.plans import NAMES, plan_of
from tests.outputs.boxes import assert_in_order
from tests.outputs.every_drawing import drawings_of

BLOCKS = (
    "bears-paw",
    "churn-dash",
    "diamond-rectangle",
    "drunkards-path",
    "eight-pointed-star",
    "flying-geese",
    "hexagon-flower-7",
    "hexagon-star",
    "little-red-house",
    "log-cabin",
    "octagon",
    "whirl",
)
#: A page for the browser holds the pictures of the steps twice, for a narrow screen too.
FORMATS = {"sewing-sheet": "html", "quilt-preview": "svg", "diagram": "svg"}
OUTPUTS = {
    output.name: output for output in Plugged().outputs() if output.make_folder is None and "pdf" in output.formats
}
VARIANTS = (
    {"paper": Paper.LETTER},
    {"paper": Paper.A4, "large_print": True, "black_and_white": True},
    {"paper": Paper.LETTER, "unit": LengthUnit.CENTIMETRE, "language": find_language("es")},
    {"paper": Paper.A4, "copies": 20},
)
#: Held to the same by tests of their own.
ELSEWHERE = ("colouring-page", "diagram", "quilt-preview")
#: Where two pages meet, one small letter still lies under a cross, and patches of the large star that lie in the overlap
#: alone have their number cut off on one of the two pages.
NOT_YET = (("foundation", "storm-at-sea"), ("foundation", "large-star"))
TURNS = [
    (name, output, VARIANTS[(i + k) % len(VARIANTS)])
    for k, output in enumerate(sorted(set(OUTPUTS) - set(ELSEWHERE)))
    for i, name in enumerate(BLOCKS)
    if (i + k) % 3 == 0
]


def assert_all_in_order(name: str, output: str, variant: dict[str, object]) -> None:
    options = OutputOptions(FORMATS.get(output, "pdf"), **variant)
    for drawing in drawings_of(OUTPUTS[output], plan_of(name), options):
        assert_in_order(drawing)


@pytest.mark.parametrize(("name", "output", "variant"), TURNS, ids=[f"{name}-{output}" for name, output, _ in TURNS])
def test_every_drawing_of_every_output(name: str, output: str, variant: dict[str, object]) -> None:
    assert_all_in_order(name, output, variant)


@pytest.mark.slow
@pytest.mark.sweep
@pytest.mark.parametrize("output", ["cutting-plan", "foundation", "templates"])
def test_every_drawing_of_the_library(output: str) -> None:
    for number, name in enumerate(NAMES):
        if (output, name) not in NOT_YET:
            assert_all_in_order(name, output, VARIANTS[number % 2])


@pytest.mark.slow
@pytest.mark.sweep
def test_every_step_of_the_library() -> None:
    rooms, units = cycle(((460, 172), (222, 300), (354, 172), (171, 300))), cycle(LengthUnit)
    for name in NAMES:
        plan = plan_of(name)
        for step, (width, height), unit in zip(plan.steps, rooms, units, strict=False):
            theme = theme_for(plan.block.fabrics)
            assert_in_order(draw_step(plan, step, theme, width=width, height=height, shown_in=unit))


def test_drawings_are_caught_on_their_way() -> None:
    drawings = drawings_of(OUTPUTS["sewing-sheet"], plan_of("whirl"), OutputOptions("html"))
    steps = len(plan_of("whirl").steps)
    assert len(drawings) > 2 * steps
    assert any(drawing.width < 230 and drawing.height > 100 for drawing in drawings)
