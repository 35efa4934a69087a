"""The estimate as plain text."""

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_thread import words
from blocklang_thread.estimating import Estimate


def write_text(plan: SewingPlan, estimate: Estimate, options: OutputOptions) -> str:
    """Return the estimate step by step, then all together, then what it stands on."""
    unit, said = options.unit, options.language.say
    lines = [said(words.heading(plan.block.name, estimate)), said(words.how_it_is_sewn(estimate.sewing)), ""]
    for step in estimate.steps:
        lines += [f"{step.number:>3}. {said(step.title)}", f"     {said(words.taken(step, unit))}"]
    lines += ["", said(words.in_all(estimate, unit)), "", *map(said, words.what_is_counted(estimate.sewing, unit))]
    return "".join(f"{line}\n" for line in lines)
