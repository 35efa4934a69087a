"""The one place that writes a number into a drawing."""

from functools import lru_cache

DECIMALS = 2


def write_number(value: float) -> str:
    """Return a number with at most two decimals, no trailing noughts and no minus nought."""
    text = f"{value:.{DECIMALS}f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


@lru_cache(maxsize=1 << 16)
def write_place(place: tuple[float, float]) -> str:
    """Return a place as SVG writes it; corners are shared, so that most places are asked for again."""
    return f"{write_number(place[0])} {write_number(place[1])}"
