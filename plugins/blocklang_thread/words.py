"""The sentences of the estimate."""

import math
from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting import format_measure
from blocklang.wording import Saying, say, say_decimal, say_number
from blocklang_thread.estimating import CHAIN, THREAD_END, Estimate, Sewing

_INCHES_PER_YARD, _INCHES_PER_METRE = 36.0, 1000 / 25.4


def heading(block: str, estimate: Estimate) -> Saying:
    """Say what is estimated."""
    return say_number(
        "Thread for {number} block of {block}: an estimate",
        "Thread for {number} blocks of {block}: an estimate",
        estimate.copies,
        number=say_decimal(f"{estimate.copies:,}"),
        block=block,
    )


def how_it_is_sewn(sewing: Sewing) -> Saying:
    """Say what the estimate stands on."""
    return say(
        "Stitches are {length} mm long, about {number} to the inch.",
        length=say_decimal(f"{sewing.stitch:g}"),
        number=f"{sewing.stitches_per_inch:.0f}",
    )


def what_is_counted(sewing: Sewing, unit: LengthUnit) -> tuple[Saying, ...]:
    """Say how thread is counted, and how sure that is."""
    end, chain = length(THREAD_END, unit), length(CHAIN, unit)
    return (
        say(
            "A seam takes {factor} times its length in thread, needle and bobbin together; about half is bobbin thread.",
            factor=say_decimal(f"{sewing.factor:g}"),
        ),
        say(
            "Where a seam begins and where it ends, {end} of each thread hang out; in a chain, {chain} lie between two seams.",
            end=end,
            chain=chain,
        ),
        say("These are numbers of common practice: a lockstitch takes about 2 1/2 to 3 times the length of the seam,"),
        say("more in thick cloth and with short stitches. Have a little more at hand."),
    )


def taken(seams: int, sewn: str, stitches: int, thread: str) -> Saying:
    """Say what some seams take."""
    return say(
        "{seams}, {length} sewn: {stitches}, about {thread} of thread",
        seams=say_number("{number} seam", "{number} seams", seams, number=say_decimal(f"{seams:,}")),
        length=sewn,
        stitches=say_number("{number} stitch", "{number} stitches", stitches, number=say_decimal(f"{stitches:,}")),
        thread=thread,
    )


def in_all(said: str) -> Saying:
    """Say what all steps take."""
    return say("In all: {taken}.", taken=said)


def length(inches: float, unit: LengthUnit) -> Saying:
    """Return a length up to the next eighth of an inch, or the next millimetre."""
    return format_measure(Fraction(math.ceil(inches * 8 - 1e-6), 8), unit)


def thread(inches: float, unit: LengthUnit) -> Saying:
    """Return a length of thread in yards or metres, up to the next tenth."""
    large = _INCHES_PER_YARD if unit is LengthUnit.INCH else _INCHES_PER_METRE
    number = say_decimal(f"{math.ceil(inches / large * 10 - 1e-6) / 10:.1f}")
    return say("{number} yd", number=number) if unit is LengthUnit.INCH else say("{number} m", number=number)
