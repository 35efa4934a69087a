"""The sheet as one self-contained page of HTML."""

import re
from typing import TYPE_CHECKING, Any

from blocklang_drawing import clean_text

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_sewing_sheet import screen_words, words
from blocklang_sewing_sheet.contents import Sheet, write_sheet
from blocklang_sewing_sheet.marks import used_marks
from blocklang_sewing_sheet.page_policy import policy_for
from blocklang_sewing_sheet.pictures import ENLARGED, Picture, draw_narrow_steps, draw_pictures
from blocklang_sewing_sheet.ticks_key import ticks_key

if TYPE_CHECKING:
    from jinja2 import Environment
    from markupsafe import Markup

#: "3 1/2 in", "step 4", "unit A" and "× 2" are one thing each: no line ends inside them.
ONE_THING = re.compile(
    r"(?<=\d) (?=\d+/\d|(?:in|cm|mm)\b)|(?<=\bstep) (?=\d)|(?<=\bunit) (?=[A-Z]\b)|(?<=\bpatch) (?=[A-Z]\b)|(?<=×) (?=\d)"
)


def write_html(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the page; every text of the plan is escaped, only our own drawings, style and script go in as they are."""
    from markupsafe import Markup

    sheet, pages = write_sheet(plan, options), _pages()
    style = Markup(pages.get_template("sheet.css.j2").render(paper=options.paper.value, enlarged=ENLARGED))  # noqa: S704 - ours
    script = Markup(pages.get_template("ticks.js").render())  # noqa: S704 - ours
    return pages.get_template("sheet.html.j2").render(
        policy=policy_for(style=style, script=script),
        style=style,
        script=script,
        ticks_key=ticks_key(plan),
        large=options.large_print,
        **_what_it_says(plan, options, sheet),
    )


def _what_it_says(plan: SewingPlan, options: OutputOptions, sheet: Sheet) -> dict[str, object]:
    return {
        "sheet": sheet,
        "pictures": draw_pictures(plan, options, sheet),
        "narrow_steps": draw_narrow_steps(plan, options, sheet),
        "headings": words.CONTENTS,
        "marks": tuple(words.MARKS[mark.value] for mark in used_marks(plan)),
        "pictures_show": words.PICTURES_SHOW,
        "screen": screen_words.SCREEN,
    }


def _pages() -> "Environment":
    from jinja2 import Environment, PackageLoader, StrictUndefined

    pages = Environment(
        loader=PackageLoader("blocklang_sewing_sheet"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        finalize=_finished,
    )
    pages.filters["drawing"] = _drawing
    return pages


def _finished(value: Any) -> Any:
    """Return a text without what a page cannot hold; what is markup already stays as it is."""
    if not isinstance(value, str) or hasattr(value, "__html__"):
        return value
    return ONE_THING.sub("\N{NO-BREAK SPACE}", clean_text(value))


def _drawing(picture: Picture, name: str = "") -> "Markup":
    from markupsafe import Markup

    svg = picture.svg.replace("<svg ", f'<svg id="{name}" ', 1) if name else picture.svg
    return Markup(svg)  # noqa: S704 - made by to_svg, which escapes
