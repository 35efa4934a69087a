"""What a drawing is made of: frozen shapes in points (72 to the inch), y down."""

from dataclasses import dataclass
from typing import Literal

Place = tuple[float, float]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True, slots=True)
class Paint:
    """How a shape is filled and stroked; colours are #rrggbb, None for neither."""

    fill: str | None = None
    stroke: str | None = None
    width: float = 1.0
    dash: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class LineTo:
    """A straight stretch of a trail."""

    end: Place


@dataclass(frozen=True, slots=True)
class ArcTo:
    """A circular stretch of a trail; `clockwise` as seen on the drawing, `large` when it turns more than half round."""

    end: Place
    radius: float
    clockwise: bool
    large: bool


@dataclass(frozen=True, slots=True)
class Trail:
    """One unbroken stretch of a path."""

    start: Place
    stretches: tuple[LineTo | ArcTo, ...]
    closed: bool = False


@dataclass(frozen=True, slots=True)
class Path:
    """Trails painted together."""

    trails: tuple[Trail, ...]
    paint: Paint


@dataclass(frozen=True, slots=True)
class Dot:
    """A round dot or, with a stroke alone, a ring."""

    at: Place
    radius: float
    paint: Paint


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text; `at` is on its baseline, `halo` a colour laid round the letters so that they read anywhere."""

    at: Place
    text: str
    size: float
    colour: str
    anchor: Anchor = "start"
    bold: bool = False
    halo: str | None = None


@dataclass(frozen=True, slots=True)
class Arrow:
    """A short arrow; `both` gives it a head at either end."""

    start: Place
    end: Place
    colour: str
    width: float
    head: float
    halo: str | None = None
    both: bool = False


@dataclass(frozen=True, slots=True)
class Group:
    """Shapes that belong together; `title` says what they are to those who cannot see them.

    `mark` is a word by which the script of a page finds them again.
    """

    shapes: "tuple[Shape, ...]"
    title: str = ""
    mark: str = ""


@dataclass(frozen=True, slots=True)
class Window:
    """Part of a drawing seen through a window, as large as it is: what lies beyond its edges is cut off.

    `at` is the window's upper left corner, `onto` the place among `shapes` that shows there.
    """

    at: Place
    width: float
    height: float
    onto: Place
    shapes: "tuple[Shape, ...]"
    title: str = ""


Shape = Path | Dot | Text | Arrow | Group | Window


@dataclass(frozen=True, slots=True)
class Drawing:
    """A finished drawing; everything in it lies between (0, 0) and (width, height)."""

    width: float
    height: float
    shapes: tuple[Shape, ...]
    title: str
    font: str = "Helvetica, Arial, sans-serif"


def polygon(places: tuple[Place, ...]) -> Trail:
    """Return a closed straight-sided trail."""
    return Trail(places[0], tuple(LineTo(place) for place in places[1:]), closed=True)


def polyline(places: tuple[Place, ...]) -> Trail:
    """Return an open straight-sided trail."""
    return Trail(places[0], tuple(LineTo(place) for place in places[1:]))
