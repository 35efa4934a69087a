"""The sewing sheet as a page: sound by itself, before any browser sees it."""

import re
import time
from base64 import b64encode
from dataclasses import replace
from hashlib import sha256
from xml.etree import ElementTree

import pytest
from blocklang_drawing.keeping_together import kept_together
from blocklang_sewing_sheet.ticks_key import ticks_key

from blocklang.block import LengthUnit
from blocklang.hooks import OutputOptions, Paper
from blocklang.wording import ENGLISH
from tests.sheets.plans import NAMES, named_plan
from tests.sheets.test_sewing_sheet import OUTPUT, read


def page_of(plan, **options):
    (file,) = OUTPUT.make(plan, OutputOptions("html", **options))
    return file.data.decode()


def drawings_in(html):
    """Return the drawings of a page, those inside drawings with them."""
    depth, start, found = 0, 0, []
    for tag in re.finditer(r"<svg\b|</svg>", html):
        if tag[0] == "<svg":
            start, depth = (tag.start(), 1) if depth == 0 else (start, depth + 1)
        else:
            depth -= 1
            found += [html[start : tag.end()]] if depth == 0 else []
    return found


@pytest.mark.parametrize("name", NAMES)
def test_one_sound_page_that_fetches_nothing(name):
    html = page_of(named_plan(name))
    page = read(html.encode())
    assert len(page.ids) == len(set(page.ids))
    assert page.links
    assert all(link.startswith("#") and link[1:] in page.ids for link in page.links)
    assert "url(" not in html
    assert "@import" not in html
    assert page.tags.count("script") == page.tags.count("style") == 1
    drawings = drawings_in(html)
    assert len(drawings) > len(named_plan(name).steps)
    for drawing in drawings:
        ElementTree.fromstring(drawing)


@pytest.mark.parametrize("name", NAMES)
def test_every_step_has_a_box_to_tick(name):
    plan = named_plan(name)
    numbers = re.findall(r'<input type="checkbox" data-step="(\d+)"', page_of(plan))
    assert numbers == [str(step.number) for step in plan.steps]


@pytest.mark.parametrize("name", NAMES)
def test_every_picture_says_what_it_shows(name):
    html = page_of(named_plan(name))
    titles = re.findall(r'<svg [^>]*role="img"[^>]*>(?:<defs */>)?<title>([^<]+)</title>', html)
    labels = re.findall(r'<svg role="img" [^>]*aria-label="([^"]+)"', html)
    assert len(titles) + len(labels) == html.count('role="img"')
    assert all(said.endswith(".") for said in titles + labels)


def test_only_its_own_style_and_script_are_allowed():
    html = page_of(named_plan("whirl"))
    (policy,) = re.findall(r'<meta http-equiv="Content-Security-Policy" content="([^"]+)">', html)
    for tag in ("style", "script"):
        (text,) = re.findall(rf"<{tag}>(.*?)</{tag}>", html, re.DOTALL)
        hashed = b64encode(sha256(text.encode()).digest()).decode()
        assert f"{tag}-src &#39;sha256-{hashed}&#39;" in policy
    assert policy.startswith("default-src &#39;none&#39;;")
    assert "unsafe" not in policy
    assert not re.search(r"""\s(style|on\w+)=["']""", html)


def test_the_paper_is_the_one_that_was_asked_for():
    assert "size: a4;" in page_of(named_plan("whirl"), paper=Paper.A4)
    assert "size: letter;" in page_of(named_plan("whirl"))


def test_ticks_belong_to_one_plan():
    star = named_plan("star")
    key = ticks_key(star)
    assert key.startswith("blocklang sewing-sheet Star ")
    for options in ({}, {"large_print": True}, {"unit": LengthUnit.CENTIMETRE}, {"paper": Paper.A4}):
        assert f'data-ticks="{key}"' in page_of(star, **options)
    assert ticks_key(replace(star, steps=star.steps[::-1])) != key
    assert ticks_key(replace(star, block=replace(star.block, patches=star.block.patches[1:]))) != key


def test_no_line_ends_inside_a_measure():
    said = kept_together(ENGLISH).sub(
        "_", "sew 3 1/2 in by 12 1/2 in at step 4 to unit A × 2, patch B: 2 inches in 3 rows, patch by patch"
    )
    assert said == "sew 3_1/2_in by 12_1/2_in at step_4 to unit_A ×_2, patch_B: 2 inches in 3 rows, patch by patch"


def test_the_star_is_quick():
    plan = named_plan("star")
    page_of(plan)  # loads what drawing needs
    started = time.process_time()
    page_of(plan)
    assert time.process_time() - started < 0.3
