"""The estimate for other programs."""

import json
from typing import Any

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_thread.estimating import Estimate, StepThread

SCHEMA = "blocklang.thread/1"
PLACES = 3


def write_json(plan: SewingPlan, estimate: Estimate, options: OutputOptions) -> str:
    """Return the estimate; lengths in the unit that `unit` names."""
    per_inch = options.unit.per_inch
    steps = [
        {"number": step.number, "title": options.language.say(step.title), **_taken(step, per_inch)}
        for step in estimate.steps
    ]
    told = {
        "schema": SCHEMA,
        "block": plan.block.name,
        "unit": str(options.unit),
        "copies": estimate.copies,
        "stitch_length_mm": estimate.sewing.stitch,
        "thread_factor": estimate.sewing.factor,
        "estimate": True,
        "steps": steps,
        "total": _taken(estimate.total, per_inch),
    }
    return json.dumps(told, indent=2, ensure_ascii=False) + "\n"


def _taken(step: StepThread, per_inch: float) -> dict[str, Any]:
    sewn, thread = (round(inches * per_inch, PLACES) for inches in (step.length, step.thread))
    return {"seams": step.seams, "sewn": sewn, "stitches": step.stitches, "thread": thread}
