"""Every sentence on the pages of foundations."""

from collections.abc import Iterator

from blocklang.foundation import Foundation, SectionJoin
from blocklang.wording import joined, say, say_number

SUBJECT = say("Paper foundations")
NOT_SENSIBLE = (
    "No two patches of this block share one straight seam from edge to edge, so paper foundations do not help here: "
    "sew it in the order of the sewing sheet."
)
NOTES = (
    say("Each section is drawn from the back, the side you sew on: it is the mirror image of the finished front."),
)
FRONT = say("The front of the block, not full size.")
THIS_FRONT = say("Beside: its front, smaller. The drawing above is its mirror image.")
INTRODUCTION = say("How to use them")
INTRODUCTION_SHOWN = say("The front of the block, and how to sew the sections")
SECTION_FRONT = say("The section from the front")
STRIP_SET = say("strip set")
_MOST_JOINS = 10


def how_lines(allowance: str) -> tuple[str, ...]:
    """Say how a section is sewn; the seam allowance as a ruler shows it."""
    return (
        say("Print each section as often as it says. Cut the paper a little outside the dashed line."),
        say("Lay patch 1 on the blank side, right side up. Lay the next fabric on it, right sides together."),
        say("Sew on the printed line between them, with 15 to 18 stitches to the inch."),
        say("Sew past both ends of the line, but stop where a ring marks its end."),
        say(
            "Fold the paper back on the line. Trim the allowance to {allowance}. Press the new patch open.",
            allowance=allowance,
        ),
        say("When all numbers are sewn, trim on the dashed line. It is the raw edge."),
        say("Join sections with the same small letters and ticks together. Take the paper out at the end."),
        say("Close the cutter's blade after each cut. Cut away from yourself."),
    )


def print_line(letter: str, times: int) -> str:
    """Say how often a section is printed."""
    return say("Section {letter}: print {count}.", letter=letter, count=times)


def count_lines(foundation: Foundation) -> tuple[str, ...]:
    """Say how many sections there are, whether fewer are possible, and how they meet."""
    fewest = foundation.fewest
    if fewest.count == 1:
        return (say("The whole block is one section."),)
    said = say_number("{count} section.", "{count} sections.", fewest.count)
    told = (
        say("No division has fewer.")
        if fewest.proven
        else say("No division has fewer than {fewest}.", fewest=fewest.minimum)
    )
    counted = joined((said, told))
    if not foundation.joins:
        return counted, say("No order was found in which the sections can be joined.")
    return counted, _joins_line(foundation.set_in_joins, len(foundation.joins))


def _joins_line(set_in: int, joins: int) -> str:
    if set_in == 0:
        return say("No join between them is a set-in seam.")
    return say_number(
        "{count} of the {joins} joins between them is a set-in seam.",
        "{count} of the {joins} joins between them are set-in seams.",
        set_in,
        joins=joins,
    )


def join_lines(foundation: Foundation) -> tuple[str, ...]:
    """Say in which order the sections are joined; equal joins that follow each other are told once."""
    said: list[tuple[str, int]] = []
    for line in _each(foundation):
        if said and said[-1][0] == line:
            said[-1] = line, said[-1][1] + 1
        else:
            said.append((line, 1))
    lines = [line if times == 1 else joined((line, say("Make {count}.", count=times))) for line, times in said]
    if len(lines) > _MOST_JOINS:
        return (*lines[:_MOST_JOINS], say("Go on in the same way with the sections that are left."))
    return tuple(lines)


def _each(foundation: Foundation) -> Iterator[str]:
    for join in foundation.joins:
        first, second = (_letters(foundation, part) for part in (join.first, join.second))
        yield _how(join, first, second)


def _how(join: SectionJoin, first: str, second: str) -> str:
    if join.is_set_in:
        return say("Sew {first} to {second} with a set-in seam.", first=first, second=second)
    if join.curved:
        return say("Sew {first} to {second}, a curved seam.", first=first, second=second)
    return say("Sew {first} to {second}.", first=first, second=second)


def _letters(foundation: Foundation, part: tuple[int, ...]) -> str:
    letters = sorted(foundation.sections[place].letter for place in part)
    if len(letters) > 6:
        return say("the unit of {count} sections", count=len(letters))
    return "+".join(letters)


def section(letter: str) -> str:
    """Say what a section is called."""
    return say("Section {letter}", letter=letter)


def from_the_back(letter: str) -> str:
    """Say what the drawing of a section shows."""
    return say("Section {letter}, seen from the back", letter=letter)


def from_the_front(name: str) -> str:
    """Say what the picture of the block shows."""
    return say("{name} from the front", name=name)
