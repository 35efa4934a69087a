"""Every sentence on a colouring page."""

from collections.abc import Iterator, Sequence
from typing import Final

from blocklang.block import Credit

NAME: Final = "Name"
#: More blocks than this in one are named in the sewing sheet and not here.
_MOST: Final = 6


def page(number: int, count: int) -> str:
    """Say which page this is."""
    return f"{number} of {count}"


def title(name: str, pictures: int) -> str:
    """Say what a page is, for those who cannot see it."""
    return f"{name}: {'a picture' if pictures == 1 else f'{pictures} pictures'} to colour in"


def credit_lines(given: Sequence[Credit]) -> Iterator[str]:
    """Say who made the block and under which licence, then the same of the blocks placed in it."""
    yield from map(_credit, given[:_MOST])
    more = len(given) - _MOST
    if more > 0:
        blocks = "1 more block" if more == 1 else f"{more} more blocks"
        yield f"It holds {blocks}: the sewing sheet names their authors and licences."


def _credit(credit: Credit) -> str:
    parts = [f"“{credit.name}”"]
    parts += [f"by {credit.author}"] if credit.author else []
    parts += [f"licence {credit.licence}"] if credit.licence else []
    return ", ".join(parts) + "."
