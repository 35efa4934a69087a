"""Trying what a plugin adds to planning: checks, cutting methods, pressing preferences and cells."""

import math
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import TypeVar

from blocklang.cutting import METHODS, Claim, Cutting, CuttingMethod, EqualUnits, Lay, Offer, Piece, cut, with_offers
from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.geometry import TICKS_PER_INCH, Outline
from blocklang.graph.values import Segment
from blocklang.hooks import Check
from blocklang.language import Cell, Overrides
from blocklang.plan import SewingPlan
from blocklang.pressing import PressingPreference
from blocklang.testing.holding import hold

Answer = TypeVar("Answer")
_FIRST_OF_ALL = 1_000_000
_NEARLY = 1 + 1e-6


def try_check(check: Check, plan: SewingPlan) -> tuple[Diagnostic, ...]:
    """Run a check twice, and return what it says."""
    said, again = check.run(plan), check.run(plan)
    told = f"The check `{check.name}` of the block {plan.block.name}"
    right = isinstance(said, tuple) and all(isinstance(one, Diagnostic) for one in said)
    hold(right, f"{told} gives something other than a tuple of diagnostics.")
    hold(said == again, f"{told} says something else the second time.")
    for one in said:
        hold(
            one.code and one.title and one.found, f"{told} has a diagnostic without a code, a title or what was found."
        )
        hold(one.found.endswith("."), f"{told} should say what was found in a sentence: {one.found!r}.")
    return said


@dataclass(slots=True)
class _Watch:
    """Asks a cutting method twice wherever it is asked once, and keeps what it claims and offers."""

    method: CuttingMethod
    claims: list[Claim] = field(default_factory=list)
    offers: list[Offer] = field(default_factory=list)

    def claim(self, outline: Outline, allowance: float, outside: tuple[int, ...]) -> Claim | None:
        claim = self._twice(lambda: self.method.claims(outline, allowance, outside), Claim)
        if claim is not None:
            sound = all(math.isfinite(side) and side > 0 for side in (*claim.cut, *claim.marks))
            hold(sound and claim.yields > 0, f"The cutting method `{self.method.name}` claims {claim}.")
            self.claims.append(claim)
        return claim

    def offer(self, units: EqualUnits) -> Offer | None:
        offer = self._twice(lambda: self.method.offers(units), Offer)
        if offer is not None:
            hold(offer.left_over >= 0, f"`{self.method.name}` offers {offer.title!r}, which makes too few units.")
            self.offers.append(offer)
        return offer

    def _twice(self, ask: Callable[[], Answer | None], kind: type[Answer]) -> Answer | None:
        given, again = ask(), ask()
        name = self.method.name
        right = given is None or isinstance(given, kind)
        hold(right, f"The cutting method `{name}` answers {given!r}; it should be a {kind.__name__} or None.")
        hold(given == again, f"The cutting method `{name}` answers something else the second time.")
        return given


def try_cutting_method(method: CuttingMethod, plan: SewingPlan) -> Cutting:
    """Cut a block with a method that is asked before all others, and return the cutting list.

    Every shape that is cut must be at least as large as the patches that come from it, seam allowances included.
    """
    watch = _Watch(method)
    watched = replace(method, claims=watch.claim, offers=watch.offer, priority=_FIRST_OF_ALL)
    methods = (*METHODS, watched)
    cutting = with_offers(cut(plan.graph, plan.cutting.options, methods), plan.assembly, methods)
    told = f"The cutting method `{method.name}` for the block {plan.block.name}"
    for piece in cutting.pieces:
        if piece.method == method.name and piece.cut:
            shape = _largest(piece)
            needed = piece.yields * piece.outline.area() / TICKS_PER_INCH**2
            hold(
                shape * _NEARLY >= needed, f"{told}: {shape:.3f} square inches cannot hold {needed:.3f} ({piece.name})."
            )
    every = sorted(patch for piece in cutting.pieces for patch in piece.patches)
    hold(every == list(range(len(plan.block.patches))), f"{told} does not cut every patch once.")
    return cutting


def _largest(piece: Piece) -> float:
    """Return the area of what is cut, in square inches; of shapes that taper or have corners cut off, before that."""
    sides = math.prod(side.exact for side in (piece.cut * 2)[:2])
    slanted = piece.lay is Lay.SLANTED and piece.angle is not None
    return sides / math.sin(math.radians(piece.angle or 90.0)) if slanted else sides


def try_pressing_preference(preference: PressingPreference, plan: SewingPlan) -> tuple[float, ...]:
    """Weigh every seam twice and from both sides; return the weights."""
    weights = []
    for seam in plan.graph.seams:
        weight, again = preference.weigh(plan.graph, seam), preference.weigh(plan.graph, seam)
        told = f"The preference `{preference.name}` weighs a seam of the block {plan.block.name}"
        hold(math.isfinite(weight), f"{told} as {weight}.")
        hold(weight == again, f"{told} otherwise the second time.")
        turned = preference.weigh(plan.graph, _turned(seam))
        hold(
            abs(weight + turned) < 1e-3,
            f"{told} as {weight}, and as {turned} from its other side; it should be {-weight}.",
        )
        weights.append(weight)
    return tuple(weights)


def try_cell(cell: Cell) -> None:
    """Draw a cell with every number that matters, and see that its patches fill the cell without a gap."""
    bounds = () if cell.number is None else (cell.least, cell.number, cell.most)
    for number in dict.fromkeys(bounds) if bounds else (None,):
        _try_drawn(cell, number)


def _try_drawn(cell: Cell, number: Fraction | None) -> None:
    from blocklang import route
    from blocklang.library import Library

    names = [f"cloth{index}" for index in range(len(cell.fabrics))]
    fabrics = "".join(f"fabric {name} accent medium #5b93a8\n" for name in names)
    asked = " ".join([*names, *([str(number)] if number is not None else [])])
    text = f'block "A Cell"\nlanguage 1\nsize 6 in\n{fabrics}rows\n  {cell.name}({asked})\nend\n'
    drafted = route.draft(SourceText("cell", text), Overrides(None, ()), Library(), lambda: (cell,))
    checked = route.check(drafted)
    found = "; ".join(one.found for one in checked.diagnostics)
    told = f"The cell `{cell.name}({asked})`"
    hold(not found and checked.graph is not None, f"{told} does not fill its square: {found}")
    drawn = {patch.fabric for patch in checked.graph.block.patches} if checked.graph is not None else set()
    hold(drawn == set(names), f"{told} draws nothing of {' and '.join(sorted(set(names) - drawn))}.")


def _turned(seam: Segment) -> Segment:
    return replace(seam, edge=seam.edge.reversed(), start=seam.end, end=seam.start, left=seam.right, right=seam.left)
