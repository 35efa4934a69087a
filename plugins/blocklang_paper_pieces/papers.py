"""The papers as drawings at true size, laid on pages."""

from blocklang_drawing import Drawing, FullSize, PageWords, Paint, Path, Shape, frame_for, lay_on_pages, tile_boxes
from blocklang_drawing.full_size_labels import INK, Label, with_label

from blocklang.hooks import OutputOptions, Paper
from blocklang.plan import SewingPlan
from blocklang_paper_pieces import words
from blocklang_paper_pieces.contents import PaperEntry

SMALL, LARGE = 9.0, 12.0
PAPER, FABRIC, DASH = 1.0, 0.6, (4.0, 2.5)
MARGIN = 3.0


def draw_papers(
    plan: SewingPlan, papers: tuple[PaperEntry, ...], options: OutputOptions, *, every: bool
) -> tuple[Drawing, ...]:
    """Return the pages: each paper once with its fabric patch round it, or every paper of one block without."""
    size = LARGE if options.large_print else SMALL
    notes = (words.EVERY_LINE,) if every else (words.LINES, words.ONCE_LINE)
    page = PageWords(plan.block.name, words.SUBJECT, notes, size, words.PAGE, options.language)
    pieces = [_paper(entry, page, options.paper, every) for entry in papers for _ in range(entry.count if every else 1)]
    return lay_on_pages(pieces, page, options.paper)


def _paper(entry: PaperEntry, page: PageWords, paper: Paper, every: bool) -> FullSize:
    shape = entry.shape
    frame = frame_for(shape.outline if every else shape.fabric, margin=MARGIN)
    shapes: tuple[Shape, ...] = (Path((frame.outline(shape.outline),), Paint(stroke=INK, width=PAPER)),)
    if not every:
        shapes = (Path((frame.outline(shape.fabric),), Paint(stroke=INK, width=FABRIC, dash=DASH)), *shapes)
    name = words.paper(entry.number)
    drawing = Drawing(frame.width + 2 * MARGIN, frame.height + 2 * MARGIN, shapes, name)
    lines = () if every else (entry.counted, *entry.lines)
    label = Label(str(entry.number), entry.name, lines, page.size)
    within = tile_boxes(drawing, page, paper)
    return FullSize(name, with_label(drawing, frame.ring(shape.outline.chords()), label, within=within))
