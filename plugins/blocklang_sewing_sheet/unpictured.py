"""What a step says where there is no picture: where its pieces lie, which part is sewn, which way it is pressed."""

from itertools import groupby

from blocklang_drawing import say_measure

from blocklang.assembly import JoinKind
from blocklang.block import LengthUnit
from blocklang.plan import PlanJoin, PlanStep, SewingPlan
from blocklang_sewing_sheet import where_words, words
from blocklang_sewing_sheet.naming import spoken
from blocklang_sewing_sheet.whereabouts import (
    Heading,
    ends_at,
    length_of,
    lies_from,
    pressed_inward,
    pressed_ways,
    starts_from,
)


def where_lie(plan: SewingPlan, step: PlanStep, joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    """Say where in the block the pieces of a step lie; nothing where they lie all round."""
    ways = [lies_from(plan, join) for join in joins]
    if ways[0] is None:
        return ()
    if len(joins) > 1 and step.kind is not JoinKind.SET_IN:
        return (where_words.row_runs(ways[0]),) if len(set(ways)) == 1 else ()
    first, second = (spoken(plan, unit) for unit in joins[0].units)
    return (where_words.one_lies(ways[0]) if first == second else where_words.lies(second, first, ways[0]),)


def part_sewn(join: PlanJoin, unit: LengthUnit) -> tuple[str, ...]:
    """Say which part of a seam a partial seam is: how long, and at which end."""
    end = ends_at(join) if join.start_stops else starts_from(join)
    length = say_measure(round(length_of(join.path)), unit)
    return (where_words.sew_part(length, end),) if end is not None else ()


def presses(plan: SewingPlan, joins: tuple[PlanJoin, ...]) -> tuple[str, ...]:
    """Say which way each seam of a step is pressed, as the work lies in the block."""
    ways = [pressed_ways(plan, join) for join in joins]
    if all(len(way) == 1 for way in ways):
        single = [way[0] for way in ways]
        alike = len(set(single)) == 1
        return (where_words.press_all(single[0], len(ways)) if alike else where_words.press_in_order(single),)
    each = enumerate(zip(ways, joins, strict=True), 1)
    return tuple(_press(plan, number, way, join, len(joins)) for number, (way, join) in each if way)


def _press(plan: SewingPlan, number: int, ways: tuple[Heading, ...], join: PlanJoin, of: int) -> str:
    run = ends_at(join)
    if run is None:
        return where_words.press_round(pressed_inward(plan, join))
    return where_words.press_parts(ways, run) if of == 1 else where_words.press_seam(number, ways, run)


def lay_out(order: tuple[str, ...]) -> str:
    """Say in which order pieces lie beside each other, equal neighbours once with their number."""
    runs = [(name, len(tuple(run))) for name, run in groupby(order)]
    if len(runs) == len(set(order)):
        return where_words.LAY_OUT_AS_LISTED
    return where_words.lay_out(tuple(words.times(name, count) if count > 1 else name for name, count in runs))
