"""Script and markup in every text field of a block file: shown as they stand, never run, never markup."""

import pytest

from blocklang.cli.program import run
from tests.support.strangers_words import FILE

WORDS = (
    "</svg><script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "' onmouseover='alert(1)' x='",
    "</title></style></main><svg onload=alert(1)>",
    "{{ 7 * 7 }}{% raw %}",
    "&lt;b&gt; ]]> --> javascript:alert(1)",
)


@pytest.mark.parametrize("words", WORDS)
def test_words_stay_words(open_page, tmp_path, capsys, words):
    (tmp_path / "hostile.block").write_text(FILE.replace("WORDS", words), encoding="utf-8")
    made = tmp_path / "hostile.html"
    asked = ["make", "sewing-sheet", str(tmp_path / "hostile.block"), "-o", str(made)]
    assert run(asked) == 0, capsys.readouterr().err
    page = open_page(made)
    page.get_by_role("checkbox").first.check()
    assert page.evaluate("document.querySelectorAll('script').length") == 1
    assert page.evaluate("document.querySelectorAll('img, iframe, object, embed, foreignObject, form').length") == 0
    assert (
        page.evaluate(
            "[...document.querySelectorAll('*')].flatMap(one => one.getAttributeNames())"
            ".filter(name => name.startsWith('on') || name == 'style')"
        )
        == []
    )
    assert page.locator("h1").inner_text() == words
    assert page.title() == f"{words}: sewing sheet"
    assert page.locator("header").inner_text().count(words) == 3  # the name, whom it is by, the note
    assert page.locator("footer").inner_text().count(words) == 3  # the name, whom it is by, the source
    assert page.locator("section[aria-labelledby=cutting] h3").all_inner_texts()[0].startswith(words)
    assert page.evaluate("document.querySelector('header svg title').textContent").startswith(words)
    page.wait_for_timeout(300)  # the browser writes down what it keeps in its own time
    page.reload()
    assert page.get_by_role("checkbox").first.is_checked()
