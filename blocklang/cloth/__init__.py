"""Cutting plans for cloth: strips across the width, sub-cuts along them, and how short the cloth can be at all.

May import cutting and all that lies before it; nothing later on the route.
"""

from blocklang.cloth.buying import in_yards
from blocklang.cloth.laying_out import lay_out
from blocklang.cloth.panels import fill_panel
from blocklang.cloth.plan import (
    ClothOptions,
    ClothPlan,
    CutStock,
    FabricPlan,
    PlannedStrip,
    Precut,
    Stock,
    SubCuts,
    Turning,
)
from blocklang.cloth.planning import plan_cloth
from blocklang.cloth.values import FilledPanel, Filling, Layout, Order, Panel, Way, in_order, straight_way

__all__ = [
    "ClothOptions",
    "ClothPlan",
    "CutStock",
    "FabricPlan",
    "FilledPanel",
    "Filling",
    "Layout",
    "Order",
    "Panel",
    "PlannedStrip",
    "Precut",
    "Stock",
    "SubCuts",
    "Turning",
    "Way",
    "fill_panel",
    "in_order",
    "in_yards",
    "lay_out",
    "plan_cloth",
    "straight_way",
]
