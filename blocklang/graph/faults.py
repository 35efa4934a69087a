"""Everything that keeps patches from tiling their block, told where it is and what to do about it."""

from collections.abc import Iterator

from blocklang.block import Block
from blocklang.diagnostics import Diagnostic, Related, Severity
from blocklang.geometry import Point
from blocklang.geometry.points import distance
from blocklang.graph.matching import MOST_NEAR_MISSES, Matched, Side
from blocklang.graph.places import Places, beside, holds, places_of, say_length, say_place
from blocklang.graph.values import OUTSIDE

#: How many loose edges are looked at; a slip in one corner loosens several, and the first few tell the story.
_LOOKED_AT = 60
_TOLD = MOST_NEAR_MISSES


def faults_of(block: Block, matched: Matched) -> tuple[Diagnostic, ...]:
    """Return what is wrong with the tiling, most telling first; empty when the patches tile the outline exactly."""
    if not block.patches:
        return (_no_patches(block),)
    found = [*_pinched(block), *_slivers(block, matched), *_surrounding(block, matched)]
    if not found and matched.loose:
        found = list(_loose(block, matched))
    return tuple(found[:_TOLD])


def _error(
    block: Block, patch: int, code: str, title: str, found: str, advice: str, other: int = OUTSIDE
) -> Diagnostic:
    span = block.patches[patch].span if patch != OUTSIDE else block.span
    second = block.patches[other] if other != OUTSIDE else None
    related = (Related(second.span, f"{second.id} is drawn here"),) if second and second.span else ()
    return Diagnostic(
        code, Severity.ERROR, title, found, advice, span, related if second and second.span != span else ()
    )


def _no_patches(block: Block) -> Diagnostic:
    found = f"{block.name} has an outline but nothing to sew in it."
    return _error(
        block, OUTSIDE, "no-patches", "The block has no patches", found, "Add rows, patches, cuts or a placed block."
    )


def _pinched(block: Block) -> Iterator[Diagnostic]:
    for index, patch in enumerate(block.patches):
        if len(set(patch.outline.corners)) < len(patch.outline.corners):
            found = f"The outline of {patch.id} comes to one corner twice, so that it touches itself."
            yield _error(
                block, index, "patch-touches-itself", "A patch touches itself", found, "Draw it as two patches."
            )


def _slivers(block: Block, matched: Matched) -> Iterator[Diagnostic]:
    for a, b in matched.near_misses:
        first, second = matched.corners[a], matched.corners[b]
        owners = [_owner(block, point) for point in (first, second)]
        apart = say_length(distance(first, second), block.unit)
        names = " and ".join(
            _corner_name(block, owner, point) for owner, point in zip(owners, (first, second), strict=True)
        )
        found = f"Two corners are only {apart} apart: {names}."
        advice = "Draw both through one named point, or move them at least 1/32 in apart."
        yield _error(block, owners[1], "sliver", "Two corners nearly meet", found, advice, owners[0])


def _owner(block: Block, point: Point) -> int:
    near = ((min(distance(c, point) for c in p.outline.corners), i) for i, p in enumerate(block.patches))
    off, index = min(near)
    on_outline = min(distance(c, point) for c in block.outline.corners)
    return OUTSIDE if on_outline < off else index


def _corner_name(block: Block, owner: int, point: Point) -> str:
    of = "the block" if owner == OUTSIDE else block.patches[owner].id
    return f"one of {of} ({say_place(point, block.unit)})"


def _surrounding(block: Block, matched: Matched) -> Iterator[Diagnostic]:
    own = {s.forward.patch for s in matched.seams if s.forward.patch == s.backward.patch != OUTSIDE}
    for index in sorted(own):
        yield _surrounds(
            block, index, f"{block.patches[index].id} is drawn right round something, back to its own edge."
        )


def _surrounds(block: Block, index: int, found: str, other: int = OUTSIDE) -> Diagnostic:
    advice = "Nobody can piece that: cut the outer patch in two with a seam, or draw it as a frame of strips."
    return _error(block, index, "patch-surrounds", "A patch surrounds another", found, advice, other)


