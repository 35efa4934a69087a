"""Full-size pages: drawings at true size laid on paper, for templates, papers and foundations.

    pieces = (FullSize("A", drawing), FullSize("B", another))
    pages = lay_on_pages(pieces, PageWords("Harbour Light", "Templates"), options.paper)
    return write_pages(pages, options)

A drawing is at true size when 72 points of it are an inch; `frame_for` gives a frame for that. Every page has
the block's name, its number, and two squares to measure before anything is cut.
"""

from collections.abc import Sequence

from blocklang.hooks import OutputFile, OutputOptions, Paper
from blocklang.wording import ENGLISH, Language
from blocklang_drawing import words as said
from blocklang_drawing.full_size_furniture import band_height, draw_furniture, draw_tile_heading, tile_heading_height
from blocklang_drawing.full_size_inside import Box
from blocklang_drawing.full_size_paper import (
    GAP,
    HEADING,
    TRUE_SCALE,
    FullSize,
    PageWords,
    Room,
    frame_for,
    paper_size,
    room_on,
)
from blocklang_drawing.full_size_shelves import Spot, shelve
from blocklang_drawing.full_size_tiles import Tile, draw_tile, inner_box, tiles_of
from blocklang_drawing.shapes import Drawing, Shape, Window
from blocklang_drawing.svg import to_svg

__all__ = [
    "TRUE_SCALE",
    "FullSize",
    "PageWords",
    "frame_for",
    "lay_on_pages",
    "pages_to_pdf",
    "room_for_pieces",
    "tile_boxes",
    "write_pages",
]


def room_for_pieces(words: PageWords, paper: Paper) -> tuple[float, float]:
    """Return the width and height (points) of the largest piece that fits on one page without being tiled."""
    room = room_on(paper, band_height(words, paper), HEADING)
    return room.width, room.height


def tile_boxes(drawing: Drawing, words: PageWords, paper: Paper) -> tuple[Box, ...]:
    """Return what of a drawing comes on one page each, without the overlaps; nothing when all of it fits on one page.

    A label that lies in one of these boxes (left, top, right, low) is not cut in two.
    """
    band = band_height(words, paper)
    if room_on(paper, band, HEADING).holds(drawing):
        return ()
    tiles = _tiles(FullSize("", drawing), words, paper, band)
    return tuple(inner_box(tile) for tile in tiles)


def lay_on_pages(pieces: Sequence[FullSize], words: PageWords, paper: Paper) -> tuple[Drawing, ...]:
    """Return pages as large as the paper, each piece on them at true size; the same pieces give the same pages.

    Pieces that fit on a page share pages in shelves, tall ones first. A larger piece comes after them, tiled over pages
    of its own: neighbouring pages share half an inch, with crosses that are laid on each other.
    """
    band = band_height(words, paper)
    room = room_on(paper, band, HEADING)
    pieces = words.language.tell(tuple(pieces))
    small = [piece for piece in pieces if room.holds(piece.drawing)]
    filled = _shelved(small, room)
    tiled = [tile for piece in pieces if not room.holds(piece.drawing) for tile in _tiles(piece, words, paper, band)]
    bodies = [(shapes, None) for shapes in filled] + [(draw_tile(tile, words), tile) for tile in tiled]
    return tuple(
        _page(shapes, tile, words, paper, (number, len(bodies))) for number, (shapes, tile) in enumerate(bodies, 1)
    )


def write_pages(pages: Sequence[Drawing], options: OutputOptions) -> tuple[OutputFile, ...]:
    """Return pages as files: one PDF, or with the format svg one drawing a page ("page-2.svg" is the second)."""
    if options.format == "pdf":
        return (OutputFile("", pages_to_pdf(pages, options.language)),)
    return tuple(OutputFile(f"page-{n}.svg" if n > 1 else "", to_svg(page).encode()) for n, page in enumerate(pages, 1))


def pages_to_pdf(pages: Sequence[Drawing], language: Language = ENGLISH) -> bytes:
    """Return drawings as a PDF with a page of its own size for each; titled as the first."""
    from blocklang_drawing.full_size_pdf import to_pages

    return to_pages(pages, language)


def _shelved(pieces: Sequence[FullSize], room: Room) -> list[tuple[Shape, ...]]:
    spots = shelve([(piece.drawing.width, piece.drawing.height) for piece in pieces], room.width, room.height, GAP)
    count = max((spot.page for spot in spots), default=-1) + 1
    pages: list[list[Shape]] = [[] for _ in range(count)]
    for piece, spot in zip(pieces, spots, strict=True):
        pages[spot.page].append(_window(piece, room, spot))
    return [tuple(page) for page in pages]


def _window(piece: FullSize, room: Room, spot: Spot) -> Window:
    drawing, at = piece.drawing, (room.left + spot.left, room.top + spot.top)
    return Window(at, drawing.width, drawing.height, (0.0, 0.0), drawing.shapes, drawing.title)


def _tiles(piece: FullSize, words: PageWords, paper: Paper, band: float) -> tuple[Tile, ...]:
    return tiles_of(piece, room_on(paper, band, HEADING + tile_heading_height(words, paper)))


def _page(
    shapes: tuple[Shape, ...], tile: Tile | None, words: PageWords, paper: Paper, number: tuple[int, int]
) -> Drawing:
    heading = draw_tile_heading(tile.name, words, paper) if tile else ()
    furniture = draw_furniture(words, paper, number)
    width, height = paper_size(paper)
    page = said.called_page_of(said.THE_PAGE, *number)
    title = words.language.say(said.page_title(words.name, words.subject, page))
    return Drawing(width, height, (*furniture, *heading, *shapes), title)
