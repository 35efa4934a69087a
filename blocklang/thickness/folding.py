"""Sewing a block on paper: join after join, what lies beyond the seam is folded to the side it is pressed to."""

from collections.abc import Iterator, Sequence
from itertools import zip_longest
from typing import TYPE_CHECKING

from blocklang.assembly.values import Assembly
from blocklang.thickness.cloth import Piece, bounds_of
from blocklang.thickness.crease_ends import sides_of
from blocklang.thickness.creases import Crease, creases_of, halves_left_open
from blocklang.thickness.folds import fold_back
from blocklang.thickness.lying import Lies
from blocklang.thickness.taking import Side, take
from blocklang.thickness.wedges import patches_round
from blocklang.thickness.work import Members, Work

if TYPE_CHECKING:
    from shapely import Polygon

#: No join lays more pieces than this: each join has so many places in the order of laying to itself.
PLACES = 1 << 32


def fold_all(assembly: Assembly, lies: Lies, allowances: "Sequence[Sequence[Polygon]]") -> list[Piece]:
    """Return the allowances of all patches, in pieces, as they lie when the block is sewn and pressed; front first.

    `allowances` are those of each patch as it is cut. Pieces that no seam has caught keep the number of their patch
    as order.
    """
    work = Work(assembly.graph, _as_cut(allowances), patches_round(assembly.graph))
    open_at = halves_left_open(assembly)
    for joins in _side_by_side(assembly):
        creases = [creases_of(assembly, assembly.joins[join], lies, open_at) for join in joins]
        laid = dict.fromkeys(joins, len(allowances))
        for together in zip_longest(*creases):
            _fold(work, assembly, [(j, c) for j, c in zip(joins, together, strict=True) if c is not None], laid)
    return sorted((piece for group in work.pieces for piece in group), key=lambda piece: piece.order)


def _as_cut(allowances: "Sequence[Sequence[Polygon]]") -> list[list[Piece]]:
    bounds = iter(bounds_of([part for parts in allowances for part in parts]))
    return [
        [Piece(patch, part, False, patch, next(bounds)) for part in parts] for patch, parts in enumerate(allowances)
    ]


def _side_by_side(assembly: Assembly) -> list[list[int]]:
    """Return the joins in groups that no two of which touch the same patch, in an order in which they can be sewn."""
    level = [0] * len(assembly.graph.sides)
    groups: list[list[int]] = []
    for number, join in enumerate(assembly.joins):
        patches = [patch for unit in join.units for patch in assembly.unit_patches[unit]]
        here = max((level[patch] for patch in patches), default=0)
        for patch in patches:
            level[patch] = here + 1
        groups.extend([] for _ in range(here + 1 - len(groups)))
        groups[here].append(number)
    return groups


def _fold(work: Work, assembly: Assembly, creases: Sequence[tuple[int, Crease]], laid: dict[int, int]) -> None:
    """Fold what lies beyond creases: the side it is pressed to is folded back, the other one stays and lies under."""
    sides = [side for join, crease in creases for side in _sides(work, assembly, join, crease)]
    flaps = take(work, sides)
    lying: list[tuple[int, Crease | None, Piece]] = []
    for place, (join, crease) in enumerate(creases):
        both = flaps[2 * place : 2 * place + 2]
        back = [crease.toward_left is not False, crease.toward_left is not True]
        for pieces in (f for f, b in zip(both, back, strict=True) if b):
            lying += [(join, crease, piece) for piece in sorted(pieces, key=lambda piece: -piece.order)]
        for pieces in (f for f, b in zip(both, back, strict=True) if not b):
            lying += [(join, None, piece) for piece in sorted(pieces, key=lambda piece: piece.order)]
    for join, piece in _turned_back(lying):
        order = join * PLACES + laid[join]
        work.pieces[piece.patch].append(Piece(piece.patch, piece.cloth, piece.turned, order, piece.bounds))
        laid[join] += 1


def _turned_back(lying: Sequence[tuple[int, Crease | None, Piece]]) -> Iterator[tuple[int, Piece]]:
    """Yield pieces with their joins, those that come with a crease folded back over it."""
    over = [(crease.edge, piece.cloth) for _, crease, piece in lying if crease is not None]
    cloths = fold_back([edge for edge, _ in over], [cloth for _, cloth in over])
    folded = iter(zip(cloths, bounds_of(cloths), strict=True))
    for join, crease, piece in lying:
        if crease is None:
            yield join, piece
        else:
            cloth, bounds = next(folded)
            yield join, Piece(piece.patch, cloth, not piece.turned, 0, bounds)


def _sides(work: Work, assembly: Assembly, join: int, crease: Crease) -> tuple[Side, Side]:
    left, right = _units(work, assembly, join, crease)
    return Side(crease, left), Side(crease.mirrored(), right - left)


def _units(work: Work, assembly: Assembly, join: int, crease: Crease) -> tuple[Members, Members]:
    units = [frozenset(assembly.unit_patches[unit]) for unit in assembly.joins[join].units]
    return (units[0], units[1]) if len(units) == 2 else sides_of(work, crease)
