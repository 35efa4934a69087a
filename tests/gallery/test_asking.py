"""What is asked for about a gallery is understood, or refused in one sentence."""

import pytest
from blocklang_gallery.asking import read_choices

from blocklang.block import LengthUnit
from blocklang.geometry import TICKS_PER_INCH
from blocklang.hooks import CannotMakeError
from tests.gallery.at_hand import options_of


def sizes_of(*settings, **more):
    return [(size.written, size.ticks / TICKS_PER_INCH) for size in read_choices(options_of(*settings, **more)).sizes]


def test_usual_sizes_are_in_the_unit_asked_for():
    assert sizes_of() == [("6in", 6), ("9in", 9), ("12in", 12)]
    metric = sizes_of(unit=LengthUnit.CENTIMETRE)
    assert [written for written, _ in metric] == ["15cm", "20cm", "30cm"]
    assert [inches for _, inches in metric] == pytest.approx([15 / 2.54, 20 / 2.54, 30 / 2.54], abs=1e-5)
    assert sizes_of(unit=LengthUnit.MILLIMETRE)[0] == ("150mm", pytest.approx(150 / 25.4, abs=1e-5))


def test_sizes_are_read_as_people_write_them():
    assert sizes_of("sizes=8 in, 6 1/2 in,3/4in , 7.5in,8in") == [
        ("8in", 8),
        ("6 1/2in", 6.5),
        ("3/4in", 0.75),
        ("7.5in", 7.5),
    ]
    assert sizes_of("sizes=6-1/2in") == [("6 1/2in", 6.5)]


def test_no_sizes_but_the_blocks_own():
    assert sizes_of("sizes=,") == []


@pytest.mark.parametrize(
    "written", ["6", "six", "6in;9in", "0in", "-6in", "1/0in", "6in 9in", "99999in", "６in", "6in\n--force"]
)
def test_what_is_no_size_is_said(written):
    with pytest.raises(CannotMakeError, match=r"is no size: write --set sizes=6in,9in,12in\."):
        read_choices(options_of(f"sizes={written}"))


def test_too_many_sizes_are_said():
    with pytest.raises(CannotMakeError, match="8 sizes at most"):
        read_choices(options_of("sizes=" + ",".join(f"{n}in" for n in range(1, 10))))


def test_title_and_sheets():
    assert read_choices(options_of()).title == "Blocks to sew"
    assert read_choices(options_of()).with_sheets
    chosen = read_choices(options_of("title=Saltmarsh Piecers' Guild", "sheets=no"))
    assert (chosen.title, chosen.with_sheets) == ("Saltmarsh Piecers' Guild", False)
