"""The sheet as one self-contained page of HTML."""

from functools import cache
from typing import TYPE_CHECKING

from blocklang_drawing import pages_of, policy_for

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang.wording import Language
from blocklang_sewing_sheet import picture_words, screen_words, words
from blocklang_sewing_sheet.contents import Sheet, write_sheet
from blocklang_sewing_sheet.marks import used_marks
from blocklang_sewing_sheet.pictures import ENLARGED, Picture, draw_narrow_steps, draw_pictures, lay_steps
from blocklang_sewing_sheet.ticks_key import ticks_key

if TYPE_CHECKING:
    from jinja2 import Environment
    from markupsafe import Markup


def write_html(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the page; every text of the plan is escaped, only our own drawings, style and script go in as they are."""
    from markupsafe import Markup

    sheet, pages = write_sheet(plan, options), _pages(options.language)
    style = Markup(pages.get_template("sheet.css.j2").render(paper=options.paper.value, enlarged=ENLARGED))  # noqa: S704 - ours
    script = Markup(pages.get_template("ticks.js").render())  # noqa: S704 - ours
    return pages.get_template("sheet.html.j2").render(
        policy=policy_for(style=style, script=script),
        style=style,
        script=script,
        ticks_key=ticks_key(plan),
        large=options.large_print,
        language=options.language.code,
        **_what_it_says(plan, options, sheet),
    )


def _what_it_says(plan: SewingPlan, options: OutputOptions, sheet: Sheet) -> dict[str, object]:
    told = {
        "title": words.title(sheet.name),
        "headings": words.CONTENTS,
        "marks": tuple(words.MARKS[mark.value] for mark in used_marks(plan)),
        "pictures_show": words.PICTURES_SHOW,
        "corner_caption": picture_words.CORNER_CAPTION,
        "screen": screen_words.SCREEN,
    }
    laid = lay_steps(plan)
    return {
        "sheet": sheet,
        "pictures": draw_pictures(plan, options, sheet, laid),
        "narrow_steps": draw_narrow_steps(plan, options, sheet, laid),
        **options.language.tell(told),
    }


@cache
def _pages(language: Language) -> "Environment":
    pages = pages_of("blocklang_sewing_sheet", language)
    pages.filters["drawing"] = _drawing
    return pages


def _drawing(picture: Picture, name: str = "") -> "Markup":
    from markupsafe import Markup

    svg = picture.svg.replace("<svg ", f'<svg id="{name}" ', 1) if name else picture.svg
    return Markup(svg)  # noqa: S704 - made by to_svg, which escapes
