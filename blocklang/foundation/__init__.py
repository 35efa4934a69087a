"""Patch graph to paper foundations: the fewest sections, the order within each, and how sections meet, with proof.

Stands beside assembly. May import geometry, diagnostics, block and graph; nothing later on the route.
"""

from blocklang.foundation.borders import Meeting, meetings_of, section_outline
from blocklang.foundation.sections import sections
from blocklang.foundation.values import Foundation, Paper, Section, SectionCount, SectionJoin

__all__ = [
    "Foundation",
    "Meeting",
    "Paper",
    "Section",
    "SectionCount",
    "SectionJoin",
    "meetings_of",
    "section_outline",
    "sections",
]
