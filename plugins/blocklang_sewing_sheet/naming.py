"""What patches and units are called in a sentence: equal ones alike, by the names of the cutting list."""

from blocklang.plan import SewingPlan


def patch_labels(plan: SewingPlan) -> dict[int, str]:
    """Return what to call each patch: its line of the cutting list, with the fabric where two lines share a name."""
    fabrics: dict[str, set[str]] = {}
    for piece in plan.cutting.pieces:
        fabrics.setdefault(piece.name, set()).add(piece.fabric)
    labels: dict[int, str] = {}
    for piece in plan.cutting.pieces:
        fabric = plan.block.fabric(piece.fabric)
        label = piece.name if len(fabrics[piece.name]) == 1 else f"{fabric.title or fabric.id} {piece.name}"
        labels.update(dict.fromkeys(piece.patches, label))
    return labels


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
            return patch_labels(plan).get(index, patch.name)
    if unit == plan.units[-1].name:
        return "block"
    return "unit " + unit.removeprefix("unit ").split(".")[0].split("-")[0]
