"""The technique `hand-piecing`: every seam to one side, the same one wherever locks allow it, and none open."""

import math

from blocklang.diagnostics import Diagnostic, Severity
from blocklang.graph import PatchGraph
from blocklang.graph.values import Segment
from blocklang.hooks import Check, hookimpl
from blocklang.plan import SewingPlan
from blocklang.pressing import PressingPreference
from blocklang.wording import say

TECHNIQUE = "hand-piecing"

#: More than all the preferences that ship together (8, 4, 2 and 1): a running stitch asks for a side, not for a shade.
_WEIGHT = 16.0
_UPRIGHT = 1e-6  # radians


@hookimpl
def blocklang_pressing_preferences() -> tuple[PressingPreference, ...]:
    """Offer the side that hand-sewn seams go to."""
    summary = say("Press hand-sewn seams all to one side: to the right, and level ones upward.")
    return (PressingPreference(TECHNIQUE, summary, weigh_side, technique=TECHNIQUE),)


@hookimpl
def blocklang_checks() -> tuple[Check, ...]:
    """Offer the rule that nothing is pressed open."""
    return (Check("hand-piecing-open", "Hand-sewn seams are not pressed open.", find_open),)


def weigh_side(_: PatchGraph, segment: Segment) -> float:
    """Weigh toward the side on the right; for a level seam, toward the one above: 16."""
    (x0, y0), (x1, y1) = segment.edge.start, segment.edge.end
    heading = math.atan2(y1 - y0, x1 - x0)
    left_is_right = -math.pi + _UPRIGHT < heading < -_UPRIGHT  # travelling downward, what lies left is on the right
    left_is_above = abs(heading) <= _UPRIGHT
    return _WEIGHT if left_is_right or left_is_above else -_WEIGHT


def find_open(plan: SewingPlan) -> tuple[Diagnostic, ...]:
    """Warn of each seam that is pressed open although the block is pieced by hand."""
    if TECHNIQUE not in plan.pressing.techniques:
        return ()
    patches = plan.block.patches
    pairs = [plan.graph.segments[p.segment].patches for p in plan.pressing.directions if p.toward is None]
    names = dict.fromkeys(tuple(sorted((patches[a].id, patches[b].id))) for a, b in pairs)
    return tuple(_open(one, other) for one, other in names)


def _open(one: str, other: str) -> Diagnostic:
    return Diagnostic(
        "hand-piecing-open",
        Severity.WARNING,
        "A hand-sewn seam is pressed open",
        f"The seam between `{one}` and `{other}` is pressed open; the wadding comes through a running stitch there.",
        "Press it to one side.",
    )
