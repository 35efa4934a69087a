"""From a recipe to an offer: how many rounds, what they take, and what the plain cutting takes."""

from collections.abc import Sequence
from dataclasses import dataclass

from blocklang.cutting import EqualUnits, Measure, Offer, StartPiece, UnitPatch, Work, measure
from blocklang_cutting_methods.kinds import TwoFabrics

#: Units made beyond those needed, as a share of them, from which a way is not worth offering.
_TOO_MANY = 0.25


@dataclass(frozen=True, slots=True)
class Recipe:
    """One round of a way: the units it gives, its start pieces (fabric, sides, how many), its cuts, its sentences.

    `bias` is the number of bias edges that are handled unsewn, in one round.
    """

    method: str
    title: str
    yields: int
    starts: tuple[tuple[str, tuple[float, ...], int], ...]
    cuts: int
    bias: int
    steps: tuple[str, ...]
    beware: str = ""


def offer(kind: TwoFabrics, recipe: Recipe) -> Offer | None:
    """Return the offer of a recipe, None when the plan holds too few of the units for it."""
    units = kind.units
    rounds = -(-units.count // recipe.yields)
    if units.count < recipe.yields or rounds * recipe.yields - units.count > units.count * _TOO_MANY:
        return None
    starts = tuple(
        StartPiece(fabric, tuple(to_mark(kind, side) for side in sides), count * rounds)
        for fabric, sides, count in recipe.starts
    )
    return Offer(
        method=recipe.method,
        title=recipe.title,
        patches=tuple(patch.patch for unit in units.units for patch in unit),
        needed=units.count,
        rounds=rounds,
        yields=recipe.yields,
        starts=starts,
        trim=(to_mark(kind, kind.width + 2 * kind.seam), to_mark(kind, kind.height + 2 * kind.seam)),
        steps=recipe.steps,
        plain=plain_work(units),
        work=Work(sum(start.area for start in starts), recipe.cuts * rounds, recipe.bias * rounds),
        beware=recipe.beware,
    )


def to_mark(kind: TwoFabrics, exact: float) -> Measure:
    """Return a length with the mark it is cut at."""
    return measure(exact, kind.units.options)


def plain_work(units: EqualUnits) -> Work:
    """Return what the units take when they are cut as the cutting list says."""
    alike: dict[tuple[str, str, int], list[UnitPatch]] = {}
    for patch in units.units[0]:
        key = patch.fabric, patch.piece.method, patch.piece.yields
        alike.setdefault(key, []).append(patch)
    parts = [_work(patches, units.count) for patches in alike.values()]
    return Work(sum(p.area for p in parts), sum(p.cuts for p in parts), sum(p.bias for p in parts))


def _work(patches: Sequence[UnitPatch], units: int) -> Work:
    """Return what equal triangles take: a square cut once across is one cut more, twice across two."""
    piece, count = patches[0].piece, len(patches) * units
    squares = -(-count // piece.yields)
    side = float(piece.cut[0].shown)
    bias_edges = 1 if piece.yields == 2 else 2
    return Work(squares * side**2, squares * (1 + piece.yields // 2), count * bias_edges)
