"""Laying out what is cut: every piece for itself on a mat, fabric by fabric, or all pieces as they lie in the block."""

import math
from collections.abc import Iterator
from dataclasses import dataclass

from blocklang.cutting import Template, TemplateUse, templates_of
from blocklang.geometry import Edge
from blocklang.hooks import CannotMakeError
from blocklang.plan import SewingPlan
from blocklang_cutting_outlines.rings import Lay, Ring, Room, in_inches, ring_of, room_in

#: Pieces of a strip set are cut from sewn cloth, so they have a layer of their own.
STRIP_SET = "strip-set"
#: Room between pieces, and round all of them; in inches.
GAP, BETWEEN_FABRICS = 0.25, 1.0
#: Pieces in one file; programs take long to open one with more.
MOST_PIECES = 5000


@dataclass(frozen=True, slots=True)
class Cloth:
    """One piece: what it is called, its fabric, where it is cut and where it is sewn, and where its name has how much room."""

    name: str
    fabric: str
    cut: Ring
    sewn: Ring
    middle: tuple[float, float]
    room: float

    def moved(self, x: float, y: float) -> "Cloth":
        """Return the piece so many inches further to the right and up."""
        middle = self.middle[0] + x, self.middle[1] + y
        return Cloth(self.name, self.fabric, self.cut.moved(x, y), self.sewn.moved(x, y), middle, self.room)


@dataclass(frozen=True, slots=True)
class Drawn:
    """All that is drawn: pieces, and the seams of the block where they are drawn as they lie in it (in ticks)."""

    pieces: tuple[Cloth, ...]
    seams: tuple[Edge, ...] = ()


def lay_in_block(plan: SewingPlan, fabric: str = "") -> Drawn:
    """Return one piece for each patch as it lies in the block, and every seam."""
    pieces: dict[int, Cloth] = {}
    for template in templates_of(plan.graph, plan.cutting):
        room = room_in(template.finished)
        for place in template.places:
            motion, patch = place.motion, plan.block.patches[place.patch]
            own = STRIP_SET if patch.stripes is not None else patch.fabric
            label = plan.labels[place.patch]
            pieces[place.patch] = _cloth(template, room, motion.lay, motion.mirrored, label, own)
    chosen = tuple(pieces[patch] for patch in sorted(pieces) if not fabric or pieces[patch].fabric == fabric)
    return Drawn(chosen, tuple(seam.edge for seam in plan.graph.seams))


def lay_apart(plan: SewingPlan, fabric: str, width: float) -> Drawn:
    """Return every piece that is cut for all copies, row by row on a mat so wide, each fabric above the one before."""
    pieces = tuple(_pieces(plan, fabric))
    names = [cloth.id for cloth in plan.block.fabrics] + [STRIP_SET]
    laid: list[Cloth] = []
    floor = GAP
    for name in names:
        rows = tuple(_in_rows(sorted((piece for piece in pieces if piece.fabric == name), key=_height), width, floor))
        laid += rows
        floor = max((piece.cut.bounds[3] + BETWEEN_FABRICS for piece in rows), default=floor)
    return Drawn(tuple(laid))


def _pieces(plan: SewingPlan, fabric: str) -> Iterator[Cloth]:
    templates = templates_of(plan.graph, plan.cutting)
    chosen = [(use.count, _cut_from(plan, use)) for template in templates for use in template.uses]
    count = sum(count for count, own in chosen if fabric in ("", own))
    if count > MOST_PIECES:
        raise CannotMakeError(
            f"A file has at most {MOST_PIECES:,} pieces, and this would have {count:,}: ask for fewer copies."
        )
    for template in templates:
        room = room_in(template.finished)
        turn = math.pi / 2 - template.grain  # upright, as cloth lies on a mat with its selvage at the side
        for use in template.uses:
            name, own = plan.cutting.pieces[use.piece].name, _cut_from(plan, use)
            for number in range(use.count if fabric in ("", own) else 0):
                mirrored = number < use.reversed
                yield _cloth(template, room, _turned(turn, mirrored), mirrored, name, own)


def _cut_from(plan: SewingPlan, use: TemplateUse) -> str:
    piece = plan.cutting.pieces[use.piece]
    return STRIP_SET if piece.strip_set is not None else piece.fabric


def _cloth(template: Template, room: Room, lay: Lay, mirrored: bool, name: str, fabric: str) -> Cloth:
    cut, sewn = ring_of(template.cut, lay, mirrored), ring_of(template.finished, lay, mirrored)
    return Cloth(name, fabric, cut, sewn, in_inches(lay(room.middle)), room.width)


def _turned(turn: float, mirrored: bool) -> Lay:
    cosine, sine = math.cos(turn), math.sin(turn)

    def lay(place: tuple[float, float]) -> tuple[float, float]:
        x, y = place[0] * cosine - place[1] * sine, place[0] * sine + place[1] * cosine
        return (-x if mirrored else x), y

    return lay


def _height(piece: Cloth) -> float:
    """Sort high pieces to the front, so that a row holds pieces of about one height."""
    return round(piece.cut.bounds[1] - piece.cut.bounds[3], 3)


def _in_rows(pieces: list[Cloth], width: float, floor: float) -> Iterator[Cloth]:
    """Lay pieces side by side from the left, and begin a row above the highest of them when the mat is full."""
    x, top = 0.0, floor
    for piece in pieces:
        left, low, right, high = piece.cut.bounds
        if x > 0 and x + right - left > width:
            x, floor = 0.0, top
        yield piece.moved(x - left + GAP, floor - low)
        x += right - left + GAP
        top = max(top, floor + high - low + GAP)
