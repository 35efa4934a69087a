"""Block to patch graph: junctions, seam segments, straight runs, and everything that can be wrong with them.

May import geometry, diagnostics and block; nothing later on the route.
"""

from blocklang.graph.build import Graphed, build_graph
from blocklang.graph.values import (
    OUTSIDE,
    Junction,
    JunctionKind,
    PatchGraph,
    Segment,
    SegmentEnd,
)

__all__ = ["OUTSIDE", "Graphed", "Junction", "JunctionKind", "PatchGraph", "Segment", "SegmentEnd", "build_graph"]
