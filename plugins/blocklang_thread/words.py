"""The sentences of the estimate."""

import math
from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting import format_measure
from blocklang.wording import Saying, say, say_decimal, say_number
from blocklang_thread.estimating import CHAIN, THREAD_END, Estimate, Sewing, StepThread

_INCHES_PER_YARD, _INCHES_PER_METRE = 36.0, 1000 / 25.4


def heading(block: str, estimate: Estimate) -> Saying:
    """Say what is estimated."""
    return say_number(
        "Thread for {count} block of {block}: an estimate",
        "Thread for {count} blocks of {block}: an estimate",
        estimate.copies,
        block=block,
    )


def how_it_is_sewn(sewing: Sewing) -> Saying:
    """Say what the estimate stands on."""
    return say(
        "Stitches are {stitch} mm long, about {number} to the inch.",
        stitch=say_decimal(f"{sewing.stitch:g}"),
        number=f"{sewing.stitches_per_inch:.0f}",
    )


def taken(step: StepThread, unit: LengthUnit) -> Saying:
    """Say what a step takes."""
    return say(
        "{seams}, {length} sewn: {stitches}, about {thread} of thread",
        seams=say_number("{count} seam", "{count} seams", step.seams),
        length=length(step.length, unit),
        stitches=say_number("{count} stitch", "{count} stitches", step.stitches),
        thread=thread(step.thread, unit),
    )


def in_all(estimate: Estimate, unit: LengthUnit) -> Saying:
    """Say what all steps take."""
    return say("In all: {what_is_taken}.", what_is_taken=taken(estimate.total, unit))


def what_is_counted(sewing: Sewing, unit: LengthUnit) -> tuple[Saying, ...]:
    """Say how thread is counted, and how sure that is."""
    return (
        say(
            "A seam takes {factor} times its length in thread, needle and bobbin together; about half is bobbin thread.",
            factor=say_decimal(f"{sewing.factor:g}"),
        ),
        say(
            "Where a seam begins and where it ends, {end} of each thread hang out; in a chain, {chain} lie between two seams.",
            end=length(THREAD_END, unit),
            chain=length(CHAIN, unit),
        ),
        say("These are numbers of common practice: a lockstitch takes about 2 1/2 to 3 times the length of the seam."),
        say("Thick cloth and short stitches take more. Have a little more at hand."),
    )


def headings(unit: LengthUnit) -> tuple[str, ...]:
    """Say what stands in the columns of the table."""
    return (
        say("step", context="the heading of a column"),
        say("title", context="the heading of a column"),
        say("seams", context="the heading of a column"),
        say("sewn, {unit}", unit=str(unit)),
        say("stitches", context="the heading of a column"),
        say("thread, {unit}", unit=str(unit)),
    )


def length(inches: float, unit: LengthUnit) -> str:
    """Return a length up to the next eighth of an inch, or the next millimetre."""
    return format_measure(Fraction(math.ceil(inches * 8 - 1e-6), 8), unit)


def thread(inches: float, unit: LengthUnit) -> Saying:
    """Return a length of thread in yards or metres, up to the next tenth."""
    in_inches = unit is LengthUnit.INCH
    tenths = math.ceil(inches / (_INCHES_PER_YARD if in_inches else _INCHES_PER_METRE) * 10 - 1e-6) / 10
    number = say_decimal(f"{tenths:.1f}")
    return say("{number} yd", number=number) if in_inches else say("{number} m", number=number)
