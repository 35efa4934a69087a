"""The sheet as pages of PDF, set by typst with the faces that it carries."""

from dataclasses import asdict

from blocklang_drawing import PAPER_NAMES, cleaned, set_pages

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_sewing_sheet import picture_words, words
from blocklang_sewing_sheet.contents import write_sheet
from blocklang_sewing_sheet.marks import used_marks
from blocklang_sewing_sheet.pictures import draw_pictures, lay_steps


def write_pdf(plan: SewingPlan, options: OutputOptions) -> bytes:
    """Return the pages; the words go in as data, never as typst markup."""
    return set_pages("blocklang_sewing_sheet", "templates/sheet.typ", "sheet", _data(plan, options), instead="html")


def _data(plan: SewingPlan, options: OutputOptions) -> dict[str, object]:
    sheet, tell = write_sheet(plan, options), options.language.tell
    pictures = draw_pictures(plan, options, sheet, lay_steps(plan))
    return {
        "sheet": cleaned(asdict(sheet)),
        "pictures": asdict(pictures),
        "headings": tell(words.CONTENTS),
        "marks": tell([words.MARKS[mark.value] for mark in used_marks(plan)]),
        "pictures_show": tell(words.PICTURES_SHOW),
        "corner_caption": tell(picture_words.CORNER_CAPTION),
        "language": options.language.code,
        "paper": PAPER_NAMES[options.paper],
        "large": options.large_print,
    }
