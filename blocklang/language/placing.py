"""Place one block in another: find its file, draw it, and lay it down with its fabrics."""

from collections.abc import Callable
from dataclasses import replace
from typing import NamedTuple, Protocol

from blocklang.block import Credit, Fabric
from blocklang.diagnostics import Diagnostic, Related, Severity, SourceText
from blocklang.language.arithmetic import angle, length
from blocklang.language.cells import BUILT_IN_CELLS, Cell
from blocklang.language.drawing import Drawing, DrawnPatch, Motion, copied, extents, turning
from blocklang.language.quantities import Exact
from blocklang.language.scope import Draft, Scope
from blocklang.language.spots import locate
from blocklang.language.syntax import BlockFile, PlaceLine, Swap, Word
from blocklang.limits import DEEPEST_PLACING, MOST_FABRICS, SMALLEST_LENGTH

Frame = tuple[Exact, Exact, Exact, Exact]


class Finder(Protocol):
    """Where placed blocks come from."""

    def find(self, name: str, placing: SourceText) -> "SourceText | Diagnostic | None":
        """Return the text of a block placed by name from a file, why it must not be read, or None when there is none."""
        ...

    def names(self) -> tuple[str, ...]:
        """Return the names that can be placed, for suggestions."""
        ...


class NoFinder:
    """Finds nothing, where no library is at hand."""

    def find(self, name: str, placing: SourceText) -> None:
        """Return nothing."""

    def names(self) -> tuple[str, ...]:
        """Return no names."""
        return ()


class Placed(NamedTuple):
    """A block that can be placed: what it draws, its bounds (least x and y, greatest x and y) and its fabrics."""

    drawing: Drawing
    frame: Frame
    fabrics: tuple[Fabric, ...]
    credits: tuple[Credit, ...]

    @property
    def width(self) -> Exact:
        """How wide it is drafted, in inches."""
        return self.frame[2] - self.frame[0]

    @property
    def height(self) -> Exact:
        """How high it is drafted, in inches."""
        return self.frame[3] - self.frame[1]


DrawFile = Callable[[BlockFile, "Placements"], "tuple[Placed | None, tuple[Diagnostic, ...]]"]


class Placements:
    """The blocks placed so far and the files that are being drawn; each file is read and drawn once."""

    def __init__(self, finder: Finder, more_cells: Callable[[], tuple[Cell, ...]], draw: DrawFile) -> None:
        """Begin with no block opened."""
        self._finder = finder
        self._more_cells = more_cells
        self._draw = draw
        self._cells = {cell.name: cell for cell in BUILT_IN_CELLS}
        self._asked = False
        self._open: dict[str, Placed | None] = {}
        self.ring: list[str] = []

    def cell(self, name: str) -> Cell | None:
        """Return the cell of a name, and ask for more cells only when it is not built in."""
        if name not in self._cells and not self._asked:
            self._asked = True
            self._cells = {cell.name: cell for cell in self._more_cells()} | self._cells
        return self._cells.get(name)

    def cell_names(self) -> tuple[str, ...]:
        """Return the names of all cells."""
        return tuple(self._cells)

    def open(self, draft: Draft, word: Word) -> Placed | None:
        """Return a block placed by name; None when a mistake has been reported."""
        source = self._finder.find(word.text, draft.source)
        if not isinstance(source, SourceText):
            self._not_found(draft, word, source)
            return None
        if source.name in self.ring:
            self._circle(draft, word, source)
            return None
        if len(self.ring) >= DEEPEST_PLACING:
            found = f"Blocks are placed in blocks at most {DEEPEST_PLACING} deep."
            draft.error("too-deep", "These blocks are placed too deep", found, "", word[1:])
            return None
        if source.name not in self._open:
            self._open[source.name] = self._drawn(draft, word, source)
        return self._open[source.name]

    def _drawn(self, draft: Draft, word: Word, source: SourceText) -> Placed | None:
        from blocklang.language.parsing import parse

        parsed = parse(source)
        diagnostics, placed = parsed.diagnostics, None
        if parsed.tree is not None:
            placed, diagnostics = self._draw(parsed.tree, self)
        here = Related(draft.span(*word[1:]), "It is placed here.")
        for found in diagnostics:
            if found.severity is Severity.ERROR:
                related = (*found.related, here)
                draft.report(
                    Diagnostic(found.code, found.severity, found.title, found.found, found.advice, found.span, related)
                )
                placed = None
        return placed

    def _not_found(self, draft: Draft, word: Word, problem: Diagnostic | None) -> None:
        from blocklang.language.suggesting import did_you_mean

        if problem is not None:
            draft.error(problem.code, problem.title, problem.found, problem.advice, word[1:])
            return
        advice = did_you_mean(word.text, self._finder.names())
        found = f"There is no block called `{word.text}`."
        draft.error("unknown-block", "This block is not in the library", found, advice, word[1:])

    def _circle(self, draft: Draft, word: Word, source: SourceText) -> None:
        ring = [*self.ring[self.ring.index(source.name) :], source.name]
        found = f"The files place each other in a circle: {' → '.join(ring)}."
        draft.error("circle-of-files", "A block cannot hold itself", found, "Take one of them out.", word[1:])


