"""What to do in a step, sentence by sentence."""

from itertools import groupby
from typing import Final

from blocklang.assembly import JoinKind
from blocklang.block import LengthUnit
from blocklang.cutting.words import the
from blocklang.plan import PlanJoin, PlanStep, SewingPlan
from blocklang.pressing import Pressed
from blocklang_sewing_sheet import words
from blocklang_sewing_sheet.measures import say_oblong
from blocklang_sewing_sheet.naming import listed, spoken, two_of
from blocklang_sewing_sheet.unpictured import lay_out, part_sewn, presses, where_lie
from blocklang_sewing_sheet.version_words import version_sentences

#: A longer row is quicker seen than read.
LONGEST_ORDER: Final = 9


def first_making(step: PlanStep) -> tuple[PlanJoin, ...]:
    """Return the joins that make a step once."""
    return step.joins[: len(step.joins) // max(step.times, 1)]


def step_sentences(
    plan: SewingPlan,
    step: PlanStep,
    unit: LengthUnit,
    stretchy: tuple[str, ...] = (),
    slips: tuple[str, ...] = (),
    *,
    pictured: bool = True,
) -> tuple[str, ...]:
    """Return the sentences of a step, in order.

    `stretchy` says which of its edges are on the bias, `slips` what seams a little too wide would do to it;
    `pictured` whether a picture beside them shows where pieces lie and which way seams are pressed.
    """
    joins = first_making(step)
    return (
        *_begin(plan, step, joins, pictured),
        *_sew(plan, step, joins, unit, pictured),
        *_stops(plan, joins),
        *((words.CHAIN_PIECE,) if step.chained else ()),
        *_needle(plan, step, unit),
        *stretchy,
        *_press(plan, step, joins, pictured),
        *version_sentences(plan, step, pictured),
        *slips,
        *_check(plan, step, unit),
    )


def _begin(plan: SewingPlan, step: PlanStep, joins: tuple[PlanJoin, ...], pictured: bool) -> tuple[str, ...]:
    lies = () if pictured else where_lie(plan, step, joins)
    if step.kind is JoinKind.PARTIAL_FINISH:
        return (words.FINISH_PART,)
    if len(joins[0].units) == 1:
        return (words.CLOSE_RING,)
    marked = (words.MARK_MATCH_POINTS,) if _has_match_points(joins) else ()
    if len(joins) > 1 and step.kind is not JoinKind.SET_IN:
        locking = (words.LOCK_SEAMS,) if any(_match(plan, join) == words.LOCK_SEAMS for join in joins) else ()
        laid = words.lay_out(_order(plan, joins)) if pictured else lay_out(_whole_order(plan, joins))
        return *marked, laid, *lies, words.JOIN_IN_ORDER, *locking
    first, second = (spoken(plan, name) for name in joins[0].units)
    taken = words.take_two(two_of(plan, joins[0].units[0])) if first == second else words.take(first, second)
    return *marked, taken, *lies, *(() if step.kind is JoinKind.CURVED else (_match(plan, joins[0]),))


def _order(plan: SewingPlan, joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    """Return what lies beside what, where equal pieces lie apart; elsewhere the list of parts is in that order."""
    order = _whole_order(plan, joins)
    together = len(list(groupby(order))) == len(set(order))
    return () if together or len(order) > LONGEST_ORDER else order


def _whole_order(plan: SewingPlan, joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    return tuple(listed(plan, unit) for unit in (joins[0].units[0], *(join.units[-1] for join in joins)))


def _match(plan: SewingPlan, join: PlanJoin) -> str:
    inner = set(_inner_junctions(plan, join))
    if not inner or join.pivots:
        return words.MATCH_EDGES
    return words.LOCK_SEAMS if inner & set(plan.pressing.locked) else words.MATCH_SEAMS


def _has_match_points(joins: tuple[PlanJoin, ...]) -> bool:
    return any(join.pivots or join.start_stops or join.end_stops for join in joins)


def _stops(plan: SewingPlan, joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    """Say what goes in where a seam stops, once for each thing."""
    said: dict[str, None] = {}
    for stop in (stop for join in joins for stop in join.stops):
        finish = words.finished_at if stop.resumes else words.seam_finished_at
        said[words.goes_in(spoken(plan, stop.unit), stop.step) if stop.unit else finish(stop.step)] = None
    return tuple(said)


def _needle(plan: SewingPlan, step: PlanStep, unit: LengthUnit) -> tuple[str, ...]:
    if step.kind is not JoinKind.SET_IN or step.needle.patches == 1:
        return ()
    grown = any(join.makes == step.needle.unit for join in step.joins)
    largest = words.WORK_SO_FAR if grown else spoken(plan, step.needle.unit)
    return (words.largest_piece(largest, say_oblong(step.needle.size, unit)),)


def _sew(
    plan: SewingPlan, step: PlanStep, joins: tuple[PlanJoin, ...], unit: LengthUnit, pictured: bool
) -> tuple[str, ...]:
    match step.kind:
        case JoinKind.SET_IN:
            return _set_in(joins)
        case JoinKind.CURVED:
            return (*_curve_sides(plan, joins[0]), words.MARK_QUARTERS, words.PIN_CURVE, words.SEW_CURVE)
        case JoinKind.PARTIAL:
            return *((words.PART_ONLY,) if pictured else part_sewn(joins[0], unit)), words.LEAVE_OPEN
        case JoinKind.PARTIAL_FINISH:
            return words.SEW_ON, words.STOP_AT_DOT if joins[0].end_stops else words.END_AT_RAW
        case JoinKind.STRAIGHT:
            return _straight(joins)


def _curve_sides(plan: SewingPlan, join: PlanJoin) -> tuple[str, ...]:
    if join.curve is None:
        return ()
    return (words.curve_sides(spoken(plan, join.curve.convex), spoken(plan, join.curve.concave)),)


def _straight(joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    if len({(join.start_stops, join.end_stops) for join in joins}) > 1:
        return (words.MARKS["stop"], words.MARKS["raw edge"])
    starts, ends = joins[0].start_stops, joins[0].end_stops
    if not starts and not ends:
        return (words.RAW_TO_RAW,)
    if starts and ends:
        return words.START_AT_DOT, words.STOP_AT_DOT
    return words.START_AT_RAW, words.STOP_AT_DOT


def _set_in(joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    first = joins[0]
    return (
        words.START_AT_DOT if first.start_stops else words.START_AT_RAW,
        words.TO_PIVOT,
        words.KEEP_CLEAR,
        words.TURN_AT_PIVOT,
        *((words.EACH_PIVOT,) if len(first.pivots) > 1 else ()),
        words.STOP_AT_DOT if first.end_stops else words.END_AT_RAW,
        *((words.SET_IN_EACH,) if len(joins) > 1 else ()),
    )


def _press(plan: SewingPlan, step: PlanStep, joins: tuple[PlanJoin, ...], pictured: bool) -> tuple[str, ...]:
    pressed = [item for join in joins for item in join.press]
    if not pressed:
        return ()
    spun, locks = _spins(joins), _locks(step.joins)
    toward = {item.toward for item in pressed}
    if toward == {None}:
        return *spun, words.PRESS_OPEN, *locks
    seams = len(joins) + sum(len(join.pivots) for join in joins)
    what = _common(plan, pressed) if None not in toward and not spun else ""
    if what:
        return *spun, words.press_toward(what, seams), *locks
    return *spun, *((words.PRESS_ARROWS,) if pictured else presses(plan, joins)), *locks


def _common(plan: SewingPlan, pressed: list[Pressed]) -> str:
    under = [item.toward for item in pressed if item.toward is not None]
    over = [_other_side(plan, item) for item in pressed]
    labels = plan.labels
    names = {labels[patch] for patch in under}
    if len(names) == 1 and not names & {labels[patch] for patch in over}:
        return the(labels[under[0]])
    patches = plan.block.patches
    fabrics = {patches[patch].fabric for patch in under}
    if len(fabrics) == 1 and not fabrics & {patches[patch].fabric for patch in over}:
        fabric = plan.block.fabric(patches[under[0]].fabric)
        return words.the_fabric(fabric.title or fabric.id)
    return ""


def _other_side(plan: SewingPlan, item: Pressed) -> int:
    segment = plan.graph.segments[item.segment]
    return segment.left if segment.right == item.toward else segment.right


def _locks(joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    steps = tuple(sorted({lock.step for join in joins for lock in join.locks}))
    return (words.will_lock(steps),) if steps else ()


def _spins(joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    spins = [spin for join in joins for spin in join.spins]
    if not spins:
        return ()
    senses = {str(spin.sense) for spin in spins}
    turning = words.TURNING_BACK[senses.pop()] if len(senses) == 1 else words.TURNING_BOTH
    undone = tuple(sorted({step for spin in spins for step in spin.undone}))
    return words.spin_junctions(undone, turning, len(spins) > 1)


def _inner_junctions(plan: SewingPlan, join: PlanJoin) -> tuple[int, ...]:
    path = plan.assembly.joins[join.index].path[:-1]
    segments = ((plan.graph.segments[step.segment], step.forward) for step in path)
    return tuple(segment.end if forward else segment.start for segment, forward in segments)


def _check(plan: SewingPlan, step: PlanStep, unit: LengthUnit) -> tuple[str, ...]:
    what = spoken(plan, step.makes[0])
    return (
        words.comes_out(what) if step.measures is None else words.must_measure(say_oblong(step.measures, unit), what),
    )
