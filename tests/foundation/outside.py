"""What a section is, told again with shapely and nothing of the room under test; and the best division by brute force."""

from itertools import combinations

from shapely.affinity import scale
from shapely.geometry import LineString, MultiPoint, Polygon
from shapely.ops import linemerge, unary_union

from blocklang.block import Block
from blocklang.geometry import TICKS_PER_INCH

NEAR = 2e-4  # inches
_BEYOND = 0.02
#: At a sharp corner the overlap of two swollen shapes runs a little way round it (inches).
_LOOSE = 0.003
#: No seam is as short as this (inches): corners that touch in a point share less.
_SHORT = 0.015


def shapes_of(block: Block) -> list[Polygon]:
    """Return the patches of a block in inches, arcs as chords."""
    return [
        Polygon([(x / TICKS_PER_INCH, y / TICKS_PER_INCH) for x, y in patch.outline.chords()])
        for patch in block.patches
    ]


def together(shapes: list[Polygon]) -> Polygon:
    """Return the union of shapes that share edges, or None when it is not one plain polygon."""
    union = unary_union([shape.buffer(NEAR / 4, join_style="mitre") for shape in shapes])
    if union.geom_type != "Polygon" or any(Polygon(hole).area > NEAR for hole in union.interiors):
        return None
    # A union that hangs together by a point alone falls apart when it is drawn in a little.
    return union if union.buffer(-NEAR).geom_type == "Polygon" else None


def seam_between(patch: Polygon, rest: Polygon) -> LineString | None:
    """Return the seam that sews a patch to a section: one straight line right through, or None."""
    shared = patch.boundary.intersection(rest.buffer(NEAR))
    pieces = [shared] if shared.geom_type == "LineString" else [g for g in getattr(shared, "geoms", []) if g.length > 0]
    pieces = [g for g in pieces if g.length > _SHORT]
    merged = linemerge(pieces) if len(pieces) > 1 else (pieces[0] if pieces else LineString())
    if merged.geom_type != "LineString" or merged.length < _SHORT or merged.is_ring:
        return None
    first, last = merged.coords[0], merged.coords[-1]
    straight = LineString([first, last])
    if merged.hausdorff_distance(straight) > _LOOSE:
        return None
    return straight if _runs_through(straight, patch, rest) else None


def _runs_through(seam: LineString, patch: Polygon, rest: Polygon) -> bool:
    """Both sides of the line are kept apart by it, and just past its ends it has left both."""
    longer = scale(seam, 1000, 1000)
    (ax, ay), (bx, by) = longer.coords

    def side(x: float, y: float) -> float:
        return ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / longer.length

    own = [side(x, y) for x, y in patch.exterior.coords]
    other = [side(x, y) for x, y in rest.exterior.coords]
    sign = 1 if max(own) > -min(own) else -1
    if min(sign * value for value in own) < -10 * NEAR or max(sign * value for value in other) > 10 * NEAR:
        return False
    grown = scale(seam, 1 + 2 * _BEYOND / seam.length, 1 + 2 * _BEYOND / seam.length)
    ends = MultiPoint([grown.coords[0], grown.coords[-1]])
    return all(shape.distance(point) > 3 * NEAR for shape in (patch, rest) for point in ends.geoms)


def replay(shapes: list[Polygon], order: tuple[int, ...]) -> str:
    """Sew a section patch by patch; return what is wrong, "" when nothing is."""
    for count in range(1, len(order)):
        rest = together([shapes[p] for p in order[:count]])
        if rest is None:
            return f"the first {count} of {order} are no polygon"
        if seam_between(shapes[order[count]], rest) is None:
            return f"patch {order[count]} is not added along one straight line: {order}"
    return "" if together([shapes[p] for p in order]) is not None else f"{order} is no polygon"


class Brute:
    """Tries everything: every order of every set, every division into sets."""

    def __init__(self, block: Block) -> None:
        """Lay out the patches."""
        self.shapes = shapes_of(block)
        self._known: dict[frozenset[int], bool] = {}

    def is_section(self, members: frozenset[int]) -> bool:
        """Tell whether some order of all orders sews a set."""
        if len(members) == 1:
            return True
        if members not in self._known:
            self._known[members] = any(self._comes_last(patch, members - {patch}) for patch in sorted(members))
        return self._known[members]

    def _comes_last(self, patch: int, rest: frozenset[int]) -> bool:
        if not self.is_section(rest):
            return False
        union = together([self.shapes[p] for p in rest])
        return union is not None and seam_between(self.shapes[patch], union) is not None

    def fewest(self) -> int:
        """Return the least number of sections of all divisions."""
        count = len(self.shapes)
        best: dict[frozenset[int], int] = {frozenset(): 0}

        def least(left: frozenset[int]) -> int:
            if left not in best:
                first, *others = sorted(left)
                sets = (
                    frozenset((first, *more)) for size in range(len(others) + 1) for more in combinations(others, size)
                )
                best[left] = 1 + min(least(left - members) for members in sets if self.is_section(members))
            return best[left]

        return least(frozenset(range(count)))
