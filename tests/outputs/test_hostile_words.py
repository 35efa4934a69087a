"""Words that would break out of a picture stay words in every one."""

from dataclasses import replace
from io import BytesIO
from xml.etree import ElementTree

import pytest
from blocklang_colouring_page import blocklang_outputs as colouring
from blocklang_diagram import VIEWS
from blocklang_diagram import blocklang_outputs as diagram
from blocklang_quilt_preview import blocklang_outputs as quilt
from pypdf import PdfReader

from blocklang.block import Credit
from blocklang.hooks import OutputOptions
from tests.sheets.plans import named_plan

EVIL = '</svg><script>alert(1)</script>"]]>\x00\x07#image("x") $x$ ' + "long " * 60
CASES = [(diagram, (("view", view),)) for view in VIEWS] + [(colouring, ()), (quilt, (("turning", "rows-mirrored"),))]


@pytest.fixture(scope="module")
def plan():
    """Every text that a block holds is hostile."""
    kind = named_plan("striped-star")
    block = kind.block
    credit = Credit(EVIL, EVIL, EVIL, EVIL)
    fabrics = tuple(replace(fabric, title=EVIL, role=EVIL) for fabric in block.fabrics)
    patches = tuple(replace(patch, id=f"{EVIL}{place}", name=EVIL) for place, patch in enumerate(block.patches))
    evil = replace(
        block, name=EVIL, fabrics=fabrics, patches=patches, credits=(credit,) * 9, notes=(EVIL,), family=EVIL
    )
    pieces = tuple(replace(piece, name=EVIL) for piece in kind.cutting.pieces)
    return replace(kind, block=evil, cutting=replace(kind.cutting, pieces=pieces))


@pytest.mark.parametrize(("offered", "settings"), CASES)
@pytest.mark.parametrize("plain", [False, True])
def test_svg_holds_no_other_element(plan, offered, settings, plain):
    (output,) = offered()
    for file in output.make(plan, OutputOptions("svg", settings=settings, black_and_white=plain)):
        tags = {element.tag.rpartition("}")[2] for element in ElementTree.fromstring(file.data).iter()}
        assert tags <= {"svg", "title", "g", "path", "text", "circle"}
        assert b"<script" not in file.data


@pytest.mark.parametrize(("offered", "settings"), CASES)
def test_pdf_can_be_read(plan, offered, settings):
    (output,) = offered()
    (file,) = output.make(plan, OutputOptions("pdf", settings=settings))
    pages = PdfReader(BytesIO(file.data)).pages
    assert all("/JS" not in page and "/AA" not in page for page in pages)
