"""What the pictures of the sheet show, in words: the same on a page of HTML and in a PDF."""

import re
from io import BytesIO

import pytest
from pypdf import PdfReader

from blocklang.hooks import OutputOptions
from tests.sheets.plans import NAMES, named_plan
from tests.sheets.test_sewing_sheet import OUTPUT


def made(plan, kind):
    return OUTPUT.make(plan, OutputOptions(kind))[0].data


def figures(node):
    """Yield the alternative texts of a PDF's structure tree."""
    for child in node if isinstance(node, list) else [node]:
        child = child.get_object()
        if isinstance(child, dict):
            if child.get("/S") == "/Figure":
                yield child.get("/Alt")
            if "/K" in child:
                yield from figures(child["/K"])


@pytest.mark.parametrize("name", NAMES)
def test_every_picture_of_the_pdf_says_what_the_page_says(name):
    plan = named_plan(name)
    html = made(plan, "html").decode()
    page = set(re.findall(r"<title>([^<]+\.)</title>", html))
    root = PdfReader(BytesIO(made(plan, "pdf"))).trailer["/Root"]["/StructTreeRoot"]
    told = list(figures(root["/K"]))
    assert len(told) >= len(plan.steps) + 3
    assert set(told) == page


def test_a_step_is_told_before_and_after():
    html = made(named_plan("star"), "html").decode()
    steps = re.findall(r"<title>(Before: [^<]+)</title>", html)
    assert (
        "Before: diamond × 2, laid apart, with the sewing lines marked. After: unit A, with an arrow for each pressed seam."
        in steps
    )
    assert [said for said in steps if "After: the finished block" in said]
