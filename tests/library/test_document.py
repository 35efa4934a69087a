"""docs/library.md tells the library as it is."""

import os
from pathlib import Path
from statistics import median

from tests.library.listing import page
from tests.library.plans import BLOCKS

PAGE = Path(__file__).parents[2] / "docs" / "library.md"
FAMILIES = (
    "baskets-and-houses borders-and-lattices curves five-patch four-patch hexagons-and-diamonds log-cabins nine-patch "
    "samplers seven-patch stars strips units"
)


def test_the_page_is_up_to_date() -> None:
    if os.environ.get("BLOCKLANG_RENEW"):
        PAGE.write_text(page(), encoding="utf-8")
    assert PAGE.read_text(encoding="utf-8") == page()


def test_there_is_a_folder_for_every_family() -> None:
    assert " ".join(sorted(path.name for path in BLOCKS.iterdir())) == FAMILIES


def test_a_block_is_told_in_few_lines() -> None:
    """Half of the files have fewer than fifteen lines."""
    texts = (path.read_text(encoding="utf-8") for path in BLOCKS.glob("*/*.block"))
    assert median(len(text.splitlines()) for text in texts) < 15


def test_every_way_of_placing_patches_is_used_by_several_files() -> None:
    texts = [path.read_text(encoding="utf-8") for path in BLOCKS.glob("*/*.block")]
    for words, least in (("\nrows", 20), ("\npatch ", 20), ("  patch ", 20), (" through ", 20), ("\nplace ", 5),
                         ("\ncut ", 2), ("\nadd ", 3), ("turn ", 20), ("mirror ", 2), (" arc ", 6), (" times about ", 5)):  # fmt: skip
        assert sum(words in text for text in texts) >= least, words
