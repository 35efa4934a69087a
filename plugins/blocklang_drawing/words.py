"""Every word that the kit itself puts on drawings and pages, and what pictures show for those who cannot see them."""

from fractions import Fraction
from typing import Final

from blocklang.block import Fabric, LengthUnit, Value
from blocklang.cutting import format_measure
from blocklang.wording import joined, message, say

MEASURE: Final = say("Measure before you cut.")
SQUARES: Final = say(
    "The large square is 1 in on every side, the small one 2 cm. If they are not, print again at 100 %, "
    "with nothing fitted to the page."
)
JOIN_TILES: Final = say(
    "Trim this page or its neighbour along the dashed line, lay cross on cross where the numbers are the same, and tape."
)
CORNER: Final = say("The corner from close by")
THE_PAGE: Final = say("page")
ONE_INCH: Final = format_measure(Fraction(1))
TWO_CENTIMETRES: Final = format_measure(Fraction(100, 127), LengthUnit.CENTIMETRE)

#: The value of a fabric, and the roles that most blocks have; any other role is a word of the author.
_VALUES: Final = {
    Value.LIGHT: say("light", context="the value of a fabric"),
    Value.MEDIUM: say("medium", context="the value of a fabric"),
    Value.DARK: say("dark", context="the value of a fabric"),
}
_ROLES: Final[dict[str, str]] = {
    "background": say("background", context="what a fabric is for"),
    "star": say("star", context="what a fabric is for"),
    "accent": say("accent", context="what a fabric is for"),
}

_OWN_ROLE: Final = message("{role}", context="what a fabric is for, in the word of the author")


def role(fabric: Fabric) -> str:
    """Say what a fabric is for, and its value."""
    named = (_ROLES.get(fabric.role) or _OWN_ROLE.say(role=fabric.role),) if fabric.role else ()
    return joined((*named, _VALUES[fabric.value]), ", ")


def page_of(number: int, count: int) -> str:
    """Say which of the pages this is."""
    return say("{number} of {count}", number=number, count=count)


def called_page_of(page: str, number: int, count: int) -> str:
    """Say which of the pages this is, by what pages are called."""
    return say("{page} {number} of {count}", page=page, number=number, count=count)


def page_title(name: str, subject: str, page: str) -> str:
    """Say what a page is."""
    return say("{name}: {subject}, {page}", name=name, subject=subject, page=page)


def tile(piece: str, row: tuple[int, int], column: tuple[int, int]) -> str:
    """Say which tile of a piece this is: which row of how many, and which column."""
    return say(
        "{piece}, row {row} of {rows}, column {column} of {columns}",
        piece=piece,
        row=row[0],
        rows=row[1],
        column=column[0],
        columns=column[1],
    )


def about(measure: str) -> str:
    """Say that a length lies between two marks of the ruler."""
    return say("about {measure}", measure=measure)


def block(name: str) -> str:
    """Say that a picture shows the block."""
    return say("{name}: the finished block", name=name)


def names(name: str) -> str:
    """Say that a picture shows the names of the patches."""
    return say("{name}: the patches and their names", name=name)


def in_lines(name: str) -> str:
    """Say that a picture shows the block in lines."""
    return say("{name}: in lines", name=name)


def back(name: str) -> str:
    """Say that a picture shows the back."""
    return say("{name}: the back, with every seam allowance where it is pressed", name=name)


def step(number: int, title: str) -> str:
    """Say which step a picture shows."""
    return say("Step {number}: {title}", number=number, title=title)


def as_sewn(unit: str) -> str:
    """Say which unit a picture shows."""
    return say("{unit} as sewn", unit=unit)


def swatch(fabric: str) -> str:
    """Say which fabric a swatch shows."""
    return say("Swatch of {fabric}", fabric=fabric)
