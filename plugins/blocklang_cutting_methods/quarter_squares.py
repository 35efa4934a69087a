"""Quarter-square-triangle units, two opposite triangles alike: hourglasses, or units of three fabrics."""

from blocklang.cutting import EqualUnits, Offer
from blocklang_cutting_methods import words
from blocklang_cutting_methods.kinds import ROOT_2, TwoFabrics, quarter_square_unit
from blocklang_cutting_methods.offering import Recipe, offer


def hourglasses(units: EqualUnits) -> Offer | None:
    """Offer two at a time: squares of finished side + s(2 + 2 root 2), sewn along one diagonal and then the other."""
    found = quarter_square_unit(units)
    if found is None or found[1] != found[0].second:
        return None
    kind, _ = found
    side = _side(kind)
    recipe = Recipe(
        method="hourglasses-by-two",
        title="Hourglass units, two at a time",
        yields=2,
        starts=((kind.first, (side,), 1), (kind.second, (side,), 1)),
        cuts=4,
        bias=0,
        steps=(
            words.laid_together(kind),
            *_halved(kind),
            f"Press both squares toward {kind.first}; trim nothing yet.",
            "Lay them on each other, right sides together, each fabric on the other one, the seams butted.",
            *_sewn_again(kind),
        ),
    )
    return offer(kind, recipe)


def three_fabrics(units: EqualUnits) -> Offer | None:
    """Offer four at a time: four squares of finished side + s(2 + 2 root 2), two of them of the fabric that repeats."""
    found = quarter_square_unit(units)
    if found is None or found[1] == found[0].second:
        return None
    kind, third = found
    side = _side(kind)
    recipe = Recipe(
        method="quarter-squares-by-four",
        title="Quarter-square-triangle units of three fabrics, four at a time",
        yields=4,
        starts=((kind.first, (side,), 2), (kind.second, (side,), 1), (third, (side,), 1)),
        cuts=4 + 2 + 2,
        bias=0,
        steps=(
            (
                f"Lay a square of {kind.first} on the square of {kind.second}, and one on the square of {third}, right sides "
                "together."
            ),
            *_halved(kind),
            f"Press all four squares toward {kind.first}; trim nothing yet.",
            (
                f"Lay a square with {kind.second} on one with {third}, right sides together, the seams butted, so that "
                f"{kind.first} lies on {kind.second} and on {third}."
            ),
            *_sewn_again(kind),
        ),
    )
    return offer(kind, recipe)


def _side(kind: TwoFabrics) -> float:
    return kind.width + kind.seam * (2 + 2 * ROOT_2)


def _halved(kind: TwoFabrics) -> tuple[str, ...]:
    return ("Draw a line from corner to corner on the upper square.", *_both_sides(kind))


def _sewn_again(kind: TwoFabrics) -> tuple[str, ...]:
    return (
        "Draw a line across the seam, from corner to corner.",
        *_both_sides(kind),
        "Press the units.",
        words.trimmed(kind, "a seam through every corner"),
    )


def _both_sides(kind: TwoFabrics) -> tuple[str, ...]:
    return f"Sew {words.seam(kind)} from the line, on both sides of it.", "Cut on the line."
