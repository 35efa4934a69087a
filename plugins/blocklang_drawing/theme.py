"""How a block is coloured: a frozen theme that is passed to every picture."""

from collections.abc import Iterable
from dataclasses import dataclass

from blocklang.block import Fabric
from blocklang.wording import ENGLISH, Language

INK, QUIET, PAPER = "#17303f", "#5b717c", "#ffffff"


@dataclass(frozen=True, slots=True)
class Texture:
    """Plain lines drawn over a fill: their angle in degrees, and spacing and width in points."""

    angle: float
    spacing: float
    width: float
    crossed: bool = False


@dataclass(frozen=True, slots=True)
class Fill:
    """What a fabric looks like: a colour, lines over it for black and white, and an ink that reads on both."""

    colour: str
    ink: str
    texture: Texture | None = None

    @property
    def texture_ink(self) -> str:
        """The colour of the lines of the texture."""
        return "#000000"

    @property
    def tone(self) -> str:
        """The flat colour that looks as dark as the fill with its texture: for patches too small for lines."""
        if self.texture is None:
            return self.colour
        covered = min(0.9, self.texture.width / self.texture.spacing * (2 if self.texture.crossed else 1))
        channels = (int(self.colour[index : index + 2], 16) for index in (1, 3, 5))
        return "#" + "".join(f"{round(channel * (1 - covered)):02x}" for channel in channels)


@dataclass(frozen=True, slots=True)
class Theme:
    """All that pictures need to know about colour and type, and the language of the words on them."""

    fills: tuple[tuple[str, Fill], ...]
    ink: str = INK
    quiet: str = QUIET
    paper: str = PAPER
    line: float = 0.7
    font: str = "Helvetica, Arial, sans-serif"
    language: Language = ENGLISH

    def fill(self, fabric: str) -> Fill:
        """Return what a fabric looks like."""
        return next(fill for name, fill in self.fills if name == fabric)


#: From light to dark, each told apart without colour.
_TEXTURED = (
    ("#ffffff", None),
    ("#ffffff", Texture(45, 7, 0.7)),
    ("#ffffff", Texture(0, 5, 0.7)),
    ("#ffffff", Texture(135, 4, 0.9)),
    ("#ffffff", Texture(45, 6, 0.7, crossed=True)),
    ("#e2e2e2", None),
    ("#d8d8d8", Texture(90, 4, 0.9)),
    ("#c4c4c4", Texture(45, 4, 1.0)),
    ("#a6a6a6", None),
    ("#a6a6a6", Texture(0, 4, 1.2, crossed=True)),
    ("#777777", Texture(135, 4, 1.2)),
    ("#484848", None),
)


def theme_for(fabrics: Iterable[Fabric], black_and_white: bool = False, language: Language = ENGLISH) -> Theme:
    """Return the theme of a block's fabrics; in black and white the lightest stays plain and the darkest is solid."""
    known = tuple(fabrics)
    if not black_and_white:
        return Theme(tuple((fabric.id, _plain(fabric.colour)) for fabric in known), language=language)
    ordered = sorted(known, key=lambda fabric: (-luminance(fabric.colour), fabric.id))
    textured = {fabric.id: _textured(rank, len(ordered)) for rank, fabric in enumerate(ordered)}
    return Theme(
        tuple((fabric.id, textured[fabric.id]) for fabric in known),
        ink="#000000",
        quiet="#555555",
        paper="#ffffff",
        language=language,
    )


def luminance(colour: str) -> float:
    """Return the relative luminance of #rrggbb, 0 for black to 1 for white (WCAG 2.2)."""
    red, green, blue = (_linear(int(colour[index : index + 2], 16) / 255) for index in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(channel: float) -> float:
    return channel / 12.92 if channel <= 0.04045 else float(((channel + 0.055) / 1.055) ** 2.4)


def _plain(colour: str) -> Fill:
    # 0.18 is where dark and white ink contrast equally with a colour.
    return Fill(colour, INK if luminance(colour) > 0.18 else PAPER)


def _textured(rank: int, count: int) -> Fill:
    last = len(_TEXTURED) - 1
    index = rank % len(_TEXTURED) if count > len(_TEXTURED) else round(rank * last / max(count - 1, 1))
    colour, texture = _TEXTURED[index]
    return Fill(colour, "#000000" if luminance(colour) > 0.18 else PAPER, texture)
