"""Syntax tree to block: every name, length, group and placed block worked out."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from fractions import Fraction

from blocklang.block import Block, LengthUnit
from blocklang.diagnostics import Diagnostic, Severity
from blocklang.geometry import to_inches
from blocklang.language.cells import Cell
from blocklang.language.drawing import Drawing, Shape, extents
from blocklang.language.finishing import finish
from blocklang.language.groups import draw_items
from blocklang.language.headings import Headings, read_headings
from blocklang.language.placing import Finder, Frame, NoFinder, Placed, Placements
from blocklang.language.quantities import Exact
from blocklang.language.scope import Draft, Scope
from blocklang.language.snapping import snapped_outline
from blocklang.language.syntax import BlockFile


@dataclass(frozen=True, slots=True)
class Overrides:
    """What the person asks for instead of what the file says.

    `size` is a width as people write it ("6 1/2 in"); `fabrics` pairs a fabric's name or a role with a colour; `unit`
    is what lengths are shown in, and what a bare number in `size` means.
    """

    size: str | None = None
    fabrics: tuple[tuple[str, str], ...] = ()
    unit: LengthUnit | None = None


@dataclass(frozen=True, slots=True)
class Evaluated:
    """A block; `block` is None when the file has errors."""

    block: Block | None
    diagnostics: tuple[Diagnostic, ...]


NO_OVERRIDES = Overrides()


def evaluate(
    tree: BlockFile,
    *,
    overrides: Overrides = NO_OVERRIDES,
    finder: Finder | None = None,
    more_cells: Callable[[], tuple[Cell, ...]] = tuple,
) -> Evaluated:
    """Return the block that a file describes, or everything that is wrong with it."""
    placements = Placements(finder or NoFinder(), more_cells, _draw_placed)
    placements.ring.append(tree.source.name)
    drawn = Drawn(tree, placements)
    draft = drawn.draft
    scale: Exact = Fraction(1)
    unit = overrides.unit
    if overrides != NO_OVERRIDES:
        from blocklang.language.overriding import override_fabrics, override_size, unit_written

        unit = unit or unit_written(overrides.size or "")
        override_fabrics(draft, overrides.fabrics)
        scale = override_size(draft, overrides.size, overrides.unit)
    if draft.failed:
        return Evaluated(None, tuple(draft.diagnostics))
    left, low, _, _ = drawn.frame()
    outline = None if drawn.covers else drawn.outline
    block = finish(draft, drawn.headings, drawn.scope.drawing, outline, (left, low), scale)
    _warn_of_unused(draft)
    if block is not None and unit is not None:
        block = replace(block, unit=unit)
    return Evaluated(block, tuple(draft.diagnostics))


class Drawn:
    """One file drawn at the size that it is drafted at."""

    def __init__(self, tree: BlockFile, placements: Placements) -> None:
        """Read the headings, then draw line by line."""
        self.draft = Draft(tree.source, placements)
        self.scope = Scope(self.draft)
        self.headings: Headings = read_headings(self.scope, tree)
        draw_items(self.scope, tree.items)
        self.covers = self.headings.outline is not None and not self.headings.outline.steps
        self.outline = self._outline()
        self._check_patches()
        assert self.draft.failed or not self.scope.broken, "what fails is reported"

    def _outline(self) -> Shape | None:
        line = self.headings.outline
        if line is not None and line.steps:
            from blocklang.language.outlines import trace

            return trace(self.scope, line.steps, "outline of the block")
        wide, high = self.draft.width.value, self.draft.height.value
        zero = Fraction(0)
        return Shape(((zero, zero), (wide, zero), (wide, high), (zero, high)))

    def _check_patches(self) -> None:
        if not self.scope.drawing.patches and not self.draft.failed:
            place = self.headings.places["block"]
            found = "The file names a block and draws nothing in it."
            advice = "Add `rows` or a `patch`."
            at = (place.start, place.end)
            self.draft.error("no-patches", "The block has no patches", found, advice, at)

    def frame(self) -> Frame:
        """Return the least x and y and the greatest x and y, in inches."""
        if not self.covers and self.outline is not None:
            return _bounds((self.outline,))
        return _bounds(tuple(patch.shape for patch in self.scope.drawing.patches))


def _bounds(shapes: tuple[Shape, ...]) -> Frame:
    places = [corner for shape in shapes for corner in shape.corners]
    for shape in shapes:
        if shape.bends:
            places += [to_inches(point) for point in snapped_outline(shape).chords()]
    return extents(places)


def _draw_placed(tree: BlockFile, placements: Placements) -> tuple[Placed | None, tuple[Diagnostic, ...]]:
    """Draw a file that another one places."""
    placements.ring.append(tree.source.name)
    drawn = Drawn(tree, placements)
    placements.ring.pop()
    draft = drawn.draft
    if draft.failed:
        return None, tuple(draft.diagnostics)
    drawing = drawn.scope.drawing
    kept = [wish for wish in drawing.wishes if wish.verb not in ABOUT_THE_WHOLE]
    inner = Drawing(drawing.patches, drawing.points, kept)
    credits_ = (drawn.headings.credit, *draft.placed_credits)
    return Placed(inner, drawn.frame(), tuple(draft.fabrics.values()), credits_), ()


#: Wishes that speak of a whole block, and so would speak of too much once it is a part of another one.
ABOUT_THE_WHOLE = ("sew in", "press away", "press toward")


def _warn_of_unused(draft: Draft) -> None:
    for name, span in draft.fabric_places.items():
        if name not in draft.used and not draft.failed:
            found = f"No patch is cut from `{name}`."
            title = "This fabric is not used"
            draft.report(Diagnostic("unused-fabric", Severity.WARNING, title, found, "Take the line out.", span))
