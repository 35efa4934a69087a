"""The diagram output in its three formats."""

import builtins
from dataclasses import replace
from io import BytesIO
from xml.etree import ElementTree

import pytest
from blocklang_diagram import VIEWS, blocklang_outputs
from pypdf import PdfReader

from blocklang.hooks import CannotMakeError, OutputOptions
from tests.sheets.plans import NAMES, named_plan

(OUTPUT,) = blocklang_outputs()


def made(name, **options):
    (file,) = OUTPUT.make(named_plan(name), OutputOptions(**options))
    assert file.name == ""
    return file.data


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("view", VIEWS)
@pytest.mark.parametrize("plain", [False, True])
def test_svg_is_well_formed(name, view, plain):
    svg = made(name, format="svg", settings=(("view", view),), black_and_white=plain)
    assert ElementTree.fromstring(svg).tag.endswith("svg")
    assert svg == made(name, format="svg", settings=(("view", view),), black_and_white=plain)


def test_the_numbered_view_carries_the_names_of_the_patches():
    svg = made("star", format="svg", settings=(("view", "numbered"),)).decode()
    assert all(patch.id in svg for patch in named_plan("star").block.patches)
    assert "diamond" not in made("star", format="svg").decode()


def test_png():
    assert made("star", format="png").startswith(b"\x89PNG")


def test_pdf_is_one_page_and_has_no_date():
    pdf = made("star", format="pdf")
    assert len(PdfReader(BytesIO(pdf)).pages) == 1
    assert b"CreationDate" not in pdf
    assert pdf == made("star", format="pdf")


def test_hostile_names_stay_text():
    plan = named_plan("four-patch")
    patches = tuple(replace(patch, id="</text><script>") for patch in plan.block.patches)
    hostile = replace(plan, block=replace(plan.block, name='"]]></svg><script>\x00', patches=patches))
    (file,) = OUTPUT.make(hostile, OutputOptions("svg", settings=(("view", "numbered"),)))
    assert not [element for element in ElementTree.fromstring(file.data).iter() if element.tag.endswith("script")]


@pytest.mark.parametrize("kind", ["png", "pdf"])
def test_a_missing_cairo_is_one_sentence(kind, monkeypatch):
    honest = builtins.__import__

    def without_cairo(name, *rest):
        if name == "cairosvg":
            raise OSError("no library called cairo was found")
        return honest(name, *rest)

    monkeypatch.setattr(builtins, "__import__", without_cairo)
    with pytest.raises(CannotMakeError, match="cairo"):
        made("star", format=kind)
    assert made("star", format="svg")
