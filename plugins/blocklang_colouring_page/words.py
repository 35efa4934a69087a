"""Every sentence on a colouring page."""

from collections.abc import Iterator, Sequence
from typing import Final

from blocklang.block import Credit
from blocklang.wording import joined, say, say_number

NAME: Final = say("Name")
#: More blocks than this in one are named in the sewing sheet and not here.
_MOST: Final = 6


def page(number: int, count: int) -> str:
    """Say which page this is."""
    return say("{number} of {count}", number=number, count=count)


def title(name: str, pictures: int) -> str:
    """Say what a page is, for those who cannot see it."""
    return say_number("{name}: a picture to colour in", "{name}: {count} pictures to colour in", pictures, name=name)


def credit_lines(given: Sequence[Credit]) -> Iterator[str]:
    """Say who made the block and under which licence, then the same of the blocks placed in it."""
    yield from map(_credit, given[:_MOST])
    more = len(given) - _MOST
    if more > 0:
        yield say_number(
            "It holds {count} more block: the sewing sheet names their authors and licences.",
            "It holds {count} more blocks: the sewing sheet names their authors and licences.",
            more,
        )


def _credit(credit: Credit) -> str:
    parts = [say("“{name}”", name=credit.name)]
    parts += [say("by {author}", author=credit.author)] if credit.author else []
    parts += [say("licence {licence}", licence=credit.licence)] if credit.licence else []
    return joined((joined(parts, ", "), "."), "")
