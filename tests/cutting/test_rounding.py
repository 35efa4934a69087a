"""Marks of the ruler: strictly up beyond the slack, never up for lattice noise."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from blocklang.cutting import CuttingOptions, Rounding
from blocklang.cutting.rounding import MARKS, SLACK, measure


@pytest.mark.parametrize(
    ("exact", "shown"),
    [
        (3.0, Fraction(3)),
        (3.0000001, Fraction(3)),  # lattice noise
        (3.0004, Fraction(3)),  # within 1/2000 in
        (3.0006, Fraction(25, 8)),  # beyond it
        (2.985, Fraction(3)),
        (2.9985, Fraction(3)),
        (4.0147, Fraction(33, 8)),
        (6.1777, Fraction(25, 4)),
        (1.3284, Fraction(11, 8)),
    ],
)
def test_rounding_up_to_eighths(exact, shown):
    assert measure(exact, CuttingOptions()).shown == shown


def test_other_rulers():
    assert measure(4.0147, CuttingOptions(rounding=Rounding.SIXTEENTHS)).shown == Fraction(65, 16)
    metric = measure(4.0147, CuttingOptions(rounding=Rounding.MILLIMETRES)).shown
    assert metric * Fraction(254, 10) == 102  # 101.97 mm
    assert measure(4.0147, CuttingOptions(round_up=False)).shown == 4
    assert measure(6.1777, CuttingOptions(round_up=False)).shown == Fraction(49, 8)


@given(st.floats(0.1, 200), st.sampled_from(Rounding))
def test_rounded_up_is_never_short_and_never_a_mark_too_far(exact, rounding):
    found = measure(exact, CuttingOptions(rounding=rounding))
    assert found.exact == exact
    assert found.shown % MARKS[rounding] == 0
    assert exact - SLACK - 1e-9 <= found.shown < exact - SLACK + MARKS[rounding] + 1e-9


@given(st.floats(0.1, 200), st.sampled_from(Rounding))
def test_rounded_to_nearest_is_off_by_half_a_mark_at_most(exact, rounding):
    found = measure(exact, CuttingOptions(rounding=rounding, round_up=False))
    assert abs(float(found.shown) - exact) <= float(MARKS[rounding]) / 2 + 1e-9
