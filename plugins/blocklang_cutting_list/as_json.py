"""The cutting list as JSON: lengths in inches, exact beside what the ruler shows."""

import json

from blocklang.cutting import FabricNeed, Measure, Offer, Piece, Strip, StripSet, Work, describe_offer
from blocklang.plan import SewingPlan

SCHEMA = "blocklang.cutting-list/1"


def write_json(plan: SewingPlan) -> str:
    """Return the list as JSON text."""
    cutting = plan.cutting
    data = {
        "schema": SCHEMA,
        "block": plan.block.name,
        "copies": cutting.options.copies,
        "usable_width": float(cutting.options.usable_width),
        "seam_allowance": _rounded(cutting.seam_allowance),
        "fabrics": [_need(need) for need in cutting.needs],
        "pieces": [_piece(plan, piece) for piece in cutting.pieces],
        "strip_sets": [_strip_set(item) for item in cutting.strip_sets],
        "notes": list(cutting.notes),
        "other_ways": [_offer(plan, offer) for offer in cutting.offers],
    }
    return json.dumps(data, ensure_ascii=False, indent=2) + "\n"


def _need(need: FabricNeed) -> dict[str, object]:
    return {
        "fabric": need.fabric,
        "yards": str(need.yards),
        "length": _rounded(need.length),
        "bound": _rounded(need.bound),
        "strips": [{"width": _measure(width), "count": count} for width, count in need.strips],
    }


def _piece(plan: SewingPlan, piece: Piece) -> dict[str, object]:
    strip = piece.strip
    return {
        "fabric": piece.fabric,
        "name": piece.name,
        "method": piece.method,
        "patches": [plan.block.patches[patch].id for patch in piece.patches],
        "count": piece.count,
        "reversed": piece.reversed,
        "shapes": piece.shapes,
        "yields": piece.yields,
        "cut": [_measure(side) for side in piece.cut],
        "pose": piece.pose,
        "marks": [_measure(mark) for mark in piece.marks],
        "angle": None if piece.angle is None else _rounded(piece.angle),
        "grain": piece.grain,
        "strip": None if strip is None else _strip(strip),
        "strip_set": piece.strip_set,
    }


def _strip(strip: Strip) -> dict[str, object]:
    return {"width": _measure(strip.width), "holds": strip.holds, "count": strip.count}


def _strip_set(item: StripSet) -> dict[str, object]:
    return {
        "fabrics": list(item.fabrics),
        "strip": _measure(item.strip),
        "sewn": _measure(item.sewn),
        "trimmed": _measure(item.trimmed),
        "angle": _rounded(item.angle),
        "sub_cut": _measure(item.sub_cut),
        "holds": item.holds,
        "sets": item.sets,
    }


def _offer(plan: SewingPlan, offer: Offer) -> dict[str, object]:
    return {
        "method": offer.method,
        "title": offer.title,
        "patches": [plan.block.patches[patch].id for patch in offer.patches],
        "needed": offer.needed,
        "rounds": offer.rounds,
        "yields": offer.yields,
        "starts": [
            {"fabric": start.fabric, "sides": [_measure(side) for side in start.sides], "count": start.count}
            for start in offer.starts
        ],
        "trim": [_measure(side) for side in offer.trim],
        "sentences": list(describe_offer(offer, plan.block.unit)),
        "plain": _work(offer.plain),
        "work": _work(offer.work),
    }


def _work(work: Work) -> dict[str, object]:
    return {"area": _rounded(work.area), "cuts": work.cuts, "bias": work.bias}


def _measure(measure: Measure) -> dict[str, object]:
    return {"exact": _rounded(measure.exact), "shown": str(measure.shown)}


def _rounded(value: float) -> float:
    return round(value, 6)
