"""The one place that writes a number into a drawing."""

DECIMALS = 2


def write_number(value: float) -> str:
    """Return a number with at most two decimals, no trailing noughts and no minus nought."""
    text = f"{value:.{DECIMALS}f}".rstrip("0").rstrip(".")
    return "0" if text in ("-0", "") else text


def write_place(place: tuple[float, float]) -> str:
    """Return a place as SVG writes it."""
    return f"{write_number(place[0])} {write_number(place[1])}"
