"""From the cutting list to templates: one for each shape, with its dots, its grain and its trimmed tips."""

import math
from collections.abc import Hashable, Sequence
from dataclasses import dataclass

from blocklang.cutting.finished import finished_patches
from blocklang.cutting.grain import edges_on_grain
from blocklang.cutting.kites import kite
from blocklang.cutting.match_points import common_points, match_points
from blocklang.cutting.offsetting import offset
from blocklang.cutting.one_way import UPRIGHT
from blocklang.cutting.pieces import raw_distances
from blocklang.cutting.sides import right_angle, sides_of
from blocklang.cutting.stripe_lines import stripe_lines
from blocklang.cutting.template_laying import SAME_HEADING, Table, common_limits, is_reversed, lay
from blocklang.cutting.template_values import Template, TemplatePlace, TemplateUse
from blocklang.cutting.tips import tip_limits
from blocklang.cutting.values import Cutting, Lay, Piece
from blocklang.geometry import TICKS_PER_INCH
from blocklang.geometry.congruence import Interner
from blocklang.graph import PatchGraph
from blocklang.wording import joined


@dataclass(frozen=True, slots=True)
class _Group:
    """Lines of the cutting list with one shape, and the first patch of it with the heading of its grain."""

    first: int
    heading: float
    pieces: list[int]


def templates_of(graph: PatchGraph, cutting: Cutting) -> tuple[Template, ...]:
    """Return the templates of a block, in the order of its cutting list.

    Patches of one shape share a template, whatever their fabric and whether or not they are mirror images, unless their
    grain or their stripes run another way. Counts are for all copies of the cutting list.
    """
    table = _table(graph, cutting)
    interner = Interner()
    groups: dict[Hashable, _Group] = {}
    for index, piece in enumerate(cutting.pieces):
        first = piece.patches[0]
        heading = _grain(table, piece)
        shape = interner.shape(table.patches[first].outline, _labels(table, first, heading))
        key = shape.either_way_up, _stripes(graph, first), index if piece.pose == UPRIGHT else None
        groups.setdefault(key, _Group(first, heading, [])).pieces.append(index)
    return tuple(_template(table, cutting, group) for group in groups.values())


def _table(graph: PatchGraph, cutting: Cutting) -> Table:
    patches = finished_patches(graph)
    interner = Interner()
    shapes = tuple(interner.shape(patch.outline, ()) for patch in patches)
    distances = raw_distances(patches, graph, float(cutting.options.oversize) * TICKS_PER_INCH)
    limits = tuple(tip_limits(graph, patches, patch, distances) for patch in range(len(patches)))
    return Table(graph, patches, edges_on_grain(graph, patches, shapes), distances, limits)


def _stripes(graph: PatchGraph, patch: int) -> tuple[str, ...]:
    stripes = graph.block.patches[patch].stripes
    return stripes.fabrics if stripes else ()


def _grain(table: Table, piece: Piece) -> float:
    """Return the heading of the grain: along a stripe, a short side of half a square, else the longest outer edge."""
    first = piece.patches[0]
    stripes = table.graph.block.patches[first].stripes
    if stripes is not None:
        return math.atan2(stripes.end.y - stripes.start.y, stripes.end.x - stripes.start.x)
    if piece.pose == UPRIGHT:
        return math.pi / 2
    outline = table.patches[first].outline
    sides = sides_of(outline, 3)
    corner = right_angle(sides) if sides and piece.yields == 2 else None
    if corner is not None:
        return outline.edges[corner].departs()
    if piece.method == "kite" and (claim := kite(outline, 0.0, ())) is not None:
        return outline.edges[claim.along or 0].departs() + claim.lean
    outer = [outline.edges[i] for i in table.grain[first] if outline.edges[i].arc is None]
    straight = outer or [edge for edge in outline.edges if edge.arc is None]
    return max(straight, key=lambda edge: round(edge.length(), -2)).departs() if straight else 0.0


def _labels(table: Table, patch: int, heading: float) -> tuple[Hashable, ...]:
    """Return for each edge how far out its raw edge lies, and whether it lies along the threads."""
    edges = table.patches[patch].outline.edges
    return tuple(
        (round(by), edge.arc is None and abs(math.remainder(edge.departs() - heading, math.pi / 2)) <= SAME_HEADING)
        for edge, by in zip(edges, table.distances[patch], strict=True)
    )


def _template(table: Table, cutting: Cutting, group: _Group) -> Template:
    pieces = [cutting.pieces[index] for index in group.pieces]
    laid = [tuple(lay(table, group.first, group.heading, patch) for patch in piece.patches) for piece in pieces]
    places = tuple(place for members in laid for place in members)
    finished = table.patches[group.first].outline
    cut = offset(finished, table.distances[group.first], common_limits(table, group.first, places)).outline
    points = [tuple(map(place.motion.back, match_points(table.graph, place.patch))) for place in places]
    stripes = table.graph.block.patches[group.first].stripes
    return Template(
        name=joined(dict.fromkeys(piece.name for piece in pieces), ", "),
        finished=finished,
        cut=cut,
        grain=group.heading,
        dots=common_points(points),
        stripes=stripe_lines(finished, cut, stripes) if stripes else (),
        uses=tuple(
            _use(table, group.first, index, cutting, members) for index, members in zip(group.pieces, laid, strict=True)
        ),
        places=places,
        needed=any(piece.lay is Lay.TEMPLATE for piece in pieces),
    )


def _use(table: Table, first: int, index: int, cutting: Cutting, members: Sequence[TemplatePlace]) -> TemplateUse:
    copies = cutting.options.copies
    turned_over = sum(is_reversed(table, first, place) for place in members)
    return TemplateUse(index, len(members) * copies, turned_over * copies)
