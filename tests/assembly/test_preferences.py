"""Every field of a cost has its own reason, and the reason told is the first difference from what is not as good."""

from dataclasses import fields

import pytest

from blocklang.assembly.preferences import RowCost, SetInCost, Why, why_best


@pytest.mark.parametrize("kind", [RowCost, SetInCost])
def test_every_field_has_a_reason(kind: type[RowCost] | type[SetInCost]) -> None:
    assert len(kind.reasons()) == len(fields(kind))


def test_the_first_difference_is_told() -> None:
    best = RowCost(0, 0, 2, -3, 3, 0)
    assert why_best([best]) is Why.ONLY_WAY
    assert why_best([best, best]) is Why.FIRST_IN_FILE
    assert why_best([RowCost(0, 0, 2, -2, 2, 0), best]) is Why.LONG_ROW
    assert why_best([RowCost(0, 1, 0, -9, 1, 0), best, best]) is Why.EASY_TO_MEASURE


def test_a_place_in_the_file_is_no_reason_while_there_is_a_better_one() -> None:
    first, second = SetInCost(0, 0, 1, 0, 2, -4, 0), SetInCost(0, 0, 1, 0, 2, -4, 7)
    assert why_best([second, first]) is Why.FIRST_IN_FILE
    assert why_best([second, first, SetInCost(0, 2, 1, 0, 2, -4, 1)]) is Why.SMALL_SET_IN
