"""What people may choose about the plan with --set, and what is wrong with what they typed."""

from fractions import Fraction
from typing import Final

from blocklang.cloth import Turning
from blocklang.hooks import CannotMakeError, OutputOptions
from blocklang_cutting_plan.stock_setting import EXAMPLE

SHRINKAGE, RESERVE, TURNING, STOCK = "shrinkage", "reserve", "turning", "stock"

CHOICES: Final[tuple[tuple[str, str, tuple[str, ...]], ...]] = (
    (SHRINKAGE, "Per cent of its length that the fabric loses in the wash, such as 3.", ()),
    (RESERVE, "Inches to buy beyond the plan, such as 2 or 4 1/2.", ()),
    (TURNING, "When pieces may be turned a quarter turn.", tuple(Turning)),
    (STOCK, f"Fabric that is there already and is cut first, such as {EXAMPLE}.", ()),
)
_MOST_SHRINKAGE, _MOST_RESERVE = Fraction(25), Fraction(360)


class Chosen:
    """What was chosen, read once."""

    def __init__(self, options: OutputOptions) -> None:
        self.shrinkage = _number(options.setting(SHRINKAGE, "0"), SHRINKAGE, _MOST_SHRINKAGE) / 100
        self.reserve = _number(options.setting(RESERVE, "0"), RESERVE, _MOST_RESERVE)
        self.turning = Turning(options.setting(TURNING, Turning.TO_BUY_LESS))


def _number(text: str, name: str, most: Fraction) -> Fraction:
    """Return a number such as 3, 2.5, 1/2 or 4 1/2."""
    problem = CannotMakeError(f"For {name} write a number from 0 to {most}, such as 3 or 2 1/2.")
    if len(text) > 20:
        raise problem
    try:
        number = sum((Fraction(part) for part in text.split()), Fraction(0))
    except (ValueError, ZeroDivisionError) as mistake:
        raise problem from mistake
    if not 0 <= number <= most:
        raise problem
    return number
