"""Every constant of blocklang/limits.py is tried at the bound and one past it: here, or in the test that the table names."""

import inspect
from collections.abc import Callable
from fractions import Fraction

import pytest

from blocklang import limits
from blocklang.language.quantities import Quantity, bounded
from blocklang.language.suggesting import nearest
from blocklang.limits import MOST_COMPARED, MOST_COPIES, MOST_FRACTION_BITS, SMALLEST_LENGTH
from tests.catalogue import test_index
from tests.cli import test_finding
from tests.hostile.answering import typed
from tests.language import test_limits
from tests.language.reading_blocks import HEADING, codes
from tests.packs import test_limits as pack_limits


def test_fraction_of_the_most_bits_stays_exact_and_one_of_more_does_not() -> None:
    for bits, exact in ((MOST_FRACTION_BITS, True), (MOST_FRACTION_BITS + 1, False)):
        quantity = bounded(Quantity(Fraction(1, 2 ** (bits - 1))))
        assert isinstance(quantity, Quantity)
        assert isinstance(quantity.value, Fraction) == exact


def test_block_of_the_smallest_size_is_read_and_a_smaller_one_is_not() -> None:
    smaller = SMALLEST_LENGTH - 0.0001
    for size, found in ((SMALLEST_LENGTH, []), (smaller, ["size-too-small"])):
        text = HEADING.replace("size 6 in", f"size {size:.4f} in") + "rows\n F\nend\n"
        assert [code for code in codes(text) if code != "unused-fabric"] == found


def test_misspelt_name_is_compared_with_the_most_names_and_no_more() -> None:
    before = [f"a{number:05}" for number in range(MOST_COMPARED - 1)]
    assert nearest("zzharbor", [*before, "zzharbour"]) == ["zzharbour"]
    assert nearest("zzharbor", [*before, "b", "zzharbour"]) == []


def test_plan_is_made_for_the_most_copies_and_no_more() -> None:
    assert typed("plan", "nine-patch", "--copies", str(MOST_COPIES))[0] == 0
    assert typed("plan", "nine-patch", "--copies", str(MOST_COPIES + 1))[0] == 2


TRIED: dict[str, Callable[..., None]] = {
    **dict.fromkeys(test_limits.AT_THE_BOUND, test_limits.test_at_the_bound_a_file_is_read_and_past_it_is_told_so),
    "MOST_BYTES": test_limits.test_a_file_of_the_largest_size_is_read,
    "MOST_WORDS": test_limits.test_a_file_of_the_most_words_is_read,
    "MOST_MESSAGES": test_limits.test_only_so_many_messages_are_kept,
    "DEEPEST_PLACING": test_limits.test_blocks_are_placed_in_blocks_so_deep,
    "SMALLEST_LENGTH": test_block_of_the_smallest_size_is_read_and_a_smaller_one_is_not,
    "MOST_FRACTION_BITS": test_fraction_of_the_most_bits_stays_exact_and_one_of_more_does_not,
    "MOST_COMPARED": test_misspelt_name_is_compared_with_the_most_names_and_no_more,
    "MOST_COPIES": test_plan_is_made_for_the_most_copies_and_no_more,
    "MOST_MANIFEST_BYTES": pack_limits.test_size_of_a_file,
    "MOST_KEY_BYTES": pack_limits.test_size_of_a_file,
    "MOST_PACK_BYTES": pack_limits.test_size_of_the_pack,
    "MOST_PACK_BLOCKS": pack_limits.test_number_of_files,
    "MOST_PACK_TEXT": pack_limits.test_size_of_all_files_unfolded,
    "MOST_UNFOLDING": pack_limits.test_how_far_a_file_unfolds,
    "LONGEST_FILE_NAME": pack_limits.test_length_of_a_name,
    "DEEPEST_FOLDERS": pack_limits.test_depth_of_folders,
    "MOST_LISTED": test_finding.test_no_more_files_are_listed_than_the_bound,
    "MOST_INDEX_BYTES": test_index.test_index_of_the_largest_size_is_read_and_a_larger_one_is_not,
}


def test_every_bound_is_tried() -> None:
    assert set(TRIED) == {name for name in vars(limits) if name.isupper()}


@pytest.mark.parametrize("name", sorted(TRIED))
def test_test_of_a_bound_is_about_that_bound(name: str) -> None:
    said = inspect.getsource(TRIED[name]).replace("AT_THE_BOUND[name]", str(list(test_limits.AT_THE_BOUND)))
    marks = getattr(TRIED[name], "pytestmark", [])
    assert name in said or any(str(getattr(limits, name)) in str(mark.args) for mark in marks)
