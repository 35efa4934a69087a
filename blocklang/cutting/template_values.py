"""Templates as frozen values; lengths in ticks."""

from dataclasses import dataclass

from blocklang.cutting.match_points import MatchPoint
from blocklang.cutting.motions import Motion
from blocklang.geometry import Outline, Point


@dataclass(frozen=True, slots=True)
class TemplateUse:
    """What is cut with a template: the line of the cutting list by index, how many, and how many of them reversed."""

    piece: int
    count: int
    reversed: int


@dataclass(frozen=True, slots=True)
class TemplatePlace:
    """A patch that a template is for, and the motion that lays the template on the patch in the block."""

    patch: int
    motion: Motion


@dataclass(frozen=True, slots=True)
class Template:
    """One shape to cut round, as its first patch lies in the block.

    `finished` is the sewing line, `cut` the cutting line: tips are trimmed where every patch of this shape has them
    trimmed. `grain` is the heading of the straight grain in radians. `stripes` are the seams between the stripes of a
    striped patch, across its cut outline. A template is `needed` when the cutting list says to cut round it.
    """

    name: str
    finished: Outline
    cut: Outline
    grain: float
    dots: tuple[MatchPoint, ...]
    stripes: tuple[tuple[Point, Point], ...]
    uses: tuple[TemplateUse, ...]
    places: tuple[TemplatePlace, ...]
    needed: bool
