"""The accessibility checker axe, as the package axe-playwright-python carries it; all of its rules."""

from importlib import resources

RUN = "axe.run(document, {preload: false, resultTypes: ['violations']}).then(found => found.violations)"


def violations(page) -> list[str]:
    """Return what is wrong with a page, a line each."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(resources.files("axe_playwright_python").joinpath("axe.min.js").read_text("utf-8"))
    return [f"{one['id']}: {node['html'][:120]}" for one in page.evaluate(RUN) for node in one["nodes"]]
