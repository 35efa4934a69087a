"""What was asked for about a gallery, read from its settings."""

import re
from dataclasses import dataclass
from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.geometry import TICKS_PER_INCH
from blocklang.hooks import CannotMakeError, OutputOptions
from blocklang_gallery import words

#: The sizes told where none are asked for: those that most blocks are sewn in, and their metric neighbours.
USUAL = {
    LengthUnit.INCH: "6in,9in,12in",
    LengthUnit.CENTIMETRE: "15cm,20cm,30cm",
    LengthUnit.MILLIMETRE: "150mm,200mm,300mm",
}
#: The page has a rule of its style for each size.
MOST_SIZES = 8
_LENGTH = re.compile(r"(?:(\d{1,3})[ -])?(\d{1,4}(?:\.\d{1,4})?|\d{1,3}/[1-9]\d{0,2}) ?(in|cm|mm)", re.ASCII)


@dataclass(frozen=True, slots=True)
class Size:
    """A finished width: as it is written on a command line, and in ticks."""

    written: str
    ticks: int


@dataclass(frozen=True, slots=True)
class Choices:
    """What one gallery is to be like."""

    title: str
    sizes: tuple[Size, ...]
    with_sheets: bool


def read_choices(options: OutputOptions) -> Choices:
    """Return the choices; one that cannot be understood cannot be made."""
    written = options.setting("sizes", USUAL[options.unit])
    sizes = tuple(dict.fromkeys(_size(part.strip()) for part in written.split(",") if part.strip()))
    if len(sizes) > MOST_SIZES:
        raise CannotMakeError(words.too_many_sizes(MOST_SIZES))
    return Choices(options.setting("title", words.TITLE), sizes, options.setting("sheets", "yes") == "yes")


def _size(written: str) -> Size:
    read = _LENGTH.fullmatch(written)
    inches = (int(read[1] or 0) + Fraction(read[2])) / Fraction(str(LengthUnit(read[3]).per_inch)) if read else 0
    if not read or not inches:
        raise CannotMakeError(words.no_size(written))
    return Size(f"{read[1]} {read[2]}{read[3]}" if read[1] else f"{read[2]}{read[3]}", round(inches * TICKS_PER_INCH))
