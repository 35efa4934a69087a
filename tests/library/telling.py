"""What is kept of each library block in tests/library/told: its picture in letters, its sewing and its cutting.

No sentence of any output stands in it, so a change there means that a block is drawn, sewn, pressed or cut otherwise.
"""

from collections.abc import Iterator
from typing import Any

from blocklang.catalogue.picture import small_picture
from blocklang.plan import SewingPlan

COLUMNS, ROWS = 32, 16
LETTERS = ".ABCDEFGH"


def told(plan: SewingPlan, values: dict[str, Any]) -> str:
    """Return everything that is kept of a block; `values` is its plan as JSON."""
    lines = [*_picture(plan), "", *_numbers(values), "", *_steps(values), "", *_cuts(plan)]
    return "".join(f"{line}".rstrip() + "\n" for line in lines)


def _picture(plan: SewingPlan) -> Iterator[str]:
    letters = {"": " "} | {fabric.id: LETTERS[place] for place, fabric in enumerate(plan.block.fabrics)}
    for row in small_picture(plan.block, COLUMNS, ROWS):
        yield "".join(letters[fabric] for fabric in row)
    for fabric in plan.block.fabrics:
        yield f"{letters[fabric.id]} {fabric.id} {fabric.value} {fabric.colour}"


def _numbers(values: dict[str, Any]) -> Iterator[str]:
    pressing = values["pressing"]
    for name, count in (("set in", values["set_in"]["pivots"]), ("partial", values["partial"]["count"])):
        key = name.replace(" ", "_")
        yield f"{name} {count}, least {values[key]['minimum']}, {_proven(values[key]['proven'])}"
    yield f"locked {pressing['locked']} of {pressing['lockable']}, {_proven(pressing['proven'])}"
    for junction in values["junctions"]:
        if junction["spin"] not in ("none", "not"):
            yield f"spun {junction['spin']} at {_at(junction['at'])}"


def _proven(proven: bool) -> str:
    return "proven" if proven else "not proven"


def _steps(values: dict[str, Any]) -> Iterator[str]:
    for step in values["steps"]:
        measures = " x ".join(_number(side) for side in step["measures"]) if step["measures"] else "not measured"
        yield f"{step['number']} {step['kind']}, {step['times']} times, {measures}, makes {' '.join(step['makes'])}"
        for join in step["joins"][: len(step["joins"]) // step["times"]]:
            pressed = [press["toward"] or "open" for press in join["press"]]
            ends = [place for place in ("start", "end") if join[place] != "raw-edge"]
            turns = [f"turns at {_at(pivot)}" for pivot in join["pivots"]]
            more = "".join(f", {part}" for part in (*(f"{place} stops" for place in ends), *turns))
            yield f"  {' + '.join(join['units'])} = {join['makes']}, toward {' '.join(pressed)}{more}"


def _cuts(plan: SewingPlan) -> Iterator[str]:
    for piece in plan.cutting.pieces:
        sides = " x ".join(str(side.shown) for side in piece.cut) or "template"
        yield f"{piece.fabric}: {piece.count} of {sides}, {piece.shapes} shapes for {piece.yields} each, {piece.method}"
    for made in plan.cutting.strip_sets:
        yield f"strip set of {' '.join(made.fabrics)}: {made.strip.shown} to {made.trimmed.shown}, cut {made.sub_cut.shown}"


def _at(place: list[float]) -> str:
    return ", ".join(map(_number, place))


def _number(length: float) -> str:
    return f"{round(length, 3) + 0.0:g}"
