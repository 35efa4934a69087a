"""What stands on the sheet, as one frozen value that the three formats set in their own way."""

from dataclasses import dataclass

from blocklang_drawing import say_measure, say_role

from blocklang.assembly import JoinKind
from blocklang.bias import Bias, find_bias
from blocklang.block import LengthUnit, SpinSense
from blocklang.cutting import (
    describe_layout,
    describe_need,
    describe_piece,
    describe_sensitivity,
    describe_strip_set,
    sensitive_steps,
    sensitivities,
)
from blocklang.hooks import OutputOptions
from blocklang.paper_piecing import offer_papers
from blocklang.plan import PlanJoin, PlanStep, SewingPlan
from blocklang.wording import joined
from blocklang_sewing_sheet import where_words, words
from blocklang_sewing_sheet.measures import say_oblong
from blocklang_sewing_sheet.naming import listed
from blocklang_sewing_sheet.step_words import first_making, step_sentences


@dataclass(frozen=True, slots=True)
class FabricEntry:
    """A fabric in the key, its cutting sentences with it."""

    id: str
    title: str
    role: str
    amount: str
    cutting: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class StepEntry:
    """A step in words; `parts` is what it takes, `makes` what comes out."""

    number: int
    title: str
    make: str
    parts: str
    sentences: tuple[str, ...]
    check: str


@dataclass(frozen=True, slots=True)
class Sheet:
    """The words of the sheet, in the order in which they stand on it."""

    name: str
    byline: str
    size: str
    notes: tuple[str, ...]
    facts: tuple[str, ...]
    fabrics: tuple[FabricEntry, ...]
    strip_sets: tuple[str, ...]
    cutting_notes: tuple[str, ...]
    before: tuple[str, ...]
    cautions: tuple[str, ...]
    step_notes: tuple[str, ...]
    steps: tuple[StepEntry, ...]
    pressing: tuple[str, ...]
    finishing: tuple[str, ...]
    credits: tuple[str, ...]


def write_sheet(plan: SewingPlan, options: OutputOptions) -> Sheet:
    """Return the words of a plan's sheet, in the language that was asked for."""
    return options.language.tell(_write(plan, options))


def is_pictured(options: OutputOptions) -> bool:
    """Say whether pictures stand beside the words."""
    return options.format != "text"


def _write(plan: SewingPlan, options: OutputOptions) -> Sheet:
    block, unit = plan.block, options.unit
    bias = find_bias(plan.graph, plan.cutting)
    stretchy, slips = _stretchy_steps(plan, bias), _slips(plan, unit)
    finished, unfinished = _sizes(plan, unit)
    return Sheet(
        name=block.name,
        byline=words.byline(block.credits[0].author) if block.credits and block.credits[0].author else "",
        size=words.size_line(finished, unfinished),
        notes=block.notes,
        facts=_facts(plan, options),
        fabrics=tuple(_fabric(plan, fabric.id, unit) for fabric in block.fabrics if _is_used(plan, fabric.id)),
        strip_sets=_strip_sets(plan, unit),
        cutting_notes=(
            *((words.OTHER_WAYS,) if plan.cutting.offers else ()),
            *plan.cutting.notes,
            *words.TEST_STRIP_OFF,
        ),
        before=(
            words.allowance_line(say_measure(block.seam_allowance, unit)),
            *(warning.sentence for warning in bias.outside),
        ),
        cautions=words.CAUTIONS,
        step_notes=() if is_pictured(options) else (where_words.HOW_SAID,),
        steps=tuple(
            _step(plan, step, options, stretchy.get(step.number, ()), slips.get(step.number, ())) for step in plan.steps
        ),
        pressing=(
            *words.MAP_SENTENCES,
            *((words.SPINS_SHOWN,) if _is_spun(plan) else ()),
            *(placed.text for placed in plan.pressing.versions if placed.text),
        ),
        finishing=words.finishing(unfinished, finished),
        credits=tuple(words.credit_line(c.name, c.author, c.licence, c.source) for c in block.credits),
    )


def _sizes(plan: SewingPlan, unit: LengthUnit) -> tuple[str, str]:
    width, height = plan.block.size
    more = 2 * plan.block.seam_allowance
    return say_oblong((width, height), unit), say_oblong((width + more, height + more), unit)


