"""Everything that is written on templates."""

from typing import Final

from blocklang.cutting import TemplateUse
from blocklang.plan import SewingPlan
from blocklang.wording import joined, say, say_number
from blocklang_templates.choosing import Numbered

NO_TEMPLATES: Final = (
    "Every patch of this block is cut with a ruler, as its cutting list says; "
    "for templates all the same, add --set which=all."
)
SUBJECT: Final = say("Templates")
WINDOW_SUBJECT: Final = say("Window templates")
LINES: Final = say("Outer line: cut. Dashed line: sew. Arrow: along the straight grain.")
WINDOW_LINES: Final = say(
    "Cut out the window along the inner line; cut the fabric along the outer line. Arrow: straight grain."
)
DOTS: Final = say("Dots are match points: pin dot to dot.")
RINGS: Final = say("An open dot is for some of these patches only.")
REVERSED: Final = say("For a reversed patch, turn the template over.")
STRIPES: Final = say("Dash and dot: the seams of the strip set; lay them on the seams of yours.")


def notes(chosen: tuple[Numbered, ...], *, window: bool) -> tuple[str, ...]:
    """Return what has to be said beside the squares, and nothing that does not occur."""
    templates = [one.template for one in chosen]
    said = [WINDOW_LINES if window else LINES, DOTS]
    if any(not dot.always for template in templates for dot in template.dots):
        said.append(RINGS)
    if any(use.reversed for template in templates for use in template.uses):
        said.append(REVERSED)
    if any(template.stripes for template in templates):
        said.append(STRIPES)
    first, *rest = said
    return (first, joined(rest))


def say_use(plan: SewingPlan, use: TemplateUse) -> str:
    """Say how many are cut from which fabric."""
    piece = plan.cutting.pieces[use.piece]
    fabric = plan.block.fabric(piece.fabric)
    cloth = (
        say("the strip set")
        if piece.strip_set is not None
        else say("{fabric}", context="the name of a fabric", fabric=fabric.title or fabric.id)
    )
    if not use.reversed:
        return say("Cut {count} of {cloth}", count=use.count, cloth=cloth)
    if use.reversed == use.count:
        return say_number("Cut {count} reversed of {cloth}", "Cut {count} reversed of {cloth}", use.count, cloth=cloth)
    return say_number(
        "Cut {total} of {cloth}, {count} of them reversed",
        "Cut {total} of {cloth}, {count} of them reversed",
        use.reversed,
        total=use.count,
        cloth=cloth,
    )


def template(number: int) -> str:
    """Say what a template is called."""
    return say("Template {number}", number=number)


def titled(number: int, name: str) -> str:
    """Say which template a drawing shows."""
    return say("Template {number}: {name}", number=number, name=name)
