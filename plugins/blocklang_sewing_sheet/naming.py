"""What patches and units are called in a sentence: equal ones alike, by the names of the cutting list."""

from blocklang.plan import SewingPlan


def spoken(plan: SewingPlan, unit: str) -> str:
    """Return what to call a unit in a sentence: "the corner", "unit A", "the block"."""
    name = listed(plan, unit)
    return name if name.startswith("unit ") else f"the {name}"


def two_of(plan: SewingPlan, unit: str) -> str:
    """Return what to call two equal units: "two diamond patches", "two of unit A"."""
    name = listed(plan, unit)
    return f"two of {name}" if name.startswith("unit ") else f"two {name} patches"


def listed(plan: SewingPlan, unit: str) -> str:
    """Return what to call a unit in a list: "corner", "unit A", "block"."""
    for index, patch in enumerate(plan.block.patches):
        if patch.id == unit:
            return plan.labels[index]
    if unit == plan.units[-1].name:
        return "block"
    return "unit " + unit.removeprefix("unit ").split(".")[0].split("-")[0]
