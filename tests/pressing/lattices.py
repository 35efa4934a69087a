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
