"""Quarter-square-triangle units, two opposite triangles alike: hourglasses, or units of three fabrics."""

from blocklang.cutting import EqualUnits, Offer
from blocklang.wording import say
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
        title=say("Hourglass units, two at a time"),
        yields=2,
        starts=((kind.first, (side,), 1), (kind.second, (side,), 1)),
        cuts=4,
        bias=0,
        steps=(
            words.laid_together(kind),
            *_halved(kind),
            say("Press both squares toward {first}; trim nothing yet.", first=kind.first),
            say("Lay them on each other, right sides together, each fabric on the other one, the seams butted."),
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
        title=say("Quarter-square-triangle units of three fabrics, four at a time"),
        yields=4,
        starts=((kind.first, (side,), 2), (kind.second, (side,), 1), (third, (side,), 1)),
        cuts=4 + 2 + 2,
        bias=0,
        steps=(
            say(
                "Lay a square of {first} on the square of {second}, and one on the square of {third}, right sides together.",
                first=kind.first,
                second=kind.second,
                third=third,
            ),
            *_halved(kind),
            say("Press all four squares toward {first}; trim nothing yet.", first=kind.first),
            say(
                "Lay a square with {second} on one with {third}, right sides together, the seams butted, so that "
                "{first} lies on {second} and on {third}.",
                first=kind.first,
                second=kind.second,
                third=third,
            ),
            *_sewn_again(kind),
        ),
    )
    return offer(kind, recipe)


def _side(kind: TwoFabrics) -> float:
    return kind.width + kind.seam * (2 + 2 * ROOT_2)


def _halved(kind: TwoFabrics) -> tuple[str, ...]:
    return (words.LINE_ON_THE_UPPER, *_both_sides(kind))


def _sewn_again(kind: TwoFabrics) -> tuple[str, ...]:
    return (
        say("Draw a line across the seam, from corner to corner."),
        *_both_sides(kind),
        say("Press the units."),
        words.trimmed(kind, say("a seam through every corner")),
    )


def _both_sides(kind: TwoFabrics) -> tuple[str, ...]:
    return words.sew_both_sides(kind), words.CUT_ON_THE_LINE
