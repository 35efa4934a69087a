"""Flying geese: four from five squares, or one by one with squares on the corners of a rectangle."""

from blocklang.cutting import EqualUnits, Offer
from blocklang.wording import say
from blocklang_cutting_methods import words
from blocklang_cutting_methods.kinds import ROOT_2, TwoFabrics, goose
from blocklang_cutting_methods.offering import Recipe, offer


def four(units: EqualUnits) -> Offer | None:
    """Offer four at a time: one square of width + s(2 + 2 root 2), four of height + s(2 + root 2)."""
    kind = goose(units)
    if kind is None:
        return None
    large, small = kind.width + kind.seam * (2 + 2 * ROOT_2), kind.height + kind.seam * (2 + ROOT_2)
    sew = words.sew_both_sides(kind)
    recipe = Recipe(
        method="geese-by-four",
        title=say("Flying geese, four at a time"),
        yields=4,
        starts=((kind.first, (large,), 1), (kind.second, (small,), 4)),
        cuts=5 + 3,
        bias=0,
        steps=(
            say(
                "Lay two small squares of {second} on two opposite corners of the large square of {first}, "
                "right sides together; they overlap a little in the middle.",
                first=kind.first,
                second=kind.second,
            ),
            say("Draw a line through both, from corner to corner of the large square."),
            sew,
            words.CUT_ON_THE_LINE,
            say("Press the small triangles away from the large one, on both halves."),
            say("Lay a small square on the corner of each half that is still free."),
            say("Draw a line from that corner to the notch between the small triangles."),
            sew,
            words.CUT_ON_THE_LINE,
            say("Press all four geese."),
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
        title=say("Flying geese, by corner squares"),
        yields=1,
        starts=((kind.first, (high, wide), 1), (kind.second, (high,), 2)),
        cuts=3 + 2,
        bias=0,
        steps=(
            say("Draw a line from corner to corner on every square."),
            say(
                "Lay a square of {second} on one end of a rectangle of {first}, right sides together, the line "
                "from a bottom corner to the middle of the top.",
                first=kind.first,
                second=kind.second,
            ),
            say("Sew on the line."),
            say("Trim both layers {seam} beyond the seam.", seam=seam),
            say("Press the corner out."),
            say("Do the same at the other end, the line leaning the other way."),
            _trimmed(kind),
        ),
        beware=say("The corners that are trimmed off are waste, or small triangle units for another block."),
    )
    return offer(kind, recipe)


def _trimmed(kind: TwoFabrics) -> str:
    return words.trimmed(kind, say("the point {seam} below the edge", seam=words.seam(kind)))
