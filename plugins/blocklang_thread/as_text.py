"""The estimate as plain text."""

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang.wording import Saying
from blocklang_thread import words
from blocklang_thread.estimating import Estimate, StepThread


def write_text(plan: SewingPlan, estimate: Estimate, options: OutputOptions) -> str:
    """Return the estimate step by step, then all together, then what it stands on."""
    unit, total, tell = options.unit, estimate.total, options.language.say
    lines = [words.heading(plan.block.name, estimate), words.how_it_is_sewn(estimate.sewing), ""]
    for step in estimate.steps:
        lines += [f"{step.number:>3}. {tell(step.title)}", f"     {tell(_taken(step, options))}"]
    lines += ["", words.in_all(_taken(total, options)), "", *words.what_is_counted(estimate.sewing, unit)]
    return "".join(f"{tell(line)}\n" for line in lines)


def _taken(step: StepThread, options: OutputOptions) -> Saying:
    sewn, thread = words.length(step.length, options.unit), words.thread(step.thread, options.unit)
    return words.taken(step.seams, sewn, step.stitches, thread)
