"""The small units of a sewing order that are equal, with how their patches are cut."""

from collections.abc import Sequence
from dataclasses import replace

from blocklang.assembly.values import Assembly
from blocklang.cutting.claims import CuttingMethod
from blocklang.cutting.offers import EqualUnits, UnitPatch
from blocklang.cutting.rectangles import rectangle_of
from blocklang.cutting.values import Cutting, Piece
from blocklang.geometry import TICKS_PER_INCH, Outline

#: Units of more patches are not made several at once by anybody.
_MOST_PATCHES = 16


def with_offers(cutting: Cutting, assembly: Assembly, methods: Sequence[CuttingMethod]) -> Cutting:
    """Return a cutting list with what the methods offer for the units that the sewing order makes."""
    asked = sorted((method for method in methods), key=lambda method: (-method.priority, method.name))
    offers = (method.offers(units) for units in equal_units(assembly, cutting) for method in asked)
    return replace(cutting, offers=tuple(offer for offer in offers if offer is not None))


def equal_units(assembly: Assembly, cutting: Cutting) -> tuple[EqualUnits, ...]:
    """Return the small units that the order makes, equal ones together, those made first in front."""
    pieces = {patch: piece for piece in cutting.pieces for patch in piece.patches if piece.strip_set is None}
    gathered: dict[int, dict[tuple[int, ...], None]] = {}
    for patches, kind in zip(assembly.unit_patches, assembly.unit_class, strict=True):
        if 1 < len(patches) <= _MOST_PATCHES and all(patch in pieces for patch in patches):
            gathered.setdefault(kind, {})[patches] = None
    return tuple(_equal(assembly, cutting, tuple(units), pieces) for units in gathered.values())


def _equal(
    assembly: Assembly, cutting: Cutting, units: Sequence[tuple[int, ...]], pieces: dict[int, Piece]
) -> EqualUnits:
    block = assembly.graph.block

    def shown(patch: int) -> UnitPatch:
        return UnitPatch(patch, block.patches[patch].fabric, block.patches[patch].outline, pieces[patch])

    return EqualUnits(
        tuple(tuple(map(shown, patches)) for patches in units),
        len(units) * cutting.options.copies,
        _size([block.patches[patch].outline for patch in units[0]]),
        cutting.seam_allowance,
        cutting.options,
        block.unit,
    )


def _size(outlines: Sequence[Outline]) -> tuple[float, float] | None:
    """Return the size of the rectangle that outlines fill together, in inches, the shorter side first."""
    around = rectangle_of(outlines)
    if around is None:
        return None
    a, b, c, d = (edge.length() / TICKS_PER_INCH for edge in around.edges)
    return min((a + c) / 2, (b + d) / 2), max((a + c) / 2, (b + d) / 2)
