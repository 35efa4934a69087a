"""The order as pages set by typst, and after them the papers at full size."""

from dataclasses import asdict

from blocklang_drawing import PAPER_NAMES, Drawing, clean_text, set_pages, theme_for, to_svg

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_paper_pieces.contents import Contents, PaperEntry, RoundEntry
from blocklang_paper_pieces.papers import draw_papers
from blocklang_paper_pieces.picture import draw_order

#: The picture grows with the number of patches, up to the width between the margins (points).
FEW, NARROW, WIDE = 40, 300.0, 480.0


def write_pdf(plan: SewingPlan, contents: Contents, options: OutputOptions, *, every: bool) -> bytes:
    """Return the pages; words and drawings go in as data, never as typst markup."""
    data = _data(plan, contents, options, every)
    return set_pages("blocklang_paper_pieces", "templates/papers.typ", "papers", data, instead="text")


def _data(plan: SewingPlan, contents: Contents, options: OutputOptions, every: bool) -> dict[str, object]:
    theme = theme_for(plan.block.fabrics, options.black_and_white, options.language)
    side = NARROW if len(plan.block.patches) <= FEW else WIDE
    headings = contents.headings
    picture = draw_order(plan.block, contents.places, theme, width=side, height=side)
    return {
        "name": clean_text(contents.name),
        "subject": headings.subject,
        "headings": asdict(headings),
        "facts": contents.facts,
        "making": contents.making,
        "papers": list(map(_paper, contents.papers)),
        "columns": headings.columns,
        "rounds": list(map(_round, contents.rounds)),
        "picture": _drawn(picture),
        "caption": headings.picture,
        "pages": list(map(_drawn, draw_papers(plan, contents.papers, options, every=every))),
        "paper": PAPER_NAMES[options.paper],
        "large": options.large_print,
        "language": options.language.code,
    }


def _paper(entry: PaperEntry) -> dict[str, object]:
    said = ", ".join((entry.counted, *entry.lines))
    return {"number": entry.number, "said": clean_text(f"{entry.name}: {said}")}


def _round(entry: RoundEntry) -> dict[str, object]:
    lines = [[str(one.place), clean_text(one.patch), clean_text(one.fabric), one.joined] for one in entry.joinings]
    return {"title": entry.title, "lines": lines}


def _drawn(drawing: Drawing) -> dict[str, object]:
    svg = to_svg(drawing, declaration=False)
    return {"svg": svg, "width": drawing.width, "height": drawing.height, "title": clean_text(drawing.title)}
