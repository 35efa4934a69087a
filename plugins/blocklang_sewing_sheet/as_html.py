"""The sheet as one self-contained page of HTML."""

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_sewing_sheet import words
from blocklang_sewing_sheet.contents import write_sheet
from blocklang_sewing_sheet.marks import used_marks
from blocklang_sewing_sheet.pictures import draw_pictures


def write_html(plan: SewingPlan, options: OutputOptions) -> str:
    """Return the page; every text of the plan is escaped, only our own drawings go in as they are."""
    from jinja2 import Environment, PackageLoader, StrictUndefined
    from markupsafe import Markup

    sheet = write_sheet(plan, options)
    pictures = draw_pictures(plan, options, tuple(fabric.id for fabric in sheet.fabrics))
    pages = Environment(
        loader=PackageLoader("blocklang_sewing_sheet"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )
    pages.filters["drawing"] = lambda picture: Markup(picture.svg)  # noqa: S704 - made by to_svg, which escapes
    return pages.get_template("sheet.html.j2").render(
        sheet=sheet,
        pictures=pictures,
        headings=words.CONTENTS,
        marks=tuple(words.MARKS[mark.value] for mark in used_marks(plan)),
        pictures_show=words.PICTURES_SHOW,
        paper=options.paper.value,
        large=options.large_print,
    )
