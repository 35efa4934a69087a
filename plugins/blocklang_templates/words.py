"""Everything that is written on templates."""

from typing import Final

from blocklang.cutting import TemplateUse
from blocklang.plan import SewingPlan
from blocklang_templates.choosing import Numbered

NO_TEMPLATES: Final = (
    "Every patch of this block is cut with a ruler, as its cutting list says; "
    "for templates all the same, add --set which=all."
)
SUBJECT: Final = "Templates"
WINDOW_SUBJECT: Final = "Window templates"
LINES: Final = "Outer line: cut. Dashed line: sew. Arrow: along the straight grain."
WINDOW_LINES: Final = (
    "Cut out the window along the inner line; cut the fabric along the outer line. Arrow: straight grain."
)
DOTS: Final = "Dots are match points: pin dot to dot."
RINGS: Final = "An open dot is for some of these patches only."
REVERSED: Final = "For a reversed patch, turn the template over."
STRIPES: Final = "Dash and dot: the seams of the strip set; lay them on the seams of yours."


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
    return (first, " ".join(rest))


def say_use(plan: SewingPlan, use: TemplateUse) -> str:
    """Say how many are cut from which fabric."""
    piece = plan.cutting.pieces[use.piece]
    fabric = plan.block.fabric(piece.fabric)
    cloth = "the strip set" if piece.strip_set is not None else fabric.title or fabric.id
    if not use.reversed:
        return f"Cut {use.count} of {cloth}"
    if use.reversed == use.count:
        return f"Cut {use.count} reversed of {cloth}"
    return f"Cut {use.count} of {cloth}, {use.reversed} of them reversed"
