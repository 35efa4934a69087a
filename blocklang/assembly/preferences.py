"""What quilters prefer among orders with the fewest pivots and partial seams, in order: the first difference counts.

Nothing else chooses between two ways to take a unit apart (docs/sewing-order.md). Less is better in every field.
"""

from collections.abc import Sequence
from dataclasses import astuple, dataclass
from enum import StrEnum
from typing import TypeVar


class Why(StrEnum):
    """Why a unit is put together as it is: the first thing in which the next best way is worse."""

    ONLY_WAY = "only-way"  # there is no other way that is as easy
    ASKED = "asked"  # the author says so
    FINISHED_UNITS = "finished-units"  # the seam starts in an inner corner, where two finished units meet
    ROUND_A_BODY = "round-a-body"  # equal pieces sewn round one middle piece
    EASY_TO_MEASURE = "easy-to-measure"  # the units are rectangles
    FEW_KINDS = "few-kinds"  # fewer different units
    LONG_ROW = "long-row"  # more pieces in one row
    FEW_JOINS = "few-joins"  # fewer units in the last joins
    ROWS_FIRST = "rows-first"  # rows before columns
    FEW_PIVOTS = "few-pivots"
    SMALL_SET_IN = "small-set-in"  # the piece that is set in is small
    FEW_TURNS = "few-turns"  # the seam of the piece turns less often
    OUTSIDE_LAST = "outside-last"  # pieces on the outside go in last
    MANY_AT_ONCE = "many-at-once"  # more equal pieces in one step
    FIRST_IN_FILE = "first-in-file"  # other ways are as good: the one that comes first in the file
    RING = "ring"  # strips run round in a ring, so one seam is finished last


@dataclass(frozen=True, slots=True, order=True)
class RowCost:
    """What it costs to take a unit apart by parallel straight cuts."""

    against_author: int
    awkward: int  # 1 when a unit of the row is not a rectangle
    new_kinds: int  # different units that are not made anyway
    parts: int  # minus the parts in the row
    joins: int
    columns: int  # 1 when the cuts are upright

    @staticmethod
    def reasons() -> tuple[Why, ...]:
        """Return what is said for each field."""
        return Why.ASKED, Why.EASY_TO_MEASURE, Why.FEW_KINDS, Why.LONG_ROW, Why.FEW_JOINS, Why.ROWS_FIRST


@dataclass(frozen=True, slots=True, order=True)
class SetInCost:
    """What it costs to set pieces in last."""

    spare_pivots: int
    size: int  # patches in the smaller of the two units, less one
    bends: int
    inside: int  # 1 when the piece has no edge on the outside of the block
    outside_edges: int
    count: int  # minus the equal pieces that go in at once
    place: int

    @staticmethod
    def reasons() -> tuple[Why, ...]:
        """Return what is said for each field."""
        outside = Why.OUTSIDE_LAST
        return (
            Why.FEW_PIVOTS, Why.SMALL_SET_IN, Why.FEW_TURNS, outside, outside, Why.MANY_AT_ONCE, Why.FIRST_IN_FILE,
        )  # fmt: skip


Cost = TypeVar("Cost", RowCost, SetInCost)


def why_best(costs: Sequence[Cost]) -> Why:
    """Return in what the cheapest of several is better than the next that is not as good."""
    best, *others = sorted(costs)
    for other in others:
        pairs = zip(best.reasons(), astuple(best), astuple(other), strict=True)
        reason = next((why for why, one, two in pairs if one != two), Why.FIRST_IN_FILE)
        if reason is not Why.FIRST_IN_FILE:
            return reason
    return Why.FIRST_IN_FILE if others else Why.ONLY_WAY
