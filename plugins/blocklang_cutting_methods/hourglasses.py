"""Hourglass units: two from two squares."""

from blocklang.cutting import EqualUnits, Offer
from blocklang_cutting_methods import words
from blocklang_cutting_methods.kinds import ROOT_2, hourglass
from blocklang_cutting_methods.offering import Recipe, offer


def two(units: EqualUnits) -> Offer | None:
    """Offer two at a time: squares of finished side + s(2 + 2 root 2), sewn along one diagonal and then the other."""
    kind = hourglass(units)
    if kind is None:
        return None
    sew = f"Sew {words.seam(kind)} from the line, on both sides of it."
    side = kind.width + kind.seam * (2 + 2 * ROOT_2)
    recipe = Recipe(
        method="hourglasses-by-two",
        title="Hourglass units, two at a time",
        yields=2,
        starts=((kind.first, (side,), 1), (kind.second, (side,), 1)),
        cuts=4,
        bias=0,
        steps=(
            words.laid_together(kind),
            "Draw a line from corner to corner on the upper one.",
            sew,
            "Cut on the line.",
            f"Press both squares toward {kind.second}; trim nothing yet.",
            "Lay them on each other, right sides together, each fabric on the other one, the seams butted.",
            "Draw a line across the seam, from corner to corner.",
            sew,
            "Cut on the line.",
            "Press both units.",
            words.trimmed(kind, "a seam through every corner"),
        ),
    )
    return offer(kind, recipe)
