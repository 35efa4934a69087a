"""Writing DXF (of its release R2000, what cutting machines read most widely) with arcs as arcs."""

import io
import math
from typing import TYPE_CHECKING, Any

from blocklang.block import LengthUnit
from blocklang.geometry import TICKS_PER_INCH, Edge
from blocklang.hooks import CannotMakeError
from blocklang_cutting_outlines.laying import Cloth, Drawn
from blocklang_cutting_outlines.rings import Ring, in_inches

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.layouts.layout import Modelspace

#: What $INSUNITS calls the units (DXF reference, header variables).
UNITS = {LengthUnit.INCH: 1, LengthUnit.MILLIMETRE: 4, LengthUnit.CENTIMETRE: 5}
RED, BLUE, GREY, BLACK = 1, 5, 8, 7  # numbers of the colour index of DXF
LETTERS = 0.125  # how high names are at most, in inches
LETTER_WIDTH = 0.8  # of its height; on the wide side, since every program has letters of its own
PLACES = 6
LAST_LETTER = "\uffff"  # of those that \\U+XXXX can name


def write_dxf(drawn: Drawn, unit: LengthUnit) -> bytes:
    """Return a file that holds the pieces, in a unit; the same bytes every time."""
    try:
        import ezdxf
    except ImportError:
        raise CannotMakeError("A DXF file needs the package ezdxf: install it with `pip install ezdxf`.") from None
    fixed = ezdxf.options.write_fixed_meta_data_for_testing
    ezdxf.options.write_fixed_meta_data_for_testing = True  # no dates, and no numbers that are new every time
    try:
        document = ezdxf.new("R2000", units=UNITS[unit])
        document.header["$MEASUREMENT"] = 0 if unit is LengthUnit.INCH else 1
        _draw(document, drawn, unit.per_inch)
        stream = io.StringIO()
        document.write(stream)
        return stream.getvalue().encode(document.output_encoding, "dxfreplace")
    finally:
        ezdxf.options.write_fixed_meta_data_for_testing = fixed


def _draw(document: "Drawing", drawn: Drawn, scale: float) -> None:
    space = document.modelspace()
    _tell_extents(space, drawn, scale)
    fabrics = dict.fromkeys(piece.fabric for piece in drawn.pieces)
    for does, colour in (("cut", RED), ("sew", BLUE)):
        for layer in dict.fromkeys(_layer(does, fabric) for fabric in fabrics):
            document.layers.add(layer, color=colour)
    document.layers.add("names", color=GREY)
    for piece in drawn.pieces:
        _draw_ring(space, piece.cut, _layer("cut", piece.fabric), scale)
        _draw_ring(space, piece.sewn, _layer("sew", piece.fabric), scale)
        _draw_name(space, piece, scale)
    if drawn.seams:
        document.layers.add("seams", color=BLACK)
    for seam in drawn.seams:
        _draw_seam(space, seam, scale)


def _tell_extents(space: "Modelspace", drawn: Drawn, scale: float) -> None:
    """Write into the heading how far the drawing reaches, which machines show before they open it."""
    bounds = [piece.cut.bounds for piece in drawn.pieces]
    low = (_place(min((one[side] for one in bounds), default=0.0), scale) for side in (0, 1))
    high = (_place(max((one[side] for one in bounds), default=0.0), scale) for side in (2, 3))
    space.reset_extents((*low, 0.0), (*high, 0.0))


def _draw_ring(space: "Modelspace", ring: Ring, layer: str, scale: float) -> None:
    corners = [(_place(one.x, scale), _place(one.y, scale), round(one.bulge, 12)) for one in ring.corners]
    space.add_lwpolyline(corners, format="xyb", close=True, dxfattribs={"layer": layer})


def _draw_name(space: "Modelspace", piece: Cloth, scale: float) -> None:
    """Write a piece's name where it has most room."""
    from ezdxf.enums import TextEntityAlignment

    height = min(LETTERS, piece.room / (LETTER_WIDTH * len(piece.name)))
    attributes: dict[str, Any] = {"layer": "names", "height": _place(height, scale)}
    text = space.add_text(str(piece.name), dxfattribs=attributes)
    x, y = (_place(along, scale) for along in piece.middle)
    text.set_placement((x, y), align=TextEntityAlignment.MIDDLE_CENTER)


def _draw_seam(space: "Modelspace", seam: Edge, scale: float) -> None:
    ends = (in_inches(seam.start), in_inches(seam.end))
    start, end = ((_place(x, scale), _place(y, scale)) for x, y in ends)
    if seam.arc is None:
        space.add_line(start, end, dxfattribs={"layer": "seams"})
        return
    centre = in_inches(seam.arc.centre)
    first, last = (math.degrees(math.atan2(y - centre[1] * scale, x - centre[0] * scale)) for x, y in (start, end))
    if seam.arc.clockwise:
        first, last = last, first
    radius = _place(seam.radius() / TICKS_PER_INCH, scale)
    middle = _place(centre[0], scale), _place(centre[1], scale)
    space.add_arc(middle, radius, round(first, 9), round(last, 9), dxfattribs={"layer": "seams"})


def _layer(does: str, fabric: str) -> str:
    """Return the name of a layer; letters that DXF has no way to write are left open."""
    return f"{does}-" + "".join(letter if letter <= LAST_LETTER else "_" for letter in fabric)


def _place(inches: float, scale: float) -> float:
    """Return a length in the unit of the file; a hair below nothing is nothing."""
    return round(inches * scale, PLACES) + 0.0