def _loose(block: Block, matched: Matched) -> Iterator[Diagnostic]:
    places = places_of(block)
    told: set[tuple[str, int, int]] = set()
    place_of = _places_of(matched.loose)
    for side in _telling_first(matched.loose)[:_LOOKED_AT]:
        fault = _fault_at(block, places, side)
        around = (place_of[side.start], OUTSIDE)
        key = (fault[0], *(around if fault[0] == "gap" else (min(fault[1:3]), max(fault[1:3]))))
        if key not in told:
            told.add(key)
            yield _tell(block, side, *fault)
    if not told:
        yield _tell(block, matched.loose[0], "gap", matched.loose[0].patch, OUTSIDE)


def _places_of(loose: tuple[Side, ...]) -> dict[int, int]:
    """Return, for each corner of loose edges, the lowest corner that they connect it to: one gap is told once."""
    place: dict[int, int] = {}

    def root(corner: int) -> int:
        while place.setdefault(corner, corner) != corner:
            corner = place[corner]
        return corner

    for side in loose:
        a, b = sorted((root(side.start), root(side.end)))
        place[b] = a
    return {corner: root(corner) for corner in tuple(place)}


def _telling_first(loose: tuple[Side, ...]) -> list[Side]:
    """Patches in the order of the file, their longest edges first; the outline's own pieces last."""
    return sorted(loose, key=lambda s: (s.patch == OUTSIDE, s.patch, -s.edge.length(), s.edge.start))


def _fault_at(block: Block, places: Places, side: Side) -> tuple[str, int, int]:
    """Return what is wrong along a loose edge: a code and up to two patches."""
    on_left, on_right = beside(side.edge, True), beside(side.edge, False)
    if side.patch == OUTSIDE:
        within = places.patches_at(on_right)
        return ("gap", OUTSIDE, OUTSIDE) if not within else ("outside", within[0], OUTSIDE)
    if not places.is_inside(on_left):
        return "outside", side.patch, OUTSIDE
    others = [patch for patch in places.patches_at(on_left) if patch != side.patch]
    others += [patch for patch in places.patches_at(on_right) if patch != side.patch and not others]
    if len(places.patches_at(on_left)) > 1:
        return _overlap(block, side.patch, others[0])
    if not places.patches_at(on_right) and places.is_inside(on_right):
        return "gap", side.patch, OUTSIDE
    if len(places.patches_at(on_right)) > 1:
        return _overlap(block, *places.patches_at(on_right)[:2])
    return "unmatched", side.patch, others[0] if others else OUTSIDE


def _overlap(block: Block, a: int, b: int) -> tuple[str, int, int]:
    for outer, inner in ((a, b), (b, a)):
        if holds(block.patches[outer].outline, block.patches[inner].outline):
            return "surrounds", outer, inner
    return "overlap", a, b


def _tell(block: Block, side: Side, code: str, a: int, b: int) -> Diagnostic:
    where = say_place(side.edge.middle(), block.unit)
    name = "the outline" if a == OUTSIDE else block.patches[a].id
    other = "its neighbour" if b == OUTSIDE else block.patches[b].id
    match code:
        case "surrounds":
            return _surrounds(block, a, f"{other} lies wholly inside {name}.", b)
        case "overlap":
            found = f"{name} and {other} cover the same place, near {where}."
            return _error(
                block,
                b,
                "overlap",
                "Two patches overlap",
                found,
                "Move one of them, or let both end at the same line.",
                a,
            )
        case "outside":
            found = f"{name} reaches over the edge of the block, near {where}."
            return _error(
                block,
                a,
                "outside-block",
                "A patch lies outside the block",
                found,
                "Keep it within the outline, or make the block larger.",
            )
        case "gap":
            found = f"Nothing covers the place beside {name}, near {where}."
            return _error(
                block,
                a,
                "gap",
                "There is a gap between patches",
                found,
                "Add the missing patch, or draw its neighbours through the same points.",
            )
        case _:
            found = f"The edge of {name} and the edge of {other} do not follow the same line, near {where}."
            return _error(
                block,
                a,
                "edges-differ",
                "Two edges do not meet",
                found,
                "Draw both through the same points, with the same arc.",
                b,
            )
