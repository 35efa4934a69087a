"""Assembly as frozen values: units, joins, steps and what is proven about them."""

from dataclasses import dataclass
from enum import StrEnum

from blocklang.assembly.preferences import Why
from blocklang.graph.values import PatchGraph


class JoinKind(StrEnum):
    """What the needle does in a join."""

    STRAIGHT = "straight"
    SET_IN = "set-in"
    PARTIAL = "partial"
    PARTIAL_FINISH = "partial-finish"
    CURVED = "curved"


@dataclass(frozen=True, slots=True)
class Travelled:
    """A seam segment in a join's path, and whether it is travelled from its start to its end."""

    segment: int
    forward: bool


@dataclass(frozen=True, slots=True)
class Join:
    """Two units sewn along one connected path, or one unit closed along the rest of a partial seam.

    A unit number below the number of patches is that lone patch; joins make the numbers from there on, in order.
    `path` runs so that `units[0]` lies on its left. `start_stops` / `end_stops`: the seam stops an allowance short
    there (otherwise it runs to the raw edge). `pivots` are junctions at inner points of the path where it bends.
    """

    kind: JoinKind
    units: tuple[int, ...]
    makes: int
    path: tuple[Travelled, ...]
    start_stops: bool
    end_stops: bool
    pivots: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Step:
    """Joins that a teacher tells as one step: equal units made `times` times, each by `len(joins) / times` joins.

    `joins` are indices into `Assembly.joins`, instance after instance; `makes` the finished unit of each instance;
    `why` is in what this way is better than the next best.
    """

    kind: JoinKind
    joins: tuple[int, ...]
    times: int
    makes: tuple[int, ...]
    why: Why = Why.ONLY_WAY


@dataclass(frozen=True, slots=True)
class Count:
    """How many of a costly thing the order needs, the least any order can need, and whether they are equal."""

    count: int
    minimum: int
    proven: bool


@dataclass(frozen=True, slots=True)
class Assembly:
    """A sewing order for the whole block.

    `unit_patches[u]` are the patches of unit u, ascending; `unit_class[u]` is equal for units that are the same
    shape in the same fabrics (turned, never mirrored).
    """

    graph: PatchGraph
    joins: tuple[Join, ...]
    steps: tuple[Step, ...]
    unit_patches: tuple[tuple[int, ...], ...]
    unit_class: tuple[int, ...]
    pivots: Count
    partials: Count
