"""Sentences that stand in for the pictures on a sheet without any: where pieces lie, and which way seams are pressed."""

from collections.abc import Sequence
from typing import Final

from blocklang.wording import Saying, joined, listed, say, say_number
from blocklang_sewing_sheet.whereabouts import Heading

LIES: Final = {
    Heading.RIGHT: say("to the right of"),
    Heading.UPPER_RIGHT: say("to the upper right of"),
    Heading.UP: say("above"),
    Heading.UPPER_LEFT: say("to the upper left of"),
    Heading.LEFT: say("to the left of"),
    Heading.LOWER_LEFT: say("to the lower left of"),
    Heading.DOWN: say("below"),
    Heading.LOWER_RIGHT: say("to the lower right of"),
}
RUNS: Final = {
    Heading.RIGHT: say("from left to right"),
    Heading.UPPER_RIGHT: say("from the lower left to the upper right"),
    Heading.UP: say("from bottom to top"),
    Heading.UPPER_LEFT: say("from the lower right to the upper left"),
    Heading.LEFT: say("from right to left"),
    Heading.LOWER_LEFT: say("from the upper right to the lower left"),
    Heading.DOWN: say("from top to bottom"),
    Heading.LOWER_RIGHT: say("from the upper left to the lower right"),
}
WAYS: Final = {
    Heading.RIGHT: say("to the right"),
    Heading.UPPER_RIGHT: say("to the upper right"),
    Heading.UP: say("up"),
    Heading.UPPER_LEFT: say("to the upper left"),
    Heading.LEFT: say("to the left"),
    Heading.LOWER_LEFT: say("to the lower left"),
    Heading.DOWN: say("down"),
    Heading.LOWER_RIGHT: say("to the lower right"),
}
ENDS: Final = {
    Heading.RIGHT: say("at its right end"),
    Heading.UPPER_RIGHT: say("at its upper right end"),
    Heading.UP: say("at its upper end"),
    Heading.UPPER_LEFT: say("at its upper left end"),
    Heading.LEFT: say("at its left end"),
    Heading.LOWER_LEFT: say("at its lower left end"),
    Heading.DOWN: say("at its lower end"),
    Heading.LOWER_RIGHT: say("at its lower right end"),
}


def lies(second: str, first: str, heading: Heading) -> Saying:
    """Say where one thing lies in the block, seen from another."""
    return say("In the block, {second} lies {where} {first}.", second=second, where=LIES[heading], first=first)


def one_lies(heading: Heading) -> Saying:
    """Say where the second of two equal things lies in the block."""
    return say("In the block, the second one lies {where} the first.", where=LIES[heading])


def row_runs(heading: Heading) -> Saying:
    """Say in which direction pieces that are sewn in a row follow each other."""
    return say("In the block, they lie in a row {run}.", run=RUNS[heading])


HOW_SAID: Final = say(
    "Left, right, up and down are told as the pieces lie in the block; where a step is made several times, for one of them."
)
INWARD: Final = {True: say("inward"), False: say("outward")}


def press_all(way: Heading, seams: int) -> Saying:
    """Say which way all the seams of a step are pressed."""
    return say_number("Press the seam {way}.", "Press the {count} seams {way}.", seams, way=WAYS[way])


def press_in_order(ways: Sequence[Heading]) -> Saying:
    """Say which way each seam of a row is pressed."""
    return say("Press the seams in their order {ways}.", ways=_turns([WAYS[way] for way in ways]))


def press_seam(number: int, ways: Sequence[Heading], run: Heading) -> Saying:
    """Say which way one seam of several is pressed, or its parts from its one end to the other."""
    if len(ways) == 1:
        return say("Press seam {number} {way}.", number=number, way=WAYS[ways[0]])
    said = _turns([WAYS[way] for way in ways])
    return say("Along seam {number}, {run}, press its parts {ways}.", number=number, run=RUNS[run], ways=said)


def press_parts(ways: Sequence[Heading], run: Heading) -> Saying:
    """Say which way the parts of one seam are pressed, from its one end to the other."""
    said = _turns([WAYS[way] for way in ways])
    return say("Along the seam, {run}, press its parts {ways}.", run=RUNS[run], ways=said)


def press_round(inward: Sequence[bool]) -> Saying:
    """Say which way a seam that runs round is pressed, or its parts."""
    if len(inward) == 1:
        return say("Press the seam {way}, all round.", way=INWARD[inward[0]])
    return say("All round the seam, press its parts {ways}.", ways=_turns([INWARD[way] for way in inward]))


def sew_part(length: str, end: Heading) -> Saying:
    """Say which part of a seam is sewn."""
    return say("Sew only the part of the seam {end}, {length} long.", end=ENDS[end], length=length)


LAY_OUT_AS_LISTED: Final = say("Lay the pieces out in the order in which they are listed.")


def lay_out(order: Sequence[str]) -> Saying:
    """Say in which order pieces lie beside each other."""
    return say("Lay the pieces out in this order: {order}.", order=joined(order, ", "))


def press_version(letter: str, count: int) -> Saying:
    """Say that some units are pressed as the next sentences tell, and how they are marked."""
    return say_number(
        "Press one of them in the way that follows, and mark it {letter}.",
        "Press {count} of them in the way that follows, and mark them {letter}.",
        count,
        letter=letter,
    )


def _turns(ways: Sequence[str]) -> str:
    """Say ways one after the other, those that alternate in short."""
    alternate = len(ways) > 3 and all(way == ways[place % 2] for place, way in enumerate(ways))
    return say("by turns {one} and {other}", one=ways[0], other=ways[1]) if alternate else listed(ways)
