"""Which templates are drawn, and the number of each."""

from dataclasses import dataclass

from blocklang.cutting import Template, templates_of
from blocklang.plan import SewingPlan


@dataclass(frozen=True, slots=True)
class Numbered:
    """A template and the number it goes by among all templates of the block."""

    number: int
    template: Template


def choose_templates(plan: SewingPlan, *, everything: bool) -> tuple[Numbered, ...]:
    """Return the templates that the cutting list asks for, or all of them; numbers are the same either way."""
    found = enumerate(templates_of(plan.graph, plan.cutting), 1)
    numbered = (Numbered(number, template) for number, template in found)
    return tuple(one for one in numbered if everything or one.template.needed)
