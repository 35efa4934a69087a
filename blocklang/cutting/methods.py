"""The ways to cut that are built in; plugins add theirs."""

from blocklang.cutting import four_sided, kites, other_shapes, triangles
from blocklang.cutting.claims import Claim, Claims, CuttingMethod, ask, in_order

__all__ = ["METHODS", "TEMPLATE", "Claim", "Claims", "CuttingMethod", "ask", "in_order"]

TEMPLATE = CuttingMethod("template", "cut round a template", 0, other_shapes.template)

METHODS: tuple[CuttingMethod, ...] = (
    CuttingMethod("square", "a square from a strip", 100, four_sided.square),
    CuttingMethod("rectangle", "a rectangle from a strip", 90, four_sided.rectangle),
    CuttingMethod("half-square-triangle", "a square cut once across", 80, triangles.half_square),
    CuttingMethod("quarter-square-triangle", "a square cut twice across", 80, triangles.quarter_square),
    CuttingMethod("half-rectangle-triangle", "a rectangle cut once across", 70, triangles.half_rectangle),
    CuttingMethod("rhombus", "a strip, sub-cut at an angle at the strip's own width", 60, four_sided.rhombus),
    CuttingMethod("parallelogram", "a strip, sub-cut at an angle", 50, four_sided.parallelogram),
    CuttingMethod("trapezoid", "a strip, cut to length with slanted ends", 50, four_sided.trapezoid),
    CuttingMethod("equilateral-triangle", "a strip, cut at 60 degrees to and fro", 50, triangles.equilateral),
    CuttingMethod("wedge", "a strip, cut to and fro from mark to mark", 50, triangles.wedge),
    CuttingMethod("kite", "a rectangle, the corners cut off from mark to mark", 50, kites.kite),
    CuttingMethod("octagon", "a square, the corners cut off from mark to mark", 50, other_shapes.octagon),
    CuttingMethod("hexagon", "a strip, the corners cut off at 60 degrees", 50, other_shapes.hexagon),
    TEMPLATE,
)
