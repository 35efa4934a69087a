"""What patches and units are called in a sentence: equal ones alike, by the names of the cutting list."""

from blocklang.cutting.words import the, two_patches
from blocklang.plan import SewingPlan
from blocklang.wording import Saying, say


def spoken(plan: SewingPlan, unit: str) -> Saying:
    """Return what to call a unit in a sentence: "the corner", "unit A", "the block"."""
    label = _label(plan, unit)
    if label is not None:
        return the(label)
    if unit == plan.units[-1].name:
        return say("the block")
    return say("unit {letter}", context="in a sentence, where a noun has: the", letter=_letter(unit))


def two_of(plan: SewingPlan, unit: str) -> Saying:
    """Return what to call two equal units: "two diamond patches", "two of unit A"."""
    label = _label(plan, unit)
    return say("two of unit {letter}", letter=_letter(unit)) if label is None else two_patches(label)


def listed(plan: SewingPlan, unit: str) -> str:
    """Return what to call a unit in a list: "corner", "unit A", "block"."""
    label = _label(plan, unit)
    if label is not None:
        return label
    return say("block") if unit == plan.units[-1].name else say("unit {letter}", letter=_letter(unit))


def _label(plan: SewingPlan, unit: str) -> str | None:
    """Return what a lone patch is called; None of units that are sewn."""
    return next((plan.labels[index] for index, patch in enumerate(plan.block.patches) if patch.id == unit), None)


def _letter(unit: str) -> str:
    return unit.removeprefix("unit ").split(".")[0].split("-")[0]
