"""What patches and units are called in a sentence: equal ones by their common name."""

from blocklang.plan import SewingPlan


def spoken(plan: SewingPlan, unit: str) -> str:
    """Return what to call a unit: "unit A", "the corner", "the block"."""
    patches = {patch.id: patch.name for patch in plan.block.patches}
    if unit in patches:
        return f"the {patches[unit]}"
    if plan.units and unit == plan.units[-1].name:
        return "the block"
    stem, dot, number = unit.rpartition(".")
    return stem if dot and number.isdigit() else unit


def without_article(name: str) -> str:
    """Return a name as it stands in a list."""
    return name.removeprefix("the ")
