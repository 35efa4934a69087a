"""Half-square-triangle units: two, four or eight from two squares."""

from blocklang.cutting import EqualUnits, Offer
from blocklang.wording import say
from blocklang_cutting_methods import words
from blocklang_cutting_methods.kinds import ROOT_2, TwoFabrics, half_square_unit
from blocklang_cutting_methods.offering import Recipe, offer

_TWO = say("Half-square-triangle units, two at a time")
_FOUR = say("Half-square-triangle units, four at a time")
_EIGHT = say("Half-square-triangle units, eight at a time")
_ON_THE_SEAM = say("the seam through two corners")


def two(units: EqualUnits) -> Offer | None:
    """Offer two at a time: squares of finished side + s(2 + root 2), sewn on both sides of one diagonal."""
    kind = half_square_unit(units)
    if kind is None:
        return None
    steps = (
        words.laid_together(kind),
        words.LINE_ON_THE_UPPER,
        words.sew_both_sides(kind),
        words.CUT_ON_THE_LINE,
        say("Press both units."),
        words.trimmed(kind, _ON_THE_SEAM),
    )
    side = kind.width + kind.seam * (2 + ROOT_2)
    return offer(kind, _recipe(kind, "half-squares-by-two", _TWO, 2, side, 3, steps))


def four(units: EqualUnits) -> Offer | None:
    """Offer four at a time: squares of root 2 times finished side + s(2 + 2 root 2), sewn all round."""
    kind = half_square_unit(units)
    if kind is None:
        return None
    steps = (
        words.laid_together(kind),
        say("Sew all round, {seam} from the edge.", seam=words.seam(kind)),
        say("Cut corner to corner, both ways."),
        say("Press all four units."),
        words.trimmed(kind, _ON_THE_SEAM),
    )
    side = kind.width * ROOT_2 + kind.seam * (2 + 2 * ROOT_2)
    name, title = "half-squares-by-four", _FOUR
    return offer(kind, _recipe(kind, name, title, 4, side, 4, steps, bias=4 * 4, beware=words.BIAS_OUTSIDE))


def eight(units: EqualUnits) -> Offer | None:
    """Offer eight at a time: squares of 2 times (finished side + s(2 + root 2)), sewn along both diagonals."""
    kind = half_square_unit(units)
    if kind is None:
        return None
    steps = (
        words.laid_together(kind),
        say("Draw lines from corner to corner, both ways."),
        say("Sew {seam} from each line, on both sides of it.", seam=words.seam(kind)),
        say("Cut through the middle straight across, and straight up."),
        say("Cut on the lines."),
        say("Press all eight units."),
        words.trimmed(kind, _ON_THE_SEAM),
    )
    side = 2 * (kind.width + kind.seam * (2 + ROOT_2))
    return offer(kind, _recipe(kind, "half-squares-by-eight", _EIGHT, 8, side, 6, steps))


def _recipe(
    kind: TwoFabrics,
    method: str,
    title: str,
    yields: int,
    side: float,
    cuts: int,
    steps: tuple[str, ...],
    bias: int = 0,
    beware: str = "",
) -> Recipe:
    starts = ((kind.first, (side,), 1), (kind.second, (side,), 1))
    return Recipe(method, title, yields, starts, cuts, bias, steps, beware)
