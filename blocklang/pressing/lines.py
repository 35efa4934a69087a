"""The author's own lines about pressing: what each settles, and where two of them disagree."""

from collections.abc import Iterator
from dataclasses import dataclass

from blocklang.block import PressFabricWish, PressWish, SpinSense, SpinWish, Wish
from blocklang.diagnostics import Diagnostic, Severity
from blocklang.geometry.points import same_point
from blocklang.graph.values import OUTSIDE, Junction, PatchGraph, Segment
from blocklang.pressing.crossings import sense
from blocklang.pressing.values import Reason
from blocklang.wording import Saying, listed, say, say_number

#: So many patches, or places, are named one by one.
MOST_NAMES = 4

PressingWish = PressWish | SpinWish | PressFabricWish


@dataclass(frozen=True, slots=True)
class Settled:
    """A seam segment that a line settles: pressed toward its left patch or its right one, open when `left` is None."""

    segment: int
    left: bool | None


@dataclass(frozen=True, slots=True)
class AuthorLine:
    """A line as it is followed: what it settles, and the junction it is about, if it is about one."""

    wish: PressingWish
    settles: tuple[Settled, ...]
    junction: int | None = None


@dataclass(frozen=True, slots=True)
class AuthorLines:
    """All lines as they are followed, a sentence for each two that contradict each other, and warnings of them.

    A line about a fabric gives way to others without a warning: it is about all that no other line settles.
    """

    lines: tuple[AuthorLine, ...]
    clashes: tuple[Reason, ...]
    warnings: tuple[Diagnostic, ...]

    @property
    def settled(self) -> tuple[Settled, ...]:
        """Every segment that a line settles, by segment."""
        return tuple(sorted((s for line in self.lines for s in line.settles), key=lambda s: s.segment))

    @property
    def spins(self) -> tuple[tuple[int, SpinSense], ...]:
        """The junctions that a line spins, or keeps from being spun."""
        return tuple(
            (line.junction, line.wish.sense)
            for line in self.lines
            if isinstance(line.wish, SpinWish) and line.junction is not None
        )


def follow(graph: PatchGraph) -> AuthorLines:
    """Follow the lines: those about one seam before spins, spins before fabrics, the earlier before the later."""
    owners: dict[int, tuple[Settled, PressingWish]] = {}
    spun: dict[int, SpinWish] = {}
    lines: list[AuthorLine] = []
    clashes: list[Reason] = []
    warnings: list[Diagnostic] = []
    by_id = {patch.id: index for index, patch in enumerate(graph.block.patches)}
    for wish in _in_order(graph.block.wishes):
        line = _line(graph, wish, by_id)
        against = _first_clash(graph, line, owners, spun)
        if against is not None:
            clashes.append(against)
            warnings += [_warning(wish, against)] if not isinstance(wish, PressFabricWish) else []
        kept = _what_is_left(line, owners, against is not None)
        if kept is None:
            continue
        owners.update((s.segment, (s, wish)) for s in kept.settles)
        if isinstance(wish, SpinWish) and kept.junction is not None:
            spun[kept.junction] = wish
        lines.append(kept)
    return AuthorLines(tuple(lines), tuple(clashes), tuple(warnings))


def say_line(wish: PressingWish) -> Saying:
    """Return an author's line as it stands in the file, in the words of the language of blocks, with its number."""
    number = wish.span.position()[0]
    match wish:
        case PressWish(patches=(a, b), toward=toward):
            said = f"press {a} {b} " + ("open" if toward is None else f"toward {toward}")
        case PressFabricWish(fabric=fabric, away=away):
            said = f"press {'away from' if away else 'toward'} {fabric}"
        case SpinWish(sense=SpinSense.NONE):
            said = "do not spin"
        case SpinWish(sense=turn):
            said = f"spin {turn}"
    return say("“{line}” (line {number})", line=said, number=number)


def _in_order(wishes: tuple[Wish, ...]) -> Iterator[PressingWish]:
    for kind in (PressWish, SpinWish, PressFabricWish):
        yield from (wish for wish in wishes if isinstance(wish, kind))


def _line(graph: PatchGraph, wish: PressingWish, by_id: dict[str, int]) -> AuthorLine:
    match wish:
        case PressWish():
            return AuthorLine(wish, tuple(_of_seam(graph, wish, by_id)))
        case SpinWish():
            junction = next(j for j in graph.junctions if same_point(j.at, wish.at))
            return AuthorLine(wish, tuple(_of_spin(junction, wish.sense)), junction.index)
        case PressFabricWish():
            return AuthorLine(wish, tuple(_of_fabric(graph, wish)))