def draw_place(scope: Scope, line: PlaceLine) -> None:
    """Put down a block placed by name."""
    declared = scope.declare(line.name, "patch")
    spot = locate(scope, line.spot)
    placed = scope.draft.placements.open(scope.draft, line.block)
    if not declared or spot is None or placed is None:
        scope.broken = True
        return
    motion = _motion(scope, line, placed)
    if motion is None:
        scope.broken = True
        return
    left, low, right, high = placed.frame
    corners = [motion.place(corner) for corner in ((left, low), (right, low), (right, high), (left, high))]
    x, y, _, _ = extents(corners)
    motion = motion._replace(e=motion.e + spot[0] - x, f=motion.f + spot[1] - y)
    place_drawn(scope, placed, motion, line.name.text, line.swaps, (line.start, line.end))


def _motion(scope: Scope, line: PlaceLine, placed: Placed) -> Motion | None:
    """Return the scale, flip and turn of a placed block, not yet shifted to where it belongs."""
    scale: Exact = 1 + 0 * placed.width
    for size in line.sizes:
        width = length(scope, size)
        if width is None or width < SMALLEST_LENGTH:
            if width is not None:
                found = f"A block is at least {SMALLEST_LENGTH} in wide."
                scope.draft.error("size-too-small", "This size cannot be used", found, "", size[-2:])
            return None
        scale = width / placed.width
    degrees: Exact = 0 * scope.draft.inches
    for turn in line.turns:
        said = angle(scope, turn)
        if said is None:
            return None
        degrees = said
    a, b, c, d, _, _ = turning((degrees * 0, degrees * 0), degrees)
    flip = -scale if line.mirrored else scale
    return Motion(a * flip, b * scale, c * flip, d * scale)


def place_drawn(
    scope: Scope, placed: Placed, motion: Motion, name: str, swaps: tuple[Swap, ...], at: tuple[int, int]
) -> None:
    """Lay a block down under a placement's name."""
    if not scope.has_room(len(placed.drawing.patches), at):
        return
    fabrics = _fabrics(scope, placed, name, swaps, at)
    if fabrics is None:
        scope.broken = True
        return
    drawn = copied(placed.drawing, motion, lambda inner: f"{name}.{inner}")
    drawn.patches = [_in_placement(patch, name, fabrics) for patch in drawn.patches]
    for credit in placed.credits:
        scope.draft.placed_credits[credit] = None
    scope.units[name] = tuple(patch.id for patch in drawn.patches)
    scope.absorb(drawn, at)


def _in_placement(patch: DrawnPatch, name: str, fabrics: dict[str, str]) -> DrawnPatch:
    inner = (patch.group[0].removeprefix(f"{name}."), *patch.group[1:]) if patch.group else ()
    return patch._replace(
        name=f"{name}.{patch.name}",
        fabric=fabrics[patch.fabric],
        stripes=tuple(fabrics[stripe] for stripe in patch.stripes),
        group=(name, *inner),
    )


def _fabrics(
    scope: Scope, placed: Placed, name: str, swaps: tuple[Swap, ...], at: tuple[int, int]
) -> dict[str, str] | None:
    """Return which fabric of the outer block stands for each fabric of the placed one."""
    chosen: dict[str, str] = {}
    theirs = {fabric.id for fabric in placed.fabrics}
    for swap in swaps:
        ours = scope.draft.fabric(swap.ours)
        if swap.theirs.text not in theirs:
            from blocklang.language.suggesting import did_you_mean

            found = f"The placed block has no fabric called `{swap.theirs.text}`."
            advice = did_you_mean(swap.theirs.text, theirs, f"It has: {', '.join(sorted(theirs))}.")
            scope.draft.error("unknown-fabric", "This fabric is not known", found, advice, swap.theirs[1:])
            return None
        if ours is None:
            return None
        chosen[swap.theirs.text] = ours
    for fabric in placed.fabrics:
        if fabric.id not in chosen:
            chosen[fabric.id] = _adopted(scope.draft, fabric, name)
    if len(scope.draft.fabrics) > MOST_FABRICS:
        found = f"With this block there are more than {MOST_FABRICS} fabrics."
        scope.draft.error("too-many-fabrics", "There are too many fabrics", found, "", at)
        return None
    return chosen


def _adopted(draft: Draft, fabric: Fabric, name: str) -> str:
    """Return the fabric of the outer block that a placed fabric becomes: its namesake, its equal, or itself."""
    if fabric.id in draft.fabric_places:
        draft.used.add(fabric.id)
        return fabric.id
    kept = replace(fabric, id=f"{name}.{fabric.id}", title=fabric.title or fabric.id)
    for known in draft.fabrics.values():
        if known.id not in draft.fabric_places and _look(known) == _look(kept):
            return known.id
    draft.fabrics[kept.id] = kept
    return kept.id


def _look(fabric: Fabric) -> tuple[str, str, str, str]:
    return fabric.role, fabric.value.value, fabric.colour, fabric.title
