"""One template as a drawing at true size."""

from blocklang_drawing import Dot, Drawing, Frame, Paint, Path, Place, Shape, Trail
from blocklang_drawing.full_size_labels import INK
from blocklang_drawing.shapes import polyline

from blocklang.cutting import Template

#: Round the cutting line, so that the whole of it is on the drawing.
MARGIN = 3.0
CUT, SEW, STRIPE = 0.9, 0.6, 0.5
DASH, STRIPE_DASH = (4.0, 2.5), (7.0, 2.5, 1.2, 2.5)
DOT = 1.8
BAND = "#d9d9d9"


def draw_template(template: Template, title: str, frame: Frame, *, window: bool) -> Drawing:
    """Return a template in its frame, without a label."""
    lines = _window(template, frame) if window else _lines(template, frame)
    shapes = (*lines, *_stripes(template, frame), *_dots(template, frame))
    return Drawing(frame.width + 2 * MARGIN, frame.height + 2 * MARGIN, shapes, title)


def _lines(template: Template, frame: Frame) -> tuple[Shape, ...]:
    return (
        _line(frame.outline(template.cut), Paint(stroke=INK, width=CUT)),
        _line(frame.outline(template.finished), Paint(stroke=INK, width=SEW, dash=DASH)),
    )


def _window(template: Template, frame: Frame) -> tuple[Shape, ...]:
    """Return the seam allowance as a band, round a window as large as the finished patch."""
    cut, inner = frame.outline(template.cut), frame.outline(template.finished.reversed())
    return Path((cut, inner), Paint(fill=BAND)), Path((cut, inner), Paint(stroke=INK, width=CUT))


def _line(trail: Trail, paint: Paint) -> Path:
    return Path((trail,), paint)


def _stripes(template: Template, frame: Frame) -> tuple[Shape, ...]:
    trails = tuple(polyline(frame.ring(line)) for line in template.stripes)
    return (Path(trails, Paint(stroke=INK, width=STRIPE, dash=STRIPE_DASH)),) if trails else ()


def _dots(template: Template, frame: Frame) -> tuple[Dot, ...]:
    return tuple(_dot(frame.at(dot.at), dot.always) for dot in template.dots)


def _dot(at: Place, always: bool) -> Dot:
    paint = Paint(fill=INK) if always else Paint(fill="#ffffff", stroke=INK, width=SEW)
    return Dot(at, DOT, paint)
