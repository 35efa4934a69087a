"""The estimate as a table, one line a step."""

import csv
import io

from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_thread.estimating import Estimate
from blocklang_thread.words import headings


def write_csv(plan: SewingPlan, estimate: Estimate, options: OutputOptions) -> str:
    """Return comma-separated values as RFC 4180 describes them; lengths in the unit that the heading names."""
    del plan
    table = io.StringIO(newline="")
    lines = csv.writer(table)
    lines.writerow(options.language.tell(headings(options.unit)))
    for step in estimate.steps:
        sewn, thread = (round(inches * options.unit.per_inch, 2) for inches in (step.length, step.thread))
        lines.writerow([step.number, options.language.say(step.title), step.seams, sewn, step.stitches, thread])
    return table.getvalue()
