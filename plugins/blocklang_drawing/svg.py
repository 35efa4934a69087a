"""Shapes to SVG: the only module that knows svgwrite.

Only #rrggbb colours and plain attributes are written, so that browsers, cairo and typst draw the same picture.
"""

from itertools import groupby
from typing import TYPE_CHECKING, Protocol

from blocklang_drawing.arrows import paths_of_arrows
from blocklang_drawing.numbers import write_number, write_place
from blocklang_drawing.shapes import ArcTo, Arrow, Dot, Drawing, Group, LineTo, Paint, Path, Shape, Text, Trail, Window
from blocklang_drawing.type_widths import clean_text

if TYPE_CHECKING:
    from svgwrite import Drawing as SvgDrawing

HALO_WIDTH = 3.0


class Parent(Protocol):
    """What shapes are added to: the sheet or a group."""

    def add(self, element: object) -> object:
        """Take one more element."""


def to_svg(drawing: Drawing, *, declaration: bool = True) -> str:
    """Return a drawing as SVG text; without the XML declaration it may stand in a page of HTML."""
    import svgwrite

    width, height = write_number(drawing.width), write_number(drawing.height)
    sheet = svgwrite.Drawing(size=(f"{width}pt", f"{height}pt"), viewBox=f"0 0 {width} {height}", debug=False)
    sheet.attribs.update({"role": "img", "font-family": drawing.font})
    sheet.set_desc(title=clean_text(drawing.title))
    _add_all(sheet, sheet, drawing.shapes)
    text: str = sheet.tostring()
    text = text.replace("<defs />", "")
    return '<?xml version="1.0" encoding="UTF-8"?>\n' + text + "\n" if declaration else text


def _add_all(sheet: "SvgDrawing", parent: Parent, shapes: tuple[Shape, ...]) -> None:
    for are_arrows, together in groupby(shapes, key=lambda shape: isinstance(shape, Arrow)):
        found = tuple(together)
        arrows = [shape for shape in found if isinstance(shape, Arrow)]
        for shape in paths_of_arrows(arrows) if are_arrows else found:
            _add(sheet, parent, shape)


def _add(sheet: "SvgDrawing", parent: Parent, shape: Shape) -> None:
    match shape:
        case Path():
            _add_path(sheet, parent, shape)
        case Dot():
            at = [write_number(number) for number in shape.at]
            parent.add(sheet.circle(at, write_number(shape.radius), **_attributes(shape.paint)))
        case Text():
            _add_text(sheet, parent, shape)
        case Group():
            _add_group(sheet, parent, shape)
        case Window():
            _add_window(sheet, parent, shape)


def _add_path(sheet: "SvgDrawing", parent: Parent, path: Path) -> None:
    if path.trails:
        parent.add(sheet.path("".join(map(_trail, path.trails)), **_attributes(path.paint)))


def _add_group(sheet: "SvgDrawing", parent: Parent, group: Group) -> None:
    inner = sheet.g(**({"class_": group.mark} if group.mark else {}))
    if group.title:
        inner.set_desc(title=clean_text(group.title))
    _add_all(sheet, inner, group.shapes)
    parent.add(inner)


def _add_window(sheet: "SvgDrawing", parent: Parent, window: Window) -> None:
    size = [write_number(length) for length in (window.width, window.height)]
    onto = " ".join(map(write_number, window.onto))
    inner = sheet.svg([write_number(number) for number in window.at], size, viewBox=f"{onto} {' '.join(size)}")
    if window.title:
        inner.set_desc(title=clean_text(window.title))
    _add_all(sheet, inner, window.shapes)
    parent.add(inner)


def _add_text(sheet: "SvgDrawing", parent: Parent, text: Text) -> None:
    words = clean_text(text.text)
    if not words:
        return
    plain = {"font_size": write_number(text.size), "text_anchor": text.anchor}
    plain |= {"font_weight": "bold"} if text.bold else {}
    at = [write_number(number) for number in text.at]
    if text.halo:
        halo = {"fill": text.halo, "stroke": text.halo, "stroke_width": write_number(HALO_WIDTH)}
        parent.add(sheet.text(words, insert=at, stroke_linejoin="round", **halo, **plain))
    parent.add(sheet.text(words, insert=at, fill=text.colour, **plain))


def _attributes(paint: Paint) -> dict[str, str]:
    written = {"fill": paint.fill or "none"}
    if paint.stroke:
        written |= {"stroke": paint.stroke, "stroke_width": write_number(paint.width), "stroke_linejoin": "round"}
    if paint.stroke and paint.dash:
        written["stroke_dasharray"] = " ".join(map(write_number, paint.dash))
    return written


def _trail(trail: Trail) -> str:
    steps = "".join(map(_stretch, trail.stretches))
    return f"M{write_place(trail.start)}{steps}{'Z' if trail.closed else ''}"


def _stretch(stretch: LineTo | ArcTo) -> str:
    if isinstance(stretch, LineTo):
        return f"L{write_place(stretch.end)}"
    radius = write_number(stretch.radius)
    return f"A{radius} {radius} 0 {int(stretch.large)} {int(stretch.clockwise)} {write_place(stretch.end)}"
