"""Setting the pages: every text is escaped, only our own drawings, style and script go in as they are."""

from functools import cache
from typing import TYPE_CHECKING

from blocklang_drawing import pages_of, policy_for

from blocklang.hooks import OutputOptions
from blocklang.wording import Language
from blocklang_gallery.asking import MOST_SIZES

if TYPE_CHECKING:
    from jinja2 import Environment


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


@cache
def _pages(language: Language) -> "Environment":
    from markupsafe import Markup

    pages = pages_of("blocklang_gallery", language)
    pages.filters["drawing"] = Markup  # made by to_svg, which escapes
    return pages
