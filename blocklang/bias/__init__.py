"""Edges that are cut on the bias, where they end up, and how to handle them.

May import geometry, block, graph and cutting; nothing later on the route.
"""

from blocklang.bias.finding import find_bias
from blocklang.bias.values import Bias, BiasKind, BiasWarning

__all__ = ["Bias", "BiasKind", "BiasWarning", "find_bias"]
