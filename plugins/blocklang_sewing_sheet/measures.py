"""Lengths of a plan as a ruler shows them."""

from blocklang_drawing import say_measure

from blocklang.block import LengthUnit
from blocklang.wording import Saying
from blocklang_sewing_sheet import words


def say_oblong(measures: tuple[int, int], unit: LengthUnit) -> Saying:
    """Return two lengths, "6 1/2 in square" or "3 1/2 in by 6 1/2 in"."""
    return words.oblong(say_measure(measures[0], unit), say_measure(measures[1], unit))
