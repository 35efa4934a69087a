"""What patches and units are called in a sentence: equal ones by their common name."""

from blocklang.plan import SewingPlan


def spoken(plan: SewingPlan, unit: str) -> str:
    """Return what to call a unit in a sentence: "the corner patch", "unit A", "the block"."""
    name = listed(plan, unit)
    if unit in {patch.id for patch in plan.block.patches}:
        return f"the {name} patch"
    return f"the {name}" if unit == plan.units[-1].name else name


def listed(plan: SewingPlan, unit: str) -> str:
    """Return what to call a unit in a list: "corner", "unit A", "block"."""
    patches = {patch.id: patch.name for patch in plan.block.patches}
    if unit in patches:
        return patches[unit]
    if unit == plan.units[-1].name:
        return "block"
    return "unit " + unit.removeprefix("unit ").split(".")[0].split("-")[0]
