"""How a block is coloured: a frozen theme that is passed to every picture."""

from collections.abc import Iterable
from dataclasses import dataclass

from blocklang.block import Fabric
from blocklang.wording import ENGLISH, Language
from blocklang_drawing.textures import Look, Texture, looks_for, luminance

INK, QUIET, PAPER = "#17303f", "#5b717c", "#ffffff"
#: The luminance with which dark and white ink contrast equally.
EVEN = 0.18


@dataclass(frozen=True, slots=True)
class Fill:
    """What a fabric looks like: a colour, lines over it for black and white, and an ink that reads on both.

    `tone` is the flat colour that looks as dark as all of it: for patches too small for lines.
    """

    colour: str
    ink: str
    tone: str
    texture: Texture | None = None

    @property
    def texture_ink(self) -> str:
        """The colour of the lines of the texture."""
        return "#000000"


@dataclass(frozen=True, slots=True)
class Theme:
    """All that pictures need to know about colour and type, and the language of the words on them."""

    fills: tuple[tuple[str, Fill], ...]
    ink: str = INK
    quiet: str = QUIET
    paper: str = PAPER
    between: str = "#9fb0b8"  # between small patches that are all dark, where paper would glare
    line: float = 0.7
    font: str = "Helvetica, Arial, sans-serif"
    language: Language = ENGLISH

    def fill(self, fabric: str) -> Fill:
        """Return what a fabric looks like."""
        return next(fill for name, fill in self.fills if name == fabric)


def theme_for(fabrics: Iterable[Fabric], black_and_white: bool = False, language: Language = ENGLISH) -> Theme:
    """Return the theme of a block's fabrics, in black and white each as light as it is and told apart by its lines."""
    known = tuple(fabrics)
    if not black_and_white:
        return Theme(tuple((fabric.id, _plain(fabric.colour)) for fabric in known), language=language)
    ordered = sorted(known, key=lambda fabric: (-luminance(fabric.colour), fabric.id))
    looks = zip(ordered, looks_for([fabric.colour for fabric in ordered]), strict=True)
    fills = {fabric.id: _textured(look) for fabric, look in looks}
    return Theme(
        tuple((fabric.id, fills[fabric.id]) for fabric in known),
        ink="#000000",
        quiet="#555555",
        paper="#ffffff",
        between="#a8a8a8",
        language=language,
    )


def _plain(colour: str) -> Fill:
    return Fill(colour, INK if luminance(colour) > EVEN else PAPER, colour)


def _textured(look: Look) -> Fill:
    return Fill(look.colour, "#000000" if look.luminance > EVEN else PAPER, look.tone, look.texture)
