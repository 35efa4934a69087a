"""The sentences of the estimate."""

import math
from fractions import Fraction

from blocklang.block import LengthUnit
from blocklang.cutting import format_measure
from blocklang_thread.estimating import CHAIN, THREAD_END, Estimate, Sewing

_INCHES_PER_YARD, _INCHES_PER_METRE = 36.0, 1000 / 25.4


def heading(block: str, estimate: Estimate) -> str:
    """Say what is estimated."""
    return f"Thread for {counted(estimate.copies, 'block', 'blocks')} of {block}: an estimate"


def how_it_is_sewn(sewing: Sewing) -> str:
    """Say what the estimate stands on."""
    return f"Stitches are {sewing.stitch:g} mm long, about {sewing.stitches_per_inch:.0f} to the inch."


def what_is_counted(sewing: Sewing, unit: LengthUnit) -> tuple[str, ...]:
    """Say how thread is counted, and how sure that is."""
    end, chain = length(THREAD_END, unit), length(CHAIN, unit)
    return (
        f"A seam takes {sewing.factor:g} times its length in thread, needle and bobbin together; about half is bobbin thread.",
        f"Where a seam begins and where it ends, {end} of each thread hang out; in a chain, {chain} lie between two seams.",
        "These are numbers of common practice: a lockstitch takes about 2 1/2 to 3 times the length of the seam,",
        "more in thick cloth and with short stitches. Have a little more at hand.",
    )


def counted(count: int, one: str, many: str) -> str:
    """Return a number of things."""
    return f"{count:,} {one if count == 1 else many}"


def length(inches: float, unit: LengthUnit) -> str:
    """Return a length up to the next eighth of an inch, or the next millimetre."""
    return str(format_measure(Fraction(math.ceil(inches * 8 - 1e-6), 8), unit))


def thread(inches: float, unit: LengthUnit) -> str:
    """Return a length of thread in yards or metres, up to the next tenth."""
    large, name = (_INCHES_PER_YARD, "yd") if unit is LengthUnit.INCH else (_INCHES_PER_METRE, "m")
    return f"{math.ceil(inches / large * 10 - 1e-6) / 10:.1f} {name}"
