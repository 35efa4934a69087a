"""Patch graph to joins in order, with proof: where each seam starts, stops and turns.

May import geometry, diagnostics, block and graph; nothing later on the route.
"""

from blocklang.assembly.assemble import Assembled, assemble
from blocklang.assembly.preferences import Why
from blocklang.assembly.straight_version import StraightVersion, straight_version
from blocklang.assembly.values import Assembly, Count, Join, JoinKind, Step, Travelled

__all__ = [
    "Assembled",
    "Assembly",
    "Count",
    "Join",
    "JoinKind",
    "Step",
    "StraightVersion",
    "Travelled",
    "Why",
    "assemble",
    "straight_version",
]
