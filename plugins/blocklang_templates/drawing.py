"""One template as a drawing at true size."""

from dataclasses import replace

from blocklang_drawing import Dot, Drawing, Frame, Paint, Path, Place, Shape, Trail
from blocklang_drawing.shapes import polyline

from blocklang.cutting import Template
from blocklang_templates.labels import INK, Label, write_inside

#: Round the cutting line, so that the whole of it is on the drawing.
MARGIN = 3.0
CUT, SEW, STRIPE = 0.9, 0.6, 0.5
DASH, STRIPE_DASH = (4.0, 2.5), (7.0, 2.5, 1.2, 2.5)
DOT = 1.8
BAND = "#d9d9d9"
_BELOW = 4.0
#: A label below a template is never squeezed into less than this.
_NARROWEST = 120.0


def draw_template(template: Template, label: Label, frame: Frame, *, window: bool) -> Drawing:
    """Return a template; `frame` has its scale, turn and bounds, and is moved inside a margin."""
    frame = replace(frame, left=MARGIN, top=MARGIN)
    finished = frame.ring(template.finished.chords())
    written = write_inside(finished, label, whole=not template.stripes)
    lines = _window(template, frame) if window else _lines(template, frame)
    width, height = frame.width + 2 * MARGIN, frame.height + 2 * MARGIN
    below: tuple[Shape, ...] = ()
    if not written.whole:
        width = max(width, min(label.width, max(width, _NARROWEST)) + 2 * MARGIN)
        below = label.draw((MARGIN, height + _BELOW), width - 2 * MARGIN)
        height += _BELOW + label.height + MARGIN
    shapes = (*lines, *_stripes(template, frame), *_dots(template, frame), *written.shapes, *below)
    return Drawing(width, height, shapes, f"Template {label.number}: {label.name}")


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
