"""Flying geese: four from five squares, or one by one with squares on the corners of a rectangle."""

from blocklang.cutting import EqualUnits, Offer
from blocklang_cutting_methods import words
from blocklang_cutting_methods.kinds import ROOT_2, TwoFabrics, goose
from blocklang_cutting_methods.offering import Recipe, offer


def four(units: EqualUnits) -> Offer | None:
    """Offer four at a time: one square of width + s(2 + 2 root 2), four of height + s(2 + root 2)."""
    kind = goose(units)
    if kind is None:
        return None
    large, small = kind.width + kind.seam * (2 + 2 * ROOT_2), kind.height + kind.seam * (2 + ROOT_2)
    sew = f"Sew {words.seam(kind)} from the line, on both sides of it."
    recipe = Recipe(
        method="geese-by-four",
        title="Flying geese, four at a time",
        yields=4,
        starts=((kind.first, (large,), 1), (kind.second, (small,), 4)),
        cuts=5 + 3,
        bias=0,
        steps=(
            (
                f"Lay two small squares of {kind.second} on two opposite corners of the large square of {kind.first}, "
                "right sides together; they overlap a little in the middle."
            ),
            "Draw a line through both, from corner to corner of the large square.",
            sew,
            "Cut on the line.",
            "Press the small triangles away from the large one, on both halves.",
            "Lay a small square on the corner of each half that is still free.",
            "Draw a line from that corner to the notch between the small triangles.",
            sew,
            "Cut on the line.",
            "Press all four geese.",
            _trimmed(kind),
        ),
    )
    return offer(kind, recipe)


def corners(units: EqualUnits) -> Offer | None:
    """Offer corner squares: a rectangle and two squares, all finished + 2s, sewn on the diagonal of each square."""
    kind = goose(units)
    if kind is None:
        return None
    wide, high, seam = kind.width + 2 * kind.seam, kind.height + 2 * kind.seam, words.seam(kind)
    recipe = Recipe(
        method="geese-by-corner-squares",
        title="Flying geese, by corner squares",
        yields=1,
        starts=((kind.first, (high, wide), 1), (kind.second, (high,), 2)),
        cuts=3 + 2,
        bias=0,
        steps=(
            "Draw a line from corner to corner on every square.",
            (
                f"Lay a square of {kind.second} on one end of a rectangle of {kind.first}, right sides together, the line "
                "from a bottom corner to the middle of the top."
            ),
            "Sew on the line.",
            f"Trim both layers {seam} beyond the seam.",
            "Press the corner out.",
            "Do the same at the other end, the line leaning the other way.",
            _trimmed(kind),
        ),
        beware="The corners that are trimmed off are waste, or small triangle units for another block.",
    )
    return offer(kind, recipe)


def _trimmed(kind: TwoFabrics) -> str:
    return words.trimmed(kind, f"the point {words.seam(kind)} below the edge")
