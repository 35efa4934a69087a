"""Joins to pressing directions, with proof: what locks, what spins, and why not when not.

May import geometry, diagnostics, block, graph and assembly; nothing later on the route.
"""

from blocklang.pressing.directing import press
from blocklang.pressing.preferences import DEFAULTS, PressingPreference
from blocklang.pressing.values import PlacedVersions, Pressed, Pressing, Reason, Spun, Version

__all__ = [
    "DEFAULTS",
    "PlacedVersions",
    "Pressed",
    "Pressing",
    "PressingPreference",
    "Reason",
    "Spun",
    "Version",
    "press",
]
