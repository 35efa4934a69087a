"""Every sentence of a handout that is not about one cut or one seam."""

from collections.abc import Sequence
from typing import Final

from blocklang.block import Credit
from blocklang.wording import joined, say, say_number

TITLE: Final = say("Class handout")
CONTENTS: Final = say("Contents")
CUTTING: Final = say("Cutting one block")
SEWING: Final = say("Sewing order")


def blocks(count: int) -> str:
    """Say how many blocks there are."""
    return say_number("{count} block", "{count} blocks", count)


def entry(name: str, size: str, page: int) -> str:
    """Say where a block is found."""
    return say("{name}, {size}: page {page}", name=name, size=size, page=page)


def size(width: str, height: str) -> str:
    """Say the finished size."""
    return say("{width} by {height} finished", width=width, height=height)


def piece(name: str, fabric: str, cut: str) -> str:
    """Say how the patches of a line are cut."""
    return joined((joined((name, fabric), ", "), cut), ": ")


def step(number: int, title: str, times: int, measures: str) -> str:
    """Say a step in short."""
    often = (say_number("{count} time", "{count} times", times),) if times > 1 else ()
    done = joined((f"{number}. ", joined((title, *often), ", "), "."), "")
    return joined((done, say("It measures {measures}.", measures=measures))) if measures else done


def measures(each: Sequence[str]) -> str:
    """Say two lengths."""
    return say("{width} by {height}", width=each[0], height=each[1])


def credit(given: Credit) -> str:
    """Say who made a block and under which licence."""
    parts: list[str] = [say("“{name}”", name=given.name)]
    parts += [say("by {author}", author=given.author)] if given.author else []
    parts += [say("licence {licence}", licence=given.licence)] if given.licence else []
    parts += [given.source] if given.source else []
    return joined((joined(parts, ", "), "."), "")
