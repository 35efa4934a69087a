"""Points, edges, outlines, turns and congruence, all on one integer lattice; imports nothing else of blocklang."""

from blocklang.geometry.edges import Arc, Edge
from blocklang.geometry.outlines import Outline
from blocklang.geometry.points import TICKS_PER_INCH, Point, from_inches, to_inches

__all__ = ["TICKS_PER_INCH", "Arc", "Edge", "Outline", "Point", "from_inches", "to_inches"]
