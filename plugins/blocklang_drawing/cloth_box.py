"""A piece of cloth or a stretch of a strip drawn to scale: its fabrics, the cuts in it, and its measures."""

import math
from collections.abc import Iterable
from dataclasses import dataclass

from blocklang.cutting.words import degrees
from blocklang_drawing.cut_lines import CutLine
from blocklang_drawing.dimensions import AWAY, SIZE, measure_below, measure_beside
from blocklang_drawing.hatching import hatch
from blocklang_drawing.plates import PLATE, on_plate
from blocklang_drawing.shapes import Arrow, Paint, Path, Place, Shape, Text, polygon, polyline
from blocklang_drawing.theme import Theme
from blocklang_drawing.type_widths import text_width

Ring = tuple[Place, ...]
DASH = (4.0, 2.0)
_EDGE = 2.0
#: How far a strip is shown beyond the cuts (points): before them there is room for an angle.
_BEFORE, _AFTER = 30.0, 14.0


@dataclass(frozen=True, slots=True)
class ClothBox:
    """Where cloth of so many inches lies on a drawing; a strip goes on `before` and `after` (inches)."""

    wide: float
    high: float
    scale: float
    left: float
    before: float
    after: float
    room: tuple[float, float]

    @classmethod
    def fit(cls, wide: float, high: float, room: Place, below: str, beside: str, goes_on: bool = False) -> "ClothBox":
        """Return the box as large as fits in a room (points), with its measures outside that room."""
        scale = min(room[0] / wide, room[1] / high)
        before, after = (_BEFORE, _AFTER) if goes_on else (0.0, 0.0)
        over = max(0.0, (text_width(below, SIZE) - wide * scale) / 2 - after)
        left = max(AWAY + 8 + text_width(beside, SIZE) if beside else _EDGE, over)
        width = left + before + wide * scale + after + max(_EDGE, over)
        height = _EDGE + high * scale + (AWAY + SIZE + 5 if below else _EDGE)
        return cls(wide, high, scale, left + before, before / scale, after / scale, (width, height))

    def at(self, place: Place) -> Place:
        """Return where a place in inches from the lower left corner comes to lie."""
        return self.left + place[0] * self.scale, _EDGE + (self.high - place[1]) * self.scale

    def band(self, low: float, high: float) -> Ring:
        """Return a band along the cloth from one height to another (inches)."""
        left, right = -self.before, self.wide + self.after
        return tuple(map(self.at, ((left, low), (right, low), (right, high), (left, high))))


def paint_band(box: ClothBox, fabric: str, low: float, high: float, theme: Theme) -> tuple[Shape, ...]:
    """Return a band of a fabric; the ends of a strip that goes on are left without a line."""
    ring, fill = box.band(low, high), theme.fill(fabric)
    cloth: tuple[Shape, ...] = (Path((polygon(ring),), Paint(fill=fill.colour)),)
    if fill.texture is not None:
        cloth += (Path(hatch(ring, fill.texture), Paint(stroke=fill.texture_ink, width=fill.texture.width)),)
    edges = (polyline(ring[:2]), polyline(ring[2:])) if box.before else (polygon(ring),)
    return *cloth, Path(edges, Paint(stroke=theme.ink, width=theme.line))


def draw_cuts(box: ClothBox, lines: Iterable[CutLine], theme: Theme) -> tuple[Shape, ...]:
    """Return cuts as dashes that show on any fabric."""
    trails = tuple(polyline((box.at(line.start), box.at(line.end))) for line in lines)
    return (
        Path(trails, Paint(stroke=theme.paper, width=3.0)),
        Path(trails, Paint(stroke=theme.ink, width=1.2, dash=DASH)),
    )


def say_length(box: ClothBox, start: float, end: float, measure: str, theme: Theme) -> tuple[Shape, ...]:
    """Return the measure below the cloth of a stretch of its lower edge (inches)."""
    (left, low), (right, _) = box.at((start, 0.0)), box.at((end, 0.0))
    return measure_below(left, right, low, measure, theme)


def say_height(box: ClothBox, low: float, high: float, measure: str, theme: Theme) -> tuple[Shape, ...]:
    """Return the measure at the left of the cloth from one height to another (inches)."""
    (left, bottom), (_, top) = box.at((-box.before, low)), box.at((0.0, high))
    return measure_beside(left, top, bottom, measure, theme)


def has_room_between(box: ClothBox, pair: tuple[CutLine, ...], apart: str, angle: float) -> bool:
    """Tell whether the distance between two slanted cuts can be written between them."""
    room = (pair[1].start[0] - pair[0].start[0]) * box.scale - (SIZE + 2 * PLATE) / math.tan(math.radians(angle))
    return text_width(apart, SIZE) + 2 * PLATE + 4 <= room


def say_distance(box: ClothBox, pair: tuple[CutLine, ...], apart: str, angle: float, theme: Theme) -> tuple[Shape, ...]:
    """Return an arrow straight across from one cut to the next, with the distance; `angle` is in degrees.

    Where the distance has no room between them it stands below the cloth, and a line leads to the arrow.
    """
    first, second = pair
    lean = math.radians(angle)
    half = (second.start[0] - first.start[0]) * math.sin(lean) / 2
    middle = ((first.start[0] + second.end[0]) / 2, (first.start[1] + second.end[1]) / 2)
    across = (math.sin(lean) * half, -math.cos(lean) * half)
    start, end = (box.at((middle[0] + way * across[0], middle[1] + way * across[1])) for way in (-1, 1))
    arrow, (x, y) = Arrow(start, end, theme.ink, 1.0, 4.0, halo=theme.paper, both=True), box.at(middle)
    if has_room_between(box, pair, apart, angle):
        return arrow, *on_plate(Text((x, y + SIZE * 0.35), apart, SIZE, theme.ink, anchor="middle"), theme)
    low = box.at((0.0, 0.0))[1]
    lead = (polyline(((x, y), (x, low + AWAY - 2))),)
    return (
        Path(lead, Paint(stroke=theme.paper, width=2.6)),
        Path(lead, Paint(stroke=theme.ink, width=0.8)),
        arrow,
        Text((x, low + AWAY + SIZE), apart, SIZE, theme.ink, anchor="middle"),
    )


def say_angle(box: ClothBox, corner: Place, angle: float, theme: Theme) -> tuple[Shape, ...]:
    """Return the angle in degrees at which a cut leaves the lower edge; nothing for a cut straight across."""
    if angle == 90.0:
        return ()
    x, y = box.at(corner)
    said = theme.language.say(degrees(angle)) + "°"
    return on_plate(Text((x - 5, y - 5), said, SIZE, theme.ink, anchor="end"), theme)
