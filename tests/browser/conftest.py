"""A headless Chromium for the tests of pages; without one they are skipped, unless BLOCKLANG_BROWSER=required."""

import os
import shutil
from pathlib import Path

import pytest
from blocklang_sewing_sheet import blocklang_outputs

from blocklang.hooks import OutputOptions
from tests.library.plans import plan_of

PROGRAMS = ("chromium", "chromium-browser", "google-chrome-stable", "google-chrome")
(SHEET,) = blocklang_outputs()


def _missing(reason):
    if os.environ.get("BLOCKLANG_BROWSER") == "required":
        pytest.fail(f"{reason}, and BLOCKLANG_BROWSER=required")
    pytest.skip(reason)


@pytest.fixture(scope="session")
def chromium():
    """Yield the running browser."""
    program = next(filter(None, map(shutil.which, PROGRAMS)), None)
    if program is None:
        _missing("no Chromium is installed")
    try:
        from playwright.sync_api import sync_playwright
    except ImportError:
        _missing("the Python package playwright is not installed")
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def sheet(tmp_path_factory):
    """Return where the sheet of a library block is, made once with each set of options."""
    folder, made = tmp_path_factory.mktemp("sheets"), {}

    def place(name: str, **options: object) -> Path:
        asked = (name, *sorted(options.items()))
        if asked not in made:
            made[asked] = folder / f"{name}-{len(made)}.html"
            (file,) = SHEET.make(plan_of(name), OutputOptions("html", **options))
            made[asked].write_bytes(file.data)
        return made[asked]

    return place


@pytest.fixture
def open_page(chromium):
    """Return how to open a file in a browser of its own; a fault in the page's console or its policy fails the test."""
    contexts, faults = [], []

    def open_file(path: Path, width: int = 1280, **more: object):
        context = chromium.new_context(viewport={"width": width, "height": 800}, **more)
        contexts.append(context)
        page = context.new_page()
        page.set_default_timeout(10_000)
        page.on("pageerror", lambda error: faults.append(str(error)))
        page.on("console", lambda message: faults.append(message.text))
        page.on("dialog", lambda dialog: (faults.append(dialog.message), dialog.dismiss()))
        page.goto(path.as_uri())
        return page

    yield open_file
    for context in contexts:
        context.close()
    assert faults == []
