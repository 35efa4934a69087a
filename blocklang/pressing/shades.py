"""How dark a patch looks beside another."""

from functools import lru_cache

from blocklang.block import Block, Fabric, Value
from blocklang.graph.values import PatchGraph

#: Fabrics of one value whose lightness (CIE L*, 0 to 100) is nearer than this look equally dark.
NOTICEABLE = 5.0
_STEPS = {Value.LIGHT: 0, Value.MEDIUM: 1, Value.DARK: 2}


def fabrics_of(graph: PatchGraph, patch: int) -> tuple[Fabric, ...]:
    """Return the fabric of a patch, or those of its stripes."""
    own = graph.block.patches[patch]
    names = (own.fabric,) if own.stripes is None else own.stripes.fabrics
    return tuple(_fabric(graph.block, name) for name in names)


def darker_side(graph: PatchGraph, left: int, right: int) -> int:
    """Return how much darker the left patch is: 2 by value, 1 by lightness alone, 0 alike; negative for the right."""
    a, b = fabrics_of(graph, left), fabrics_of(graph, right)
    by_value = _mean_value(a) - _mean_value(b)
    if by_value:
        return 2 if by_value > 0 else -2
    lighter = _mean_lightness(a) - _mean_lightness(b)
    return 0 if abs(lighter) < NOTICEABLE else (-1 if lighter > 0 else 1)


def lightness_of(graph: PatchGraph, patch: int) -> tuple[float, float]:
    """Return what sorts patches from dark to light: value first, then CIE L*."""
    own = fabrics_of(graph, patch)
    return -_mean_value(own), _mean_lightness(own)


def is_background(graph: PatchGraph, patch: int) -> bool:
    """Tell whether a patch is background and nothing else."""
    return all(fabric.role == "background" for fabric in fabrics_of(graph, patch))


def _fabric(block: Block, name: str) -> Fabric:
    return next(fabric for fabric in block.fabrics if fabric.id == name)


def _mean_value(fabrics: tuple[Fabric, ...]) -> float:
    return sum(_STEPS[fabric.value] for fabric in fabrics) / len(fabrics)


def _mean_lightness(fabrics: tuple[Fabric, ...]) -> float:
    return sum(lightness(fabric.colour) for fabric in fabrics) / len(fabrics)


@lru_cache(maxsize=4096)
def lightness(colour: str) -> float:
    """Return CIE L* of a #rrggbb colour (sRGB, IEC 61966-2-1; CIE 15 for L*)."""
    red, green, blue = (_linear(int(colour[i : i + 2], 16) / 255) for i in (1, 3, 5))
    luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue
    return float(116 * luminance ** (1 / 3) - 16 if luminance > 216 / 24389 else luminance * 24389 / 27)


def _linear(channel: float) -> float:
    return float(channel / 12.92 if channel <= 0.04045 else ((channel + 0.055) / 1.055) ** 2.4)
