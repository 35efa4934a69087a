"""Shapes to SVG: plain attributes, rounded numbers, escaped text, the same bytes every time."""

import re
from xml.etree import ElementTree

import pytest
from blocklang_drawing import (
    ArcTo,
    Arrow,
    Dot,
    Drawing,
    Group,
    LineTo,
    Paint,
    Path,
    Text,
    Trail,
    clean_text,
    shorten,
    text_width,
    to_svg,
)
from blocklang_drawing.numbers import write_number

NAMESPACE = "{http://www.w3.org/2000/svg}"
HOSTILE = (
    "</svg><script>alert(1)</script>",
    '"]]>',
    "a & b < c > d",
    "<!-- -->",
    "nul\x00bell\x07esc\x1b",
    "\ud800\ufffe",
    "' onload='x",
)

EVERYTHING = Drawing(
    120.0,
    60.0,
    (
        Path((Trail((0, 0), (LineTo((10, 0)), ArcTo((20, 10.126), 10, True, False)), closed=True),), Paint("#1f3a5f")),
        Path((Trail((1, 1), (LineTo((2.004, 3.0)),)),), Paint(stroke="#17303f", width=0.5, dash=(2, 1.5))),
        Group((Dot((30, 30), 3.4, Paint("#ffffff", "#17303f", 1.2)),), "a dot"),
        Arrow((40, 30), (60, 30), "#17303f", 1.3, 5.5, halo="#ffffff", both=True),
        Text((5, 50), "fog & deep", 9, "#17303f", bold=True, halo="#ffffff"),
    ),
    "Everything",
)


def test_every_shape(snapshot):
    assert to_svg(EVERYTHING) == snapshot


def test_the_same_bytes_every_time():
    assert to_svg(EVERYTHING) == to_svg(EVERYTHING)


def test_only_plain_colours_and_no_styles():
    svg = to_svg(EVERYTHING)
    colours = re.findall(r'(?:fill|stroke)="([^"]+)"', svg)
    assert colours
    assert all(colour == "none" or re.fullmatch(r"#[0-9a-f]{6}", colour) for colour in colours)
    assert "style" not in svg
    assert " id=" not in svg
    assert "class=" not in svg


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_stays_text(text):
    drawing = Drawing(10, 10, (Text((0, 9), text, 9, "#000000"), Group((), text)), text)
    root = ElementTree.fromstring(to_svg(drawing))
    assert {element.tag for element in root.iter()} <= {NAMESPACE + tag for tag in ("svg", "title", "text", "g")}
    assert "".join(root.find(NAMESPACE + "title").itertext()) == clean_text(text)


def test_without_declaration_it_may_stand_in_a_page():
    assert to_svg(EVERYTHING, declaration=False).startswith("<svg ")
    assert to_svg(EVERYTHING).startswith("<?xml ")


@pytest.mark.parametrize(
    ("value", "written"), [(0.0, "0"), (-0.001, "0"), (1.0, "1"), (2.005, "2"), (-1.239, "-1.24"), (12.5, "12.5")]
)
def test_numbers_are_short(value, written):
    assert write_number(value) == written


def test_clean_text_drops_what_xml_cannot_hold():
    assert clean_text("a\x00b\tc\ud800d\uffffe") == "a b c d e"
    assert clean_text("Öffnung 縫い é") == "Öffnung 縫い é"


def test_text_is_as_wide_as_its_letters():
    assert text_width("", 10) == 0
    assert text_width("ii", 10) == 2 * text_width("i", 10)
    assert text_width("W", 10) > text_width("i", 10)
    assert text_width("diamond", 10, bold=True) > text_width("diamond", 10)
    assert text_width("縫い", 10) >= 20


@pytest.mark.parametrize("room", [0, 5, 20, 60, 500])
def test_shortened_text_fits(room):
    short = shorten("setting triangle", 9, room)
    assert text_width(short, 9) <= room
    assert short == "setting triangle" or short == "" or short.endswith("…")
