"""Shapes for the cutting tests: outlines in inches, single and grouped patches, and shapely's view of them."""

import math
from fractions import Fraction

from shapely.geometry import Polygon

from blocklang.block import Block, LengthUnit, Patch
from blocklang.cutting.methods import METHODS, ask, in_order
from blocklang.geometry import TICKS_PER_INCH, Outline, from_inches
from blocklang.graph import build_graph
from tests.support import blocks

QUARTER = Fraction(1, 4)
#: A quarter inch, three eighths, and seven millimetres.
ALLOWANCES = (QUARTER, Fraction(3, 8), Fraction(70, 254))
#: Each end of a length is rounded to a tick, and a closed form multiplies that by a few.
LATTICE = 8 / TICKS_PER_INCH

GOOSE = {
    "goose": [(0, 0), (4, 0), (2, 2)],
    "wing.1": [(0, 0), (2, 2), (0, 2)],
    "wing.2": [(4, 0), (4, 2), (2, 2)],
}


def outline(corners):
    return Outline.through(from_inches(float(x), float(y)) for x, y in corners)


def turned(corners, degrees, dx=0.0, dy=0.0):
    t = math.radians(degrees)
    return [(x * math.cos(t) - y * math.sin(t) + dx, x * math.sin(t) + y * math.cos(t) + dy) for x, y in corners]


def mirrored(corners):
    return [(-x, y) for x, y in corners]


def claim(corners, allowance=QUARTER, outside=()):
    """Return the name and the claim of the built-in method that cuts a patch."""
    answer = ask(in_order(METHODS), outline(corners), float(allowance), tuple(outside))
    assert answer is not None
    return answer


def raw(corners, allowance):
    """Return what shapely makes of a patch with its seam allowance, corners kept sharp."""
    return Polygon([(float(x), float(y)) for x, y in corners]).buffer(float(allowance), join_style=2, mitre_limit=100)


def polygon(ring: Outline) -> Polygon:
    """Return an outline as shapely sees it, in inches."""
    return Polygon([(p.x / TICKS_PER_INCH, p.y / TICKS_PER_INCH) for p in ring.chords()])


def graph(block: Block):
    graphed = build_graph(block)
    assert graphed.graph is not None, graphed.diagnostics
    return graphed.graph


def block_of(patches: dict, size, fabric="deep", allowance=QUARTER, unit=LengthUnit.INCH) -> Block:
    """Return a block of patches by name; a fabric may be given in front of the name ("fog:corner.1")."""
    drawn = []
    for key, corners in patches.items():
        cloth, _, name = key.rpartition(":")
        drawn.append(blocks.patch(name, cloth or fabric, corners))
    ring = outline(blocks.square(*size))
    ticks = round(allowance * TICKS_PER_INCH)
    return Block("Test", unit, ring, ticks, blocks.FABRICS, tuple(drawn))


def with_patches(block: Block, patches) -> Block:
    return Block(block.name, block.unit, block.outline, block.seam_allowance, block.fabrics, tuple(patches))


def renamed(patch: Patch, **changes) -> Patch:
    from dataclasses import replace

    return replace(patch, **changes)
