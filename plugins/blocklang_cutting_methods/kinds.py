"""What a unit is: half-square triangles, quarter-square triangles, a flying goose, or none of them."""

import math
from dataclasses import dataclass

from blocklang.cutting import EqualUnits, UnitPatch

ROOT_2 = math.sqrt(2)

#: Closed forms and lattice agree to this many inches.
_SAME = 1e-4


@dataclass(frozen=True, slots=True)
class TwoFabrics:
    """A unit of two fabrics that is recognised: in a goose the first is that of the large triangle."""

    units: EqualUnits
    first: str
    second: str
    width: float
    height: float

    @property
    def seam(self) -> float:
        """The seam allowance in inches."""
        return self.units.allowance


def half_square_unit(units: EqualUnits) -> TwoFabrics | None:
    """Recognise a square of two triangles in two fabrics, each half of a square leg + s(2 + root 2)."""
    first = units.units[0]
    if len(first) != 2 or not _is_square(units) or first[0].fabric == first[1].fabric:
        return None
    leg = _width(units)
    cut = leg + units.allowance * (2 + ROOT_2)
    if not all(_is(patch, "half-square-triangle", cut) for unit in units.units for patch in unit):
        return None
    return TwoFabrics(units, first[0].fabric, first[1].fabric, leg, leg)


def quarter_square_unit(units: EqualUnits) -> tuple[TwoFabrics, str] | None:
    """Recognise a square of four triangles, each a quarter of a square side + s(2 + 2 root 2), with two opposite alike.

    The first fabric is that of the two; the second is opposite the one that is returned beside, which may be the same.
    """
    first = units.units[0]
    if len(first) != 4 or not _is_square(units):
        return None
    side = _width(units)
    cut = side + units.allowance * (2 + 2 * ROOT_2)
    if not all(_is(patch, "quarter-square-triangle", cut) for unit in units.units for patch in unit):
        return None
    a, b, c, d = _round_the_middle(first)
    if b == d:
        a, b, c, d = b, c, d, a
    if a != c or a in (b, d):
        return None
    b, d = sorted((b, d), key=[patch.fabric for patch in first].index)
    return TwoFabrics(units, a, b, side, side), d


def goose(units: EqualUnits) -> TwoFabrics | None:
    """Recognise a large triangle between two small ones of another fabric, twice as wide as it is high."""
    if len(units.units[0]) != 3 or units.size is None or abs(units.size[1] - 2 * units.size[0]) > _SAME:
        return None
    height, width = units.size
    large = width + units.allowance * (2 + 2 * ROOT_2)
    small = height + units.allowance * (2 + ROOT_2)
    if not all(_is_goose(unit, large, small) for unit in units.units):
        return None
    body = next(patch for patch in units.units[0] if patch.piece.yields == 4)
    wings = {patch.fabric for patch in units.units[0] if patch is not body}
    if len(wings) != 1 or body.fabric in wings:
        return None
    return TwoFabrics(units, body.fabric, wings.pop(), width, height)


def _is_goose(unit: tuple[UnitPatch, ...], large: float, small: float) -> bool:
    bodies = [patch for patch in unit if _is(patch, "quarter-square-triangle", large)]
    return len(bodies) == 1 and sum(_is(patch, "half-square-triangle", small) for patch in unit) == 2


def _is(patch: UnitPatch, method: str, cut: float) -> bool:
    return patch.piece.method == method and not patch.piece.pose and abs(patch.piece.cut[0].exact - cut) <= _SAME


def _is_square(units: EqualUnits) -> bool:
    return units.size is not None and units.size[1] - units.size[0] <= _SAME


def _width(units: EqualUnits) -> float:
    assert units.size is not None
    return units.size[1]


def _round_the_middle(unit: tuple[UnitPatch, ...]) -> list[str]:
    """Return the fabrics of triangles in the order in which they go round their middle."""
    centres = [_centre(patch) for patch in unit]
    x, y = (sum(values) / len(values) for values in zip(*centres, strict=True))
    headings = [math.atan2(centre[1] - y, centre[0] - x) for centre in centres]
    order = sorted(range(len(unit)), key=lambda index: headings[index])
    return [unit[index].fabric for index in order]


def _centre(patch: UnitPatch) -> tuple[float, float]:
    corners = patch.outline.corners
    return sum(p.x for p in corners) / len(corners), sum(p.y for p in corners) / len(corners)
