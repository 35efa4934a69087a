"""Setting the pages: every text is escaped, only our own drawings, style and script go in as they are."""

import re
from base64 import b64encode
from functools import cache, partial
from hashlib import sha256
from typing import TYPE_CHECKING, Any

from blocklang_drawing import clean_text

from blocklang.hooks import OutputOptions
from blocklang.wording import Language
from blocklang_gallery.asking import MOST_SIZES

if TYPE_CHECKING:
    from jinja2 import Environment

#: "3 1/2 in" is one thing: no line ends inside it.
_ONE_THING = re.compile(r"(?<=\d) (?=\d+/\d|(?:in|cm|mm)\b)")


def set_page(template: str, script: str, options: OutputOptions, **told: object) -> str:
    """Return a self-contained page from a template and its script."""
    from markupsafe import Markup

    pages = _pages(options.language)
    style = Markup(pages.get_template("look.css.j2").render(paper=options.paper.value, sizes=MOST_SIZES))  # noqa: S704 - ours
    code = Markup(pages.get_template(script).render())  # noqa: S704 - ours
    policy = policy_for(style=style, script=code)
    return pages.get_template(template).render(
        policy=policy, style=style, script=code, large=options.large_print, language=options.language.code, **told
    )


@cache  # one process sets many pages, and compiling the templates takes longer than filling them
def _pages(language: Language) -> "Environment":
    from jinja2 import Environment, PackageLoader, StrictUndefined
    from markupsafe import Markup

    pages = Environment(
        loader=PackageLoader("blocklang_gallery"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=partial(_finished, language),
    )
    pages.filters["drawing"] = Markup  # made by to_svg, which escapes
    return pages


def policy_for(*, style: str, script: str) -> str:
    """Return the Content-Security-Policy of a page: nothing is fetched, only this style and this script are taken."""
    return (
        f"default-src 'none'; style-src {_hash(style)}; script-src {_hash(script)}; base-uri 'none'; form-action 'none'"
    )


def _hash(text: str) -> str:
    return f"'sha256-{b64encode(sha256(text.encode()).digest()).decode()}'"


def _finished(language: Language, value: Any) -> Any:
    """Return a text in a language, without what a page cannot hold; what is markup already stays as it is."""
    if not isinstance(value, str) or hasattr(value, "__html__"):
        return value
    return _ONE_THING.sub("\N{NO-BREAK SPACE}", clean_text(language.say(value)))
