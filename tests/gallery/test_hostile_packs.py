"""Blocks from a stranger: script and markup in every text, and in the file's name, stay words on every page."""

import pytest

from tests.gallery.at_hand import gallery_of, of_text, options_of
from tests.gallery.reading import Page
from tests.support.strangers_words import FILE

WORDS = (
    "</script><script>alert(1)</script>",
    "</style><script>alert(1)</script><style>",
    "</svg><img src=x onerror=alert(1)>",
    "' onmouseover='alert(1)' x='",
    "{{ 7 * 7 }}{% raw %}{# x #}",
    "<!-- --><![CDATA[ ]]> &lt;b&gt; javascript:alert(1)",
    "</title></main><svg onload=alert(1)>",
)


@pytest.mark.parametrize("words", WORDS)
def test_words_stay_words(words):
    files = gallery_of(
        [of_text(f"harmless {words}", FILE.replace("WORDS", words))], options_of("sheets=no", f"title={words}")
    )
    first, page = (Page(files[name].decode()) for name in sorted(files, reverse=True) if name.endswith(".html"))
    for one in (first, page):
        assert one.faults == []
        assert len(one.all("script")) == len(one.all("style")) == 1
        assert not {element.tag for element in one.elements} & {"img", "iframe", "object", "b"}
        assert not [key for element in one.elements for key in element.attributes if key.startswith("on")]
    assert first.all("h1")[0].text == first.all("title")[0].text == words
    assert first.all("h3")[0].text == words
    assert first.marked("card")[0].attributes["data-words"].startswith(words.lower())
    assert page.all("h1")[0].text == words
    assert page.all("title")[0].text == words or page.all("title")[0].text == f"{words}: {words}"
    assert page.all("header")[0].text.count(words) == 3  # the name, whom it is by, the note
    assert page.all("footer")[0].text.count(words) == 3  # the name, whom it is by, the source
    assert [one.text.strip() for one in page.all("h4")[:2]] == [f"{words} background, light", f"{words} accent, dark"]


def test_files_are_called_what_every_system_can_write():
    files = gallery_of([of_text('../"<b>\\', FILE.replace("WORDS", "harmless"))], options_of("sheets=no"))
    for name in files:
        assert all(
            part.strip("abcdefghijklmnopqrstuvwxyz0123456789-.") == "" and part not in (".", "..")
            for part in name.split("/")
        )


def test_a_file_with_hidden_characters_is_left_out():
    files = gallery_of([of_text("hidden", FILE.replace("WORDS", "har\u202ebour\u200b"))], options_of("sheets=no"))
    assert list(files) == ["index.html"]
