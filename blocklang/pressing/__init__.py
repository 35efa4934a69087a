"""Joins to pressing directions, with proof: what locks, what spins, and why not when not.

May import geometry, diagnostics, block, graph and assembly; nothing later on the route.
"""

from blocklang.pressing.directing import press
from blocklang.pressing.preferences import DEFAULTS, PressingPreference
from blocklang.pressing.values import Pressed, Pressing, Reason, Spun

__all__ = ["DEFAULTS", "Pressed", "Pressing", "PressingPreference", "Reason", "Spun", "press"]
