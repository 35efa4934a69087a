"""Every sentence of the cutting list that is not about one piece."""

from fractions import Fraction
from typing import Final

TITLE: Final = "Cutting list"
STRIP_SETS: Final = "Strip sets"
NOTES: Final = "Good to know"
BLADE: Final = "Close the blade of the rotary cutter every time you put it down, and cut away from yourself."


def for_copies(copies: int, width: str) -> str:
    """Say what the list is for, and how wide the fabric is taken to be."""
    blocks = "one block" if copies == 1 else f"{copies} blocks"
    return f"For {blocks}, from fabric {width} wide between the selvages."


def yards(amount: Fraction) -> str:
    """Say a length of fabric in yards."""
    whole, part = divmod(amount, 1)
    said = " ".join(str(number) for number in (whole, part) if number) or "0"
    return f"{said} {'yard' if amount <= 1 else 'yards'}"


def strips(count: int, width: str) -> str:
    """Say how many strips of one width are cut."""
    return f"{count} {'strip' if count == 1 else 'strips'} {width} wide"
