"""Names and what they stand for while a file is worked out, and the one place where its mistakes are collected."""

from collections.abc import Iterator
from fractions import Fraction
from typing import TYPE_CHECKING, Union

from blocklang.block import Credit, Fabric, LengthUnit
from blocklang.diagnostics import Diagnostic, Related, Severity, SourceText, Span
from blocklang.language.drawing import Drawing, DrawnPatch, Place
from blocklang.language.quantities import Quantity
from blocklang.language.scanning import KNOWN_VALUES
from blocklang.language.syntax import Number, Operation, Word
from blocklang.limits import MOST_MESSAGES, MOST_PATCHES, MOST_POINTS, MOST_WISHES

if TYPE_CHECKING:
    from blocklang.language.placing import Placements

At = Union[Word, Number, Operation]


class Draft:
    """One file while it is worked out: its fabrics, its size and what is wrong with it."""

    def __init__(self, source: SourceText, placements: "Placements") -> None:
        """Begin with nothing but the text."""
        self.source = source
        self.placements = placements
        self.diagnostics: list[Diagnostic] = []
        self.name = ""
        self.unit = LengthUnit.INCH
        self.inches = Fraction(1)
        self.width = self.height = Quantity(Fraction(12), 1)
        self.fabrics: dict[str, Fabric] = {}
        self.fabric_places: dict[str, Span] = {}
        self.short_names: dict[str, str] = {}
        self.used: set[str] = set()
        self.placed_credits: dict[Credit, None] = {}
        self.written_corners = 0

    def span(self, start: int, end: int) -> Span:
        """Return a place in this file."""
        return Span(self.source, start, end)

    def error(
        self, code: str, title: str, found: str, advice: str, at: tuple[int, int], related: tuple[Related, ...] = ()
    ) -> None:
        """Note a mistake; `at` is where it starts and ends."""
        self.report(Diagnostic(code, Severity.ERROR, title, found, advice, self.span(*at), related))

    def report(self, diagnostic: Diagnostic) -> None:
        """Note something to tell the author, unless there is too much of it already."""
        if len(self.diagnostics) < MOST_MESSAGES and diagnostic not in self.diagnostics:
            self.diagnostics.append(diagnostic)

    @property
    def failed(self) -> bool:
        """Whether the file has errors."""
        return any(diagnostic.severity is Severity.ERROR for diagnostic in self.diagnostics)

    def fabric(self, word: Word) -> str | None:
        """Return the id of the fabric that a word names."""
        found = self.short_names.get(word.text, word.text)
        if found in self.fabrics:
            self.used.add(found)
            return found
        from blocklang.language.suggesting import did_you_mean

        advice = did_you_mean(word.text, (*self.fabrics, *self.short_names), "Declare it with a `fabric` line.")
        self.error(
            "unknown-fabric", "This fabric is not known", f"No fabric is called `{word.text}`.", advice, word[1:]
        )
        return None


