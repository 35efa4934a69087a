"""The blocks that ship: sound, credited, closed, and the same at every size."""

from pathlib import Path

import pytest

from blocklang.graph import build_graph
from blocklang.language import Overrides
from tests.language.reading_blocks import LIBRARY, block_of, covered, work_out

FILES = sorted(LIBRARY.rglob("*.block"))
#: How many patches the tradition gives these blocks.
PATCHES = {
    "nine-patch": 9, "churn-dash": 17, "ohio-star": 21, "shoo-fly": 13, "friendship-star": 13, "four-patch": 4,
    "pinwheel": 8, "sawtooth-star": 17, "bears-paw": 45, "log-cabin": 17, "flying-geese": 3, "whirl": 5,
    "eight-pointed-star": 16, "large-star": 656, "tumbling-blocks": 21, "hexagon-flower-7": 7, "hexagon-flower-19": 19,
    "drunkards-path": 32, "harbour-sampler": 64, "tumbling-block": 3,
}  # fmt: skip


def text_of(path: Path) -> str:
    return path.read_text(encoding="utf-8")


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_library_block_is_sound(path: Path) -> None:
    block, diagnostics = work_out(text_of(path))
    assert block is not None
    assert diagnostics == ()
    assert build_graph(block).diagnostics == ()
    assert covered(block) == pytest.approx(1, abs=1e-4)


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_library_block_says_whom_it_is_from(path: Path) -> None:
    block = block_of(text_of(path))
    assert block.credits[0].author
    assert block.credits[0].licence == "CC-BY-4.0"
    assert block.family == path.parent.name


@pytest.mark.parametrize("name", PATCHES)
def test_a_library_block_has_the_patches_of_the_tradition(name: str) -> None:
    path = next(path for path in FILES if path.stem == name)
    assert len(block_of(text_of(path)).patches) == PATCHES[name]


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_library_block_is_the_same_at_another_size(path: Path) -> None:
    small = block_of(text_of(path))
    large = block_of(text_of(path), Overrides(size=f"{small.size[0] * 3} in / 720720"))
    assert large.size[0] == pytest.approx(3 * small.size[0], abs=3)
    for before, after in zip(small.patches, large.patches, strict=True):
        assert after.outline.area() == pytest.approx(9 * before.outline.area(), rel=1e-4)
    assert large.seam_allowance == small.seam_allowance