def _facts(plan: SewingPlan, options: OutputOptions) -> tuple[str, ...]:
    curved = sum(len(step.joins) for step in plan.steps if step.kind is JoinKind.CURVED)
    offer = offer_papers(plan.assembly)
    return (
        words.pieces_line(len(plan.block.patches), len(plan.steps)),
        words.pivots_line(plan.assembly.pivots),
        words.partials_line(plan.assembly.partials),
        words.curves_line(curved),
        *((offer.reason,) if offer.offered else ()),
        *((words.techniques_line(plan.pressing.techniques),) if plan.pressing.techniques else ()),
        *((words.copies_line(options.copies),) if options.copies > 1 else ()),
    )


def _is_used(plan: SewingPlan, fabric: str) -> bool:
    return any(p.fabric == fabric or (p.stripes and fabric in p.stripes.fabrics) for p in plan.block.patches)


def _fabric(plan: SewingPlan, fabric_id: str, unit: LengthUnit) -> FabricEntry:
    fabric = plan.block.fabric(fabric_id)
    pieces = (piece for piece in plan.cutting.pieces if piece.fabric == fabric_id)
    needs = tuple(need for need in plan.cutting.needs if need.fabric == fabric_id)
    layouts = (layout for need in needs for layout in need.layout)
    strips = tuple(describe_layout(layout, plan.cutting.pieces, unit) for layout in layouts)
    amount = next((describe_need(need, plan.cutting.options, unit) for need in needs), "")
    cutting = (*strips, *(words.cut_line(piece.name, describe_piece(piece, unit)) for piece in pieces))
    return FabricEntry(fabric.id, fabric.title or fabric.id, say_role(fabric), amount, cutting)


def _strip_sets(plan: SewingPlan, unit: LengthUnit) -> tuple[str, ...]:
    return tuple(describe_strip_set(made, unit) for made in plan.cutting.strip_sets)


def _stretchy_steps(plan: SewingPlan, bias: Bias) -> dict[int, tuple[str, ...]]:
    """Return what to say about bias edges at the first step that sews them, by its number."""
    told: set[str] = set()
    said: dict[int, tuple[str, ...]] = {}
    for step in plan.steps:
        seams = {t.segment for join in first_making(step) for t in plan.assembly.joins[join.index].path}
        new = [warning.sentence for warning in bias.about(seams) if warning.sentence not in told]
        told.update(new)
        said[step.number] = tuple(new)
    return said


def _slips(plan: SewingPlan, unit: LengthUnit) -> dict[int, tuple[str, ...]]:
    """Return what seams a little too wide do at the steps where that shows, by their numbers."""
    shown = set(sensitive_steps(plan.assembly))
    found = enumerate(sensitivities(plan.assembly))
    return {index + 1: (describe_sensitivity(one, unit),) for index, one in found if index in shown and one is not None}


def _step(
    plan: SewingPlan, step: PlanStep, options: OutputOptions, stretchy: tuple[str, ...], slips: tuple[str, ...]
) -> StepEntry:
    said = step_sentences(plan, step, options.unit, stretchy, slips, pictured=is_pictured(options))
    check = said[-1] if step.measures is not None else ""
    return StepEntry(
        number=step.number,
        title=step.title,
        make=words.make_line(step.times, options.copies),
        parts=_parts(plan, step),
        sentences=said[:-1] if check else said,
        check=check,
    )


def _parts(plan: SewingPlan, step: PlanStep) -> str:
    """Return what a step takes; where equal units are made of pieces that are cut in other ways, how many of what."""
    size = len(first_making(step))
    makings: dict[tuple[tuple[str, int], ...], list[dict[str, int]]] = {}
    for start in range(0, len(step.joins), size):
        counts = _count_parts(plan, step.joins[start : start + size])
        makings.setdefault(tuple(sorted(counts.items())), []).append(counts)
    said = [(len(alike), _say_parts(alike[0])) for alike in makings.values()]
    if len(said) == 1:
        return said[0][1]
    return joined((words.made_from(times, parts) for times, parts in said if parts), "; ")


def _count_parts(plan: SewingPlan, joins: tuple[PlanJoin, ...]) -> dict[str, int]:
    made = {join.makes for join in joins}
    counts: dict[str, int] = {}
    for name in (name for join in joins for name in join.units if name not in made):
        said = listed(plan, name)
        counts[said] = counts.get(said, 0) + 1
    return counts


def _say_parts(counts: dict[str, int]) -> str:
    if len(counts) > 6:
        return ""
    return joined((words.times(name, count) if count > 1 else name for name, count in counts.items()), " + ")


def _is_spun(plan: SewingPlan) -> bool:
    return any(spin.sense is not SpinSense.NONE for spin in plan.pressing.spins)
