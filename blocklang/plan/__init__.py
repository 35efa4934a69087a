"""One frozen plan that holds everything about sewing a block; what every plugin gets.

May import every stage before it; nothing of the commands or the hooks.
"""

from blocklang.plan.making import make_plan
from blocklang.plan.values import (
    OrderCosts,
    PlanCurve,
    PlanJoin,
    PlanLock,
    PlanNeedle,
    PlanOptions,
    PlanSpin,
    PlanStep,
    PlanStop,
    PlanUnit,
    PlanVersion,
    SewingPlan,
)

__all__ = [
    "OrderCosts",
    "PlanCurve",
    "PlanJoin",
    "PlanLock",
    "PlanNeedle",
    "PlanOptions",
    "PlanSpin",
    "PlanStep",
    "PlanStop",
    "PlanUnit",
    "PlanVersion",
    "SewingPlan",
    "make_plan",
]
