"""What fabrics look like without colour: twelve looks from light to dark, and which of them each fabric gets.

A fabric keeps its own lightness as nearly as may be, and neighbours are kept apart; the order never changes. Lightness
is L* of CIE 1976 from the relative luminance of WCAG 2.2; lines and the cloth between them are averaged as light.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from typing import Final

#: L* above which the lightest fabric is left white, and below which the darkest is the solid dark one.
LIGHT, DARK = 70.0, 40.0
#: Fabrics whose lightness differs by less than this are not told apart at a glance.
APART = 10.0


@dataclass(frozen=True, slots=True)
class Texture:
    """Plain lines drawn over a fill: their angle in degrees, and spacing and width in points."""

    angle: float
    spacing: float
    width: float
    crossed: bool = False

    @property
    def covered(self) -> float:
        """The share of the cloth that the lines cover."""
        bare = 1 - self.width / self.spacing
        return 1 - bare * bare if self.crossed else 1 - bare


@dataclass(frozen=True, slots=True)
class Look:
    """A colour with black lines over it, or none."""

    colour: str
    texture: Texture | None = None

    @property
    def luminance(self) -> float:
        """The luminance of the look as a whole, as from afar."""
        return luminance(self.colour) * (1 - self.texture.covered if self.texture else 1.0)

    @property
    def tone(self) -> str:
        """The flat grey that is as light as the look as a whole."""
        if self.texture is None:
            return self.colour
        channel = round(255 * _encoded(self.luminance))
        return f"#{channel:02x}{channel:02x}{channel:02x}"


#: From light to dark; neighbours differ in their lines as well.
LOOKS: Final = (
    Look("#ffffff"),
    Look("#ffffff", Texture(45, 6, 0.6)),
    Look("#ffffff", Texture(45, 6, 0.65, crossed=True)),
    Look("#d6d6d6"),
    Look("#d6d6d6", Texture(0, 4, 0.8)),
    Look("#cccccc", Texture(135, 4, 1.1)),
    Look("#a0a0a0"),
    Look("#a0a0a0", Texture(90, 4, 0.9)),
    Look("#9a9a9a", Texture(45, 5, 0.9, crossed=True)),
    Look("#808080", Texture(135, 4, 1.2)),
    Look("#6a6a6a", Texture(0, 5, 1.1, crossed=True)),
    Look("#404040"),
)


def looks_for(colours: Sequence[str]) -> tuple[Look, ...]:
    """Return a look for each colour (#rrggbb), given from light to dark; more than there are looks share some."""
    last = len(LOOKS) - 1
    if len(colours) > len(LOOKS):
        return tuple(LOOKS[rank * last // (len(colours) - 1)] for rank in range(len(colours)))
    wanted = [lightness(luminance(colour)) for colour in colours]
    if wanted and wanted[0] > LIGHT:
        wanted[0] = lightness(LOOKS[0].luminance)
    if len(wanted) > 1 and wanted[-1] < DARK:
        wanted[-1] = lightness(LOOKS[last].luminance)
    return tuple(LOOKS[index] for index in _nearest(tuple(wanted)))


@cache
def _nearest(wanted: tuple[float, ...]) -> tuple[int, ...]:
    """Return the rising choice of looks that lies nearest to what is wanted and is not too close together."""
    have = [lightness(look.luminance) for look in LOOKS]
    best: dict[int, tuple[float, tuple[int, ...]]] = {-1: (0.0, ())}
    for want in wanted:
        grown: dict[int, tuple[float, tuple[int, ...]]] = {}
        for last, (cost, chosen) in best.items():
            for index in range(last + 1, len(LOOKS)):
                close = max(0.0, APART - (have[last] - have[index])) if last >= 0 else 0.0
                total = (cost + (have[index] - want) ** 2 + 6 * close**2, (*chosen, index))
                grown[index] = min(total, grown.get(index, total))
        best = grown
    return min(best.values())[1]


def luminance(colour: str) -> float:
    """Return the relative luminance of #rrggbb, 0 for black to 1 for white (WCAG 2.2)."""
    red, green, blue = (_linear(int(colour[index : index + 2], 16) / 255) for index in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def lightness(luminance: float) -> float:
    """Return L* of a relative luminance, 0 for black to 100 for white (CIE 1976)."""
    return 116 * luminance ** (1 / 3) - 16 if luminance > 216 / 24389 else luminance * 24389 / 27


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else float(((channel + 0.055) / 1.055) ** 2.4)


def _encoded(light: float) -> float:
    return light * 12.92 if light <= 0.0031308 else float(1.055 * light ** (1 / 2.4) - 0.055)