def _of_seam(graph: PatchGraph, wish: PressWish, by_id: dict[str, int]) -> Iterator[Settled]:
    one, other = (by_id[name] for name in wish.patches)
    for index in sorted({segment for segment, _ in graph.sides[one]}):
        segment = graph.segments[index]
        if {segment.left, segment.right} == {one, other}:
            toward_left = graph.block.patches[segment.left].id == wish.toward
            yield Settled(index, None if wish.toward is None else toward_left)


def _of_spin(junction: Junction, turn: SpinSense) -> Iterator[Settled]:
    if turn is SpinSense.NONE:
        return
    for end in junction.ends:
        yield Settled(end.segment, (turn is SpinSense.COUNTERCLOCKWISE) == sense(end, True))


def _of_fabric(graph: PatchGraph, wish: PressFabricWish) -> Iterator[Settled]:
    for segment in graph.seams:
        left, right = (_is_of(graph, side, wish.fabric) for side in segment.patches)
        if left != right:
            yield Settled(segment.index, left != wish.away)


def _is_of(graph: PatchGraph, patch: int, fabric: str) -> bool:
    own = graph.block.patches[patch]
    return own.fabric == fabric if own.stripes is None else set(own.stripes.fabrics) == {fabric}


def _first_clash(
    graph: PatchGraph,
    line: AuthorLine,
    owners: dict[int, tuple[Settled, PressingWish]],
    spun: dict[int, SpinWish],
) -> Reason | None:
    if line.junction in spun and isinstance(line.wish, SpinWish) and spun[line.junction].sense is not line.wish.sense:
        return _contradiction(spun[line.junction], line.wish, say("about the same junction"), line.junction)
    for settled in line.settles:
        earlier = owners.get(settled.segment)
        if earlier is not None and earlier[0].left != settled.left:
            where = say("at the seam between {patches}", patches=say_seam(graph, graph.segments[settled.segment]))
            return _contradiction(earlier[1], line.wish, where, line.junction)
    return None


def _warning(left_out: PressingWish, reason: Reason) -> Diagnostic:
    title = "Two lines about pressing contradict each other"
    return Diagnostic("pressing-contradicted", Severity.WARNING, title, str(reason.text), span=left_out.span)


def _contradiction(followed: PressingWish, left_out: PressingWish, where: Saying, junction: int | None) -> Reason:
    return Reason(junction, _say_contradiction(say_line(followed), say_line(left_out), where, left_out))


def _say_contradiction(first: Saying, second: Saying, where: Saying, left_out: PressingWish) -> Saying:
    if isinstance(left_out, PressFabricWish):
        return say(
            "The lines {first} and {second} contradict each other {where}; the first is followed.",
            first=first,
            second=second,
            where=where,
        )
    return say(
        "The lines {first} and {second} contradict each other {where}; the first is followed and the second is left out.",
        first=first,
        second=second,
        where=where,
    )


def _what_is_left(line: AuthorLine, owners: dict[int, tuple[Settled, PressingWish]], clash: bool) -> AuthorLine | None:
    """A line about a fabric still holds for its other seams; any other line holds as a whole or not at all."""
    if clash and not isinstance(line.wish, PressFabricWish):
        return None
    fresh = tuple(settled for settled in line.settles if settled.segment not in owners)
    return AuthorLine(line.wish, fresh, line.junction)


def say_seam(graph: PatchGraph, segment: Segment) -> str:
    """Name the two patches of a seam."""
    return listed(graph.block.patches[patch].id for patch in sorted(segment.patches))


def say_junction(graph: PatchGraph, junction: int) -> str:
    """Name a junction by the patches round it."""
    around = {p for end in graph.junctions[junction].ends for p in graph.segments[end.segment].patches if p != OUTSIDE}
    return listed_some([graph.block.patches[patch].id for patch in sorted(around)])


def listed_some(names: list[str]) -> str:
    """List names; after the first few of them say how many more there are."""
    more = len(names) - MOST_NAMES
    if more <= 0:
        return listed(names)
    return listed((*names[:MOST_NAMES], say_number("{count} more", "{count} more", more)))
