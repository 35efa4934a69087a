"""Blocks whose junctions stand in odd rings."""

import math

from blocklang.block import Block, LengthUnit
from tests.support.blocks import FABRICS, QUARTER, outline_of, patch


def triangles(columns: int, rows: int) -> Block:
    """Equilateral triangles: each inner junction has six seams, and each triangle is a ring of three junctions."""

    def at(column: int, row: int) -> tuple[float, float]:
        return column + row / 2, row * math.sqrt(3) / 2

    patches = []
    for j in range(rows):
        for i in range(columns):
            up, down = [at(i, j), at(i + 1, j), at(i, j + 1)], [at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]
            patches += [patch(f"up.{j + 1}.{i + 1}", "deep", up), patch(f"down.{j + 1}.{i + 1}", "fog", down)]
    return Block("Triangles", LengthUnit.INCH, outline_of(patches), QUARTER, FABRICS, tuple(patches))


def rhombs(turned: float = 0.0) -> Block:
    """Three placed copies of a rhomb round a point, each with a seam across its wide corner: three locks in a ring."""

    def at(u: float, v: float, turn: int) -> tuple[float, float]:
        one, other = (math.radians(120 * turn + angle + turned) for angle in (0, 120))
        return 8 + u * math.cos(one) + v * math.cos(other), 8 + u * math.sin(one) + v * math.sin(other)

    patches = []
    for turn, name in enumerate(("east", "west", "south")):
        corner = [(0, 0), (2, 0), (0, 2)]
        rest = [(2, 0), (4, 0), (4, 4), (0, 4), (0, 2)]
        for fabric, own, corners in (("deep", "corner", corner), ("fog", "rest", rest)):
            patches.append(patch(f"{name}.{own}", fabric, [at(u, v, turn) for u, v in corners], group=(name,)))
    return Block("Rhombs", LengthUnit.INCH, outline_of(patches), QUARTER, FABRICS, tuple(patches))
