"""Blocks in which a few patches meet at one point, their seams pressed as a test says, and layers counted by hand.

The counting here is the tests' own: a place lies under a layer when a ray from it crosses the layer's edges oddly.
"""

import math
from collections.abc import Iterable, Mapping, Sequence

from blocklang.assembly import Assembly
from blocklang.block import Block
from blocklang.geometry import TICKS_PER_INCH
from blocklang.thickness import Folded, Lies, fold, measure
from tests.support import blocks
from tests.support.route import assembly_of

SIZE = 12.0
MIDDLE = (SIZE / 2, SIZE / 2)
OPEN = "open"
Presses = Mapping[str, str]


def wedges(names: str, headings: Sequence[float]) -> Block:
    """Return a square of patches round its middle; patch i lies counterclockwise from heading i (degrees)."""
    patches = []
    for place, name in enumerate(names):
        start, end = headings[place], headings[(place + 1) % len(headings)]
        end += 360 if end <= start else 0
        corners = [each for each in (45, 135, 225, 315, 405, 495, 585, 675) if start < each < end]
        ring = [MIDDLE, _on_edge(start), *(_on_edge(each) for each in corners), _on_edge(end)]
        patches.append(blocks.patch(name, ("fog", "deep", "coral")[place % 3], ring))
    return blocks.block(patches, blocks.square(SIZE))


def _on_edge(heading: float) -> tuple[float, float]:
    x, y = math.cos(math.radians(heading)), math.sin(math.radians(heading))
    far = SIZE / 2 / max(abs(x), abs(y))
    return round(MIDDLE[0] + x * far, 9), round(MIDDLE[1] + y * far, 9)


def lies(assembly: Assembly, presses: Presses, spun: Iterable[tuple[float, float]] = ()) -> Lies:
    """Return directions from words such as {"A B": "A", "B C": "open"}; spun junctions by their place in inches."""
    graph = assembly.graph
    ids = [patch.id for patch in graph.block.patches]
    toward: dict[int, int | None] = {}
    for seam in graph.seams:
        one, other = (ids[side] for side in seam.patches)
        said = presses.get(f"{one} {other}") or presses[f"{other} {one}"]
        toward[seam.index] = None if said == OPEN else ids.index(said)
    return Lies(toward, frozenset(junction_at(assembly, place) for place in spun))


def junction_at(assembly: Assembly, place: tuple[float, float]) -> int:
    """Return the junction at a place in inches."""
    x, y = (each * TICKS_PER_INCH for each in place)
    return next(j.index for j in assembly.graph.junctions if math.dist(j.at, (x, y)) < 64)


def order_of(assembly: Assembly) -> list[str]:
    """Return the joins in order, as the letters of the patches on either side: "AB+CD"."""
    ids = [patch.id for patch in assembly.graph.block.patches]
    return ["+".join("".join(ids[p] for p in assembly.unit_patches[unit]) for unit in j.units) for j in assembly.joins]


def layers_under(folded: Folded, place: tuple[float, float]) -> int:
    """Count the layers at a place in inches."""
    x, y = (each * TICKS_PER_INCH for each in place)
    return sum(sum(_crossings(ring, x, y) for ring in layer.rings) % 2 for layer in folded.layers)


def _crossings(ring: Sequence[tuple[float, float]], x: float, y: float) -> int:
    pairs = zip(ring, (*ring[1:], ring[0]), strict=True)
    return sum((ay > y) != (by > y) and x < ax + (y - ay) * (bx - ax) / (by - ay) for (ax, ay), (bx, by) in pairs)


class Counted:
    """A block folded as a test says, ready to be compared with a count by hand."""

    def __init__(self, block: Block, presses: Presses, spun: Iterable[tuple[float, float]] = ()) -> None:
        """Sew and press it."""
        self.assembly = assembly_of(block)
        self.lies = lies(self.assembly, presses, spun)
        self.folded = fold(self.assembly, self.lies)
        self.thickness = measure(self.assembly.graph, self.folded)

    def pile(self, place: tuple[float, float] = MIDDLE) -> int:
        """Return the measured pile at a junction."""
        return self.thickness.piles[junction_at(self.assembly, place)].layers

    def round(self, headings: Iterable[float], at: tuple[float, float] = MIDDLE, away: float = 0.04) -> list[int]:
        """Count the layers a little way off a junction, in some directions (degrees)."""
        return [
            layers_under(
                self.folded,
                (at[0] + away * math.cos(math.radians(each)), at[1] + away * math.sin(math.radians(each))),
            )
            for each in headings
        ]
