"""Piecing over papers by hand: which papers, and in which order their edges are whip-stitched.

May import geometry, diagnostics, block, graph, the values of assembly, and the raw outlines of cutting.
"""

from blocklang.paper_piecing.offer import Offer, offer_papers
from blocklang.paper_piecing.ordering import order_papers
from blocklang.paper_piecing.papers import papers_of
from blocklang.paper_piecing.values import Joining, PaperOrder, PaperShape, Round

__all__ = ["Joining", "Offer", "PaperOrder", "PaperShape", "Round", "offer_papers", "order_papers", "papers_of"]
