"""What the shapes are called that the methods of cutting make."""

from typing import Final

from blocklang.wording import Noun, noun

NOUNS: Final[dict[str, Noun]] = {
    "square": noun("square", "squares"),
    "rectangle": noun("rectangle", "rectangles"),
    "half-square-triangle": noun("half-square triangle", "half-square triangles"),
    "quarter-square-triangle": noun("quarter-square triangle", "quarter-square triangles"),
    "half-rectangle-triangle": noun("half-rectangle triangle", "half-rectangle triangles"),
    "equilateral-triangle": noun("equilateral triangle", "equilateral triangles"),
    "rhombus": noun("diamond", "diamonds", is_patch=False),
    "parallelogram": noun("parallelogram", "parallelograms"),
    "trapezoid": noun("trapezoid", "trapezoids"),
    "wedge": noun("wedge", "wedges", is_patch=False),
    "kite": noun("kite", "kites", is_patch=False),
    "octagon": noun("octagon", "octagons", is_patch=False),
    "hexagon": noun("hexagon", "hexagons"),
    "template": noun("patch", "patches"),
}
