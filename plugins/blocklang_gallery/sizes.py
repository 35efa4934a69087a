"""What a page tells about each size of a block: its measures, its cutting and its steps, from a plan of that size."""

from dataclasses import dataclass

from blocklang_drawing import say_measure, say_role

from blocklang.block import LengthUnit
from blocklang.catalogue.facts import Facts
from blocklang.catalogue.working_out import facts_of
from blocklang.cutting import FabricNeed, describe_piece, describe_strip_set, format_measure
from blocklang.hooks import BlockAtHand
from blocklang.plan import PlanStep, SewingPlan
from blocklang_gallery import words
from blocklang_gallery.asking import Size


@dataclass(frozen=True, slots=True)
class FabricCutting:
    """One fabric of one size: what to buy, and a line for each width of strips and each kind of piece."""

    number: int
    title: str
    role: str
    buy: str
    lines: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class SizeTold:
    """One size of a block in words; `written` is what a command line says for it, "" for the block's own."""

    written: str
    label: str
    heading: str
    sentences: tuple[str, ...]
    fabrics: tuple[FabricCutting, ...]
    strip_sets: tuple[str, ...]
    steps: tuple[tuple[int, str, str], ...]


@dataclass(frozen=True, slots=True)
class SizesTold:
    """Every size that a page tells, the smallest first, the place of the block's own, and those left out."""

    sizes: tuple[SizeTold, ...]
    own: int
    left_out: str


def tell_sizes(block: BlockAtHand, own: SewingPlan, asked: tuple[Size, ...], unit: LengthUnit) -> SizesTold:
    """Plan the block in each size asked for and tell them; what would be too narrow to sew is left out."""
    facts = facts_of(own.assembly)
    others = [size for size in asked if size.ticks != facts.width]
    fine = [size for size in others if _can_be_sewn(facts, size, own.block.seam_allowance)]
    planned = {size.ticks: (size.written, block.plan(size.written)) for size in fine}
    planned[facts.width] = ("", own)
    there = [(written, plan) for _, (written, plan) in sorted(planned.items()) if plan is not None]
    told = tuple(tell_size(plan, written, unit) for written, plan in there)
    narrow = tuple(say_measure(size.ticks, unit) for size in others if size not in fine)
    return SizesTold(told, [written for written, _ in there].index(""), words.left_out(narrow) if narrow else "")


def tell_size(plan: SewingPlan, written: str, unit: LengthUnit) -> SizeTold:
    """Tell one size."""
    block, facts = plan.block, facts_of(plan.assembly)
    whole = plan.units[-1].measures
    return SizeTold(
        written=written,
        label=words.size_label(*_sides(block.size, unit), own=not written),
        heading=words.size_heading(block.name, say_size(block.size, facts.shape, unit)),
        sentences=words.size_sentences(
            say_size(whole, facts.shape, unit) if whole else "",
            say_measure(facts.smallest, unit),
            plan.cutting.options,
            unit,
        ),
        fabrics=tuple(_cutting(plan, need, unit) for need in plan.cutting.needs),
        strip_sets=tuple(describe_strip_set(made, unit) for made in plan.cutting.strip_sets),
        steps=tuple(_step(step, unit) for step in plan.steps if step.measures is not None),
    )


def say_size(size: tuple[int, int], shape: str, unit: LengthUnit) -> str:
    """Return a width and a height in words, of something that has this shape."""
    return words.size_told(*_sides(size, unit), shape)


def _sides(size: tuple[int, int], unit: LengthUnit) -> tuple[str, str]:
    return say_measure(size[0], unit), say_measure(size[1], unit)


def _can_be_sewn(facts: Facts, size: Size, seam_allowance: int) -> bool:
    """Say whether no patch is narrower than its seam allowance, so that allowances do not reach past the next seam."""
    return facts.smallest * size.ticks >= seam_allowance * facts.width


def _cutting(plan: SewingPlan, need: FabricNeed, unit: LengthUnit) -> FabricCutting:
    fabric = plan.block.fabric(need.fabric)
    pieces = (piece for piece in plan.cutting.pieces if piece.fabric == need.fabric)
    strips = (words.strips(count, format_measure(width, unit)) for width, count in need.strips)
    return FabricCutting(
        number=plan.block.fabrics.index(fabric),
        title=fabric.title or fabric.id,
        role=say_role(fabric),
        buy=words.to_buy(need, plan.cutting.options, unit),
        lines=(*strips, *(words.piece(piece.name, describe_piece(piece, unit)) for piece in pieces)),
    )


def _step(step: PlanStep, unit: LengthUnit) -> tuple[int, str, str]:
    assert step.measures is not None
    return step.number, words.times(step.title, step.times), say_size(step.measures, "square", unit)