class Scope:
    """Names in a file, or in one group of it; what a group declares is not seen outside under its plain name."""

    def __init__(self, draft: Draft, parent: "Scope | None" = None) -> None:
        """Begin with an empty drawing."""
        self.draft = draft
        self.parent = parent
        self.values: dict[str, Quantity | None] = {}
        self.points: dict[str, Place | None] = {}
        self.units: dict[str, tuple[str, ...]] = {}
        self.declared: dict[str, Span] = {}
        self.drawing = Drawing()
        self.patch_ids: set[str] = set()
        self.broken = False

    def chain(self) -> "Iterator[Scope]":
        """Go outward from here."""
        scope: Scope | None = self
        while scope is not None:
            yield scope
            scope = scope.parent

    def declare(self, word: Word, kind: str) -> bool:
        """Say whether a name can be given to something new of a kind, and remember that it was."""
        key = f"{kind} {word.text}"
        if "." in word.text:
            found = f"`{word.text}` has a dot in it, and dots are kept for the numbers of a group."
            self.draft.error("dotted-name", "This cannot be a name", found, "Leave the dot out.", word[1:])
            return False
        if kind in ("value", "point") and word.text in KNOWN_VALUES:
            found = f"`{word.text}` is known already."
            self.draft.error("reserved-word", "This cannot be a name", found, "Choose another name.", word[1:])
            return False
        for scope in self.chain():
            if key in scope.declared:
                first = (Related(scope.declared[key], "It was used first here."),)
                found = f"There is a {kind} called `{word.text}` already."
                self.draft.error("name-taken", "This name is taken", found, "Choose another name.", word[1:], first)
                return False
        self.declared[key] = self.draft.span(*word[1:])
        return True

    def point(self, word: Word) -> Place | None:
        """Return where a named point lies; None when it has been reported."""
        for scope in self.chain():
            if word.text in scope.points:
                return scope.points[word.text]
        fixed = FIXED_POINTS.get(word.text)
        if fixed is not None:
            return fixed[0] * self.draft.width.value, fixed[1] * self.draft.height.value
        if not self.is_broken():
            self._unknown_point(word)
        return None

    def is_broken(self) -> bool:
        """Say whether a group or a placed block near here failed, so that its names are missing."""
        return any(scope.broken for scope in self.chain())

    def _unknown_point(self, word: Word) -> None:
        from blocklang.language.suggesting import did_you_mean

        known = [name for scope in self.chain() for name in scope.points]
        hint = "Points that are always there: sw se ne nw s e n w centre."
        advice = did_you_mean(word.text, (*known, *FIXED_POINTS), hint)
        found = f"No point is called `{word.text}`."
        self.draft.error("unknown-point", "This point is not known", found, advice, word[1:])

    def find_patch(self, name: str) -> bool:
        """Say whether a patch of that id has been drawn."""
        return any(name in scope.patch_ids for scope in self.chain())

    def all_patch_ids(self) -> Iterator[str]:
        """Return the ids of all patches that can be named from here."""
        return (patch.id for scope in self.chain() for patch in scope.drawing.patches)

    def add_patch(self, patch: DrawnPatch, at: tuple[int, int]) -> None:
        """Put one more patch down."""
        if patch.id in self.patch_ids:
            found = f"There is a patch called `{patch.id}` already."
            advice = "Choose another name." if "r1" not in patch.id else "Name the grid: `rows as second`."
            self.draft.error("name-taken", "This name is taken", found, advice, at)
        elif sum(len(scope.drawing.patches) for scope in self.chain()) < MOST_PATCHES or self.has_room(1, at):
            self.patch_ids.add(patch.id)
            self.drawing.patches.append(patch)

    def has_room(self, patches: int, at: tuple[int, int], points: int = 0, wishes: int = 0) -> bool:
        """Say whether that many more fit into a block."""
        drawn = [scope.drawing for scope in self.chain()]
        for count, held, most, what in (
            (patches, (len(drawing.patches) for drawing in drawn), MOST_PATCHES, "patches"),
            (points, (len(drawing.points) for drawing in drawn), MOST_POINTS, "points"),
            (wishes, (len(drawing.wishes) for drawing in drawn), MOST_WISHES, "wishes for the sewing"),
        ):
            if count and count + sum(held) > most:
                found = f"A block has at most {most:,} {what}, and this would be more."
                self.draft.error(f"too-many-{what.split()[0]}", f"There are too many {what}", found, "", at)
                self.broken = True
                return False
        return True

    def absorb(self, drawing: Drawing, at: tuple[int, int]) -> None:
        """Take over a drawing that a group or a placed block has made."""
        if not self.has_room(len(drawing.patches), at, len(drawing.points), len(drawing.wishes)):
            return
        taken = next((patch.id for patch in drawing.patches if patch.id in self.patch_ids), None)
        if taken is not None:
            found = f"There is a patch called `{taken}` already."
            self.draft.error("name-taken", "This name is taken", found, "Choose another name.", at)
            return
        self.patch_ids.update(patch.id for patch in drawing.patches)
        self.drawing.patches += drawing.patches
        self.drawing.points |= drawing.points
        self.points |= drawing.points
        self.drawing.wishes += drawing.wishes


HALF = Fraction(1, 2)
FIXED_POINTS = {
    "sw": (Fraction(0), Fraction(0)),
    "se": (Fraction(1), Fraction(0)),
    "ne": (Fraction(1), Fraction(1)),
    "nw": (Fraction(0), Fraction(1)),
    "s": (HALF, Fraction(0)),
    "e": (Fraction(1), HALF),
    "n": (HALF, Fraction(1)),
    "w": (Fraction(0), HALF),
    "centre": (HALF, HALF),
    "center": (HALF, HALF),
}
