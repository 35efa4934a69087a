"""Every sentence on the pages of foundations."""

from collections.abc import Iterator

from blocklang.foundation import Foundation, SectionJoin

SUBJECT = "Paper foundations"
NOT_SENSIBLE = (
    "No two patches of this block share one straight seam from edge to edge, so paper foundations do not help here: "
    "sew it in the order of the sewing sheet."
)
NOTES = ("Each section is drawn from the back, the side you sew on: it is the mirror image of the finished front.",)
FRONT = "The front of the block, not full size"
THIS_FRONT = "Beside: its front, smaller. The drawing above is its mirror image."
_MOST_JOINS = 10


def how_lines(allowance: str) -> tuple[str, ...]:
    """Say how a section is sewn; the seam allowance as a ruler shows it."""
    return (
        "Print each section as often as it says. Cut the paper a little outside the dashed line.",
        "Lay patch 1 on the blank side, right side up. Lay the next fabric on it, right sides together.",
        "Sew on the printed line between them, with 15 to 18 stitches to the inch.",
        "Sew past both ends of the line, but stop where a ring marks its end.",
        f"Fold the paper back on the line. Trim the allowance to {allowance}. Press the new patch open.",
        "When all numbers are sewn, trim on the dashed line. It is the raw edge.",
        "Join sections with the same small letters and ticks together. Take the paper out at the end.",
        "Close the cutter's blade after each cut. Cut away from yourself.",
    )


def print_line(letter: str, times: int) -> str:
    """Say how often a section is printed."""
    return f"Section {letter}: print {times}."


def count_lines(foundation: Foundation) -> tuple[str, ...]:
    """Say how many sections there are, whether fewer are possible, and how they meet."""
    fewest = foundation.fewest
    if fewest.count == 1:
        return ("The whole block is one section.",)
    said = f"{fewest.count} sections."
    told = "No division has fewer." if fewest.proven else f"No division has fewer than {fewest.minimum}."
    if not foundation.joins:
        return f"{said} {told}", "No order was found in which the sections can be joined."
    return f"{said} {told}", _joins_line(foundation.set_in_joins, len(foundation.joins))


def _joins_line(set_in: int, joins: int) -> str:
    if set_in == 0:
        return "No join between them is a set-in seam."
    which = "is a set-in seam" if set_in == 1 else "are set-in seams"
    return f"{set_in} of the {joins} joins between them {which}."


def join_lines(foundation: Foundation) -> tuple[str, ...]:
    """Say in which order the sections are joined; equal joins that follow each other are told once."""
    said: list[tuple[str, int]] = []
    for line in _each(foundation):
        if said and said[-1][0] == line:
            said[-1] = line, said[-1][1] + 1
        else:
            said.append((line, 1))
    lines = [line if times == 1 else f"{line} Make {times}." for line, times in said]
    if len(lines) > _MOST_JOINS:
        return (*lines[:_MOST_JOINS], "Go on in the same way with the sections that are left.")
    return tuple(lines)


def _each(foundation: Foundation) -> Iterator[str]:
    for join in foundation.joins:
        first, second = (_letters(foundation, part) for part in (join.first, join.second))
        yield f"Sew {first} to {second}{_how(join)}."


def _how(join: SectionJoin) -> str:
    return " with a set-in seam" if join.is_set_in else ", a curved seam" if join.curved else ""


def _letters(foundation: Foundation, part: tuple[int, ...]) -> str:
    letters = sorted(foundation.sections[place].letter for place in part)
    if len(letters) > 6:
        return f"the unit of {len(letters)} sections"
    return "+".join(letters)
