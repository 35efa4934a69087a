"""The drawing kit: blocks, units, steps and pressing as shapes, and shapes as SVG; for any plugin that draws.

Imports only public names of blocklang; lengths on a drawing are points (72 to the inch), y down.
"""

from blocklang_drawing.block_picture import draw_block, draw_lines
from blocklang_drawing.corner_picture import draw_corner
from blocklang_drawing.cut_lines import cut_lines
from blocklang_drawing.cut_picture import draw_cut
from blocklang_drawing.dimensions import say_measure
from blocklang_drawing.frame import Frame
from blocklang_drawing.full_size import (
    TRUE_SCALE,
    FullSize,
    PageWords,
    frame_for,
    lay_on_pages,
    pages_to_pdf,
    room_for_pieces,
    tile_boxes,
    write_pages,
)
from blocklang_drawing.mark_key import Mark, draw_mark
from blocklang_drawing.page_policy import policy_for
from blocklang_drawing.pen import lines_of
from blocklang_drawing.plates import on_plate
from blocklang_drawing.pressing_map import draw_pressing_map, fold_back_of, lies_of, stops_of
from blocklang_drawing.raster import to_pdf, to_png
from blocklang_drawing.shapes import (
    ArcTo,
    Arrow,
    Dot,
    Drawing,
    Group,
    LineTo,
    Paint,
    Path,
    Place,
    Shape,
    Text,
    Trail,
    Window,
    polygon,
)
from blocklang_drawing.step_picture import LaidStep, draw_step, lay_step
from blocklang_drawing.strip_set_picture import draw_strip_set
from blocklang_drawing.stripes import stripe_rings
from blocklang_drawing.svg import to_svg
from blocklang_drawing.swatch import draw_swatch
from blocklang_drawing.textures import Texture
from blocklang_drawing.theme import Fill, Theme, theme_for
from blocklang_drawing.type_widths import clean_text, shorten, text_width
from blocklang_drawing.typesetting import PAPER_NAMES, cleaned, set_pages
from blocklang_drawing.unit_picture import draw_unit
from blocklang_drawing.web_pages import pages_of
from blocklang_drawing.words import role as say_role
from blocklang_drawing.written import KeyEntry, Section, Written
from blocklang_drawing.written_pages import as_files, write_all, write_page

__all__ = [
    "PAPER_NAMES",
    "TRUE_SCALE",
    "ArcTo",
    "Arrow",
    "Dot",
    "Drawing",
    "Fill",
    "Frame",
    "FullSize",
    "Group",
    "KeyEntry",
    "LaidStep",
    "LineTo",
    "Mark",
    "PageWords",
    "Paint",
    "Path",
    "Place",
    "Section",
    "Shape",
    "Text",
    "Texture",
    "Theme",
    "Trail",
    "Window",
    "Written",
    "as_files",
    "clean_text",
    "cleaned",
    "cut_lines",
    "draw_block",
    "draw_corner",
    "draw_cut",
    "draw_lines",
    "draw_mark",
    "draw_pressing_map",
    "draw_step",
    "draw_strip_set",
    "draw_swatch",
    "draw_unit",
    "fold_back_of",
    "frame_for",
    "lay_on_pages",
    "lay_step",
    "lies_of",
    "lines_of",
    "on_plate",
    "pages_of",
    "pages_to_pdf",
    "policy_for",
    "polygon",
    "room_for_pieces",
    "say_measure",
    "say_role",
    "set_pages",
    "shorten",
    "stops_of",
    "stripe_rings",
    "text_width",
    "theme_for",
    "tile_boxes",
    "to_pdf",
    "to_png",
    "to_svg",
    "write_all",
    "write_page",
    "write_pages",
]
