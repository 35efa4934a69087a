"""Cloth folded layer by layer: how many layers lie where, and where each allowance has come to lie.

May import geometry, block, graph, assembly and cutting; nothing later on the route. Directions come in as plain
values, so that a choice can be tried before it is made. shapely is imported only when something is folded.
"""

from blocklang.thickness.counting import layer_counter
from blocklang.thickness.lying import Lies
from blocklang.thickness.measuring import fold, measure
from blocklang.thickness.nearby import Nearby, layers_at
from blocklang.thickness.values import Folded, Layer, Pile, Region, Ring, Thickness

__all__ = [
    "Folded",
    "Layer",
    "Lies",
    "Nearby",
    "Pile",
    "Region",
    "Ring",
    "Thickness",
    "fold",
    "layer_counter",
    "layers_at",
    "measure",
]
