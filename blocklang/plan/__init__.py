"""One frozen plan that holds everything about sewing a block; what every plugin gets.

May import every stage before it; nothing of the commands or the hooks.
"""

from blocklang.plan.making import make_plan
from blocklang.plan.values import PlanJoin, PlanOptions, PlanStep, PlanUnit, SewingPlan

__all__ = ["PlanJoin", "PlanOptions", "PlanStep", "PlanUnit", "SewingPlan", "make_plan"]
