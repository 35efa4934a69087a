"""docs/language.md: every example is run, and every bound and name it states is the real one."""

import re
from pathlib import Path

import pytest

from blocklang import limits
from blocklang.language import BUILT_IN_CELLS
from blocklang.language.scanning import RESERVED
from tests.language.reading_blocks import HEADING, block_of, covered

TEXT = (Path(__file__).parents[2] / "docs" / "language.md").read_text(encoding="utf-8")
FENCES = re.findall(r"```(\w+)\n(.*?)```", TEXT, re.DOTALL)


@pytest.mark.parametrize("text", [body for kind, body in FENCES if kind == "block"])
def test_every_whole_example_is_a_block_without_gaps(text: str) -> None:
    assert covered(block_of(text)) == pytest.approx(1, abs=1e-6)


@pytest.mark.parametrize("text", [body for kind, body in FENCES if kind == "lines"])
def test_every_example_line_is_understood(text: str) -> None:
    block_of(HEADING + "rows\n  F\nend\n" + text)


def test_every_example_is_of_a_kind_that_is_run() -> None:
    assert {kind for kind, _ in FENCES} == {"block", "lines"}


def test_every_built_in_cell_is_described() -> None:
    assert [cell.name for cell in BUILT_IN_CELLS if cell.name.rpartition("-")[0] not in TEXT] == []


def test_the_words_that_name_nothing_are_listed() -> None:
    listed = re.search(r"can be named by them: (.*?)\. A minus", TEXT, re.DOTALL)
    assert listed is not None
    assert set(re.findall(r"\w+", listed[1])) == RESERVED


@pytest.mark.parametrize(
    "bound",
    ["MOST_BYTES", "MOST_WORDS", "MOST_PATCHES", "MOST_POINTS", "MOST_FABRICS", "DEEPEST_GROUPS", "DEEPEST_PLACING",
     "MOST_TURNS", "MOST_CORNERS", "LARGEST_LENGTH"],
)  # fmt: skip
def test_every_bound_is_stated_as_it_is(bound: str) -> None:
    said = TEXT.partition("## Bounds")[2].partition("##")[0]
    assert f" {getattr(limits, bound):,} " in said.replace("\n", " ")
