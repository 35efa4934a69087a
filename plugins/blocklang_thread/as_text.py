"""The estimate as plain text."""

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_thread import words
from blocklang_thread.estimating import Estimate, StepThread


def write_text(plan: SewingPlan, estimate: Estimate, options: OutputOptions) -> str:
    """Return the estimate step by step, then all together, then what it stands on."""
    unit, total = options.unit, estimate.total
    lines = [words.heading(plan.block.name, estimate), words.how_it_is_sewn(estimate.sewing), ""]
    for step in estimate.steps:
        lines += [f"{step.number:>3}. {step.title}", f"     {_taken(step, options)}"]
    lines += ["", f"In all: {_taken(total, options)}.", "", *words.what_is_counted(estimate.sewing, unit)]
    return "".join(f"{line}\n" for line in lines)


def _taken(step: StepThread, options: OutputOptions) -> str:
    seams, sewn = words.counted(step.seams, "seam", "seams"), words.length(step.length, options.unit)
    stitches = words.counted(step.stitches, "stitch", "stitches")
    return f"{seams}, {sewn} sewn: {stitches}, about {words.thread(step.thread, options.unit)} of thread"
