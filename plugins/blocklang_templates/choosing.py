"""Which templates are drawn, and the letter of each."""

from dataclasses import dataclass

from blocklang.cutting import Template, templates_of
from blocklang.plan import SewingPlan


@dataclass(frozen=True, slots=True)
class Lettered:
    """A template with the letter that it goes by; letters are those of all templates of the block."""

    letter: str
    template: Template


def choose_templates(plan: SewingPlan, *, everything: bool) -> tuple[Lettered, ...]:
    """Return the templates that the cutting list asks for, or all of them; letters are the same either way."""
    found = templates_of(plan.graph, plan.cutting)
    lettered = (Lettered(letter_of(place), template) for place, template in enumerate(found))
    return tuple(one for one in lettered if everything or one.template.needed)


def letter_of(place: int) -> str:
    """Return A to Z, then AA, AB and so on."""
    before, last = divmod(place, 26)
    return (letter_of(before - 1) if before else "") + chr(ord("A") + last)
