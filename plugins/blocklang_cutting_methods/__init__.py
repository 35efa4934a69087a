"""Cutting methods that make several units at once: triangle units by two, four and eight, and flying geese."""

from blocklang.cutting import CuttingMethod
from blocklang.hooks import hookimpl


@hookimpl
def blocklang_cutting_methods() -> tuple[CuttingMethod, ...]:
    """Offer the methods; none of them claims a single patch."""
    from blocklang_cutting_methods import geese, half_squares, quarter_squares

    return (
        CuttingMethod(
            "half-squares-by-two", "two half-square-triangle units from two squares", 30, offers=half_squares.two
        ),
        CuttingMethod(
            "half-squares-by-four", "four half-square-triangle units from two squares", 29, offers=half_squares.four
        ),
        CuttingMethod(
            "half-squares-by-eight", "eight half-square-triangle units from two squares", 28, offers=half_squares.eight
        ),
        CuttingMethod(
            "hourglasses-by-two", "two hourglass units from two squares", 27, offers=quarter_squares.hourglasses
        ),
        CuttingMethod(
            "quarter-squares-by-four",
            "four quarter-square-triangle units of three fabrics",
            27,
            offers=quarter_squares.three_fabrics,
        ),
        CuttingMethod("geese-by-four", "four flying geese from five squares", 26, offers=geese.four),
        CuttingMethod(
            "geese-by-corner-squares", "a flying goose from a rectangle and two squares", 25, offers=geese.corners
        ),
    )
