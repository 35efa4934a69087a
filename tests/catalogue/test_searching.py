"""What people write to find blocks."""

import pytest

from blocklang.catalogue.searching import ANYTHING, Range, Refused, read_range, read_sizes
from blocklang.geometry import TICKS_PER_INCH

END = ANYTHING.most


@pytest.mark.parametrize(
    ("text", "least", "most"),
    [
        ("no", 0, 0), ("None", 0, 0), ("some", 1, END), ("4", 4, 4), ("0", 0, 0), ("..40", 0, 40), ("9..", 9, END),
        ("4..12", 4, 12), ("4..4", 4, 4),
    ],
)  # fmt: skip
def test_numbers(text, least, most) -> None:
    assert read_range(text) == Range(least, most)


@pytest.mark.parametrize("text", ["", "..", "x", "-1", "4...5", "1.5", "12..4", "4..x", "9999999999", "4 ..", "٣"])
def test_what_is_no_number_is_refused(text) -> None:
    assert isinstance(read_range(text), Refused)


@pytest.mark.parametrize(
    ("text", "least", "most"),
    [
        ("12in", 12, 12), ("12 in", 12, 12), ("12", 12, 12), ("6 1/2in", 6.5, 6.5), ("6-1/2 in", 6.5, 6.5),
        ("1/2in", 0.5, 0.5), ("12.5 in", 12.5, 12.5), ("..9in", 0, 9), ("6..9in", 6, 9), ("6in..9in", 6, 9),
        ("9in..", 9, END), ("2.54cm", 1, 1), ("25.4mm..", 1, END), ("10..20cm", 10 / 2.54, 20 / 2.54),
    ],
)  # fmt: skip
def test_sizes_meet_a_ruler_mark_either_way(text, least, most) -> None:
    read = read_sizes(text)
    assert isinstance(read, Range)
    assert read.has(least * TICKS_PER_INCH)
    assert read.has(most * TICKS_PER_INCH)
    assert not read.has(least * TICKS_PER_INCH - TICKS_PER_INCH / 16)
    assert most == END or not read.has(most * TICKS_PER_INCH + TICKS_PER_INCH / 16)


@pytest.mark.parametrize(
    "text", ["", "..", "x", "12ft", "1/0in", "-3in", "9in..6in", "1/2/3in", "12in..x", "6 in 2", "6 7"]
)
def test_what_is_no_size_is_refused(text) -> None:
    assert isinstance(read_sizes(text), Refused)
