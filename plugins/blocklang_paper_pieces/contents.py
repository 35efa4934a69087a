"""What the pages of papers say, before they are laid out: the same for every format."""

from collections import Counter
from dataclasses import dataclass

from blocklang.paper_piecing import Joining, PaperOrder, PaperShape, Round, offer_papers, order_papers, papers_of
from blocklang.plan import SewingPlan
from blocklang.wording import ENGLISH, Language, joined
from blocklang_paper_pieces import words


@dataclass(frozen=True, slots=True)
class PaperEntry:
    """Equal papers: how many one block takes, what to write on them, and their shape."""

    number: int
    name: str
    count: int
    counted: str
    lines: tuple[str, ...]
    shape: PaperShape


@dataclass(frozen=True, slots=True)
class JoiningEntry:
    """One line of the order: the place in it, the patch, its fabric, and what it is stitched to."""

    place: int
    patch: str
    fabric: str
    joined: str


@dataclass(frozen=True, slots=True)
class RoundEntry:
    """The lines of one round."""

    title: str
    joinings: tuple[JoiningEntry, ...]


@dataclass(frozen=True, slots=True)
class Headings:
    """What stands above the parts, and what the picture shows."""

    subject: str = words.SUBJECT
    glance: str = words.GLANCE
    making: str = words.MAKING
    papers: str = words.PAPERS
    order: str = words.ORDER
    picture: str = words.PICTURE
    columns: tuple[str, ...] = words.COLUMNS
    page_of: str = words.PAGE_OF


@dataclass(frozen=True, slots=True)
class Contents:
    """Everything that is said; `places` gives for each patch its place in the order."""

    name: str
    headings: Headings
    facts: tuple[str, ...]
    making: tuple[str, ...]
    papers: tuple[PaperEntry, ...]
    rounds: tuple[RoundEntry, ...]
    places: tuple[int, ...]


def write_contents(plan: SewingPlan, language: Language = ENGLISH) -> Contents:
    """Return what is said about piecing a block over papers, in a language."""
    order = order_papers(plan.graph)
    places = {joining.patch: place for place, joining in enumerate(order.joinings, 1)}
    papers = papers_of(plan.graph)
    said = Contents(
        name=plan.block.name,
        headings=Headings(),
        facts=_facts(plan, order, papers),
        making=words.making(curved=any(paper.curved for paper in papers)),
        papers=_papers(plan, papers),
        rounds=tuple(_round(plan, each, places) for each in order.rounds),
        places=tuple(places[patch] for patch in range(len(places))),
    )
    return language.tell(said)


def _facts(plan: SewingPlan, order: PaperOrder, papers: tuple[PaperShape, ...]) -> tuple[str, ...]:
    offer = offer_papers(plan.assembly)
    return offer.reason, words.counted_papers(len(plan.block.patches), len(papers)), words.counted_edges(order.edges)


def _papers(plan: SewingPlan, papers: tuple[PaperShape, ...]) -> tuple[PaperEntry, ...]:
    found = []
    for number, paper in enumerate(papers, 1):
        patches = frozenset(paper.patches)
        names = dict.fromkeys(piece.name for piece in plan.cutting.pieces if patches.intersection(piece.patches))
        fabrics = Counter(words.cloth(plan, patch) for patch in paper.patches)
        lines = tuple(words.fabric_patches(count, cloth) for cloth, count in fabrics.items())
        found.append(
            PaperEntry(
                number, joined(names, ", "), len(paper.patches), words.paper_count(len(paper.patches)), lines, paper
            )
        )
    return tuple(found)


def _round(plan: SewingPlan, each: Round, places: dict[int, int]) -> RoundEntry:
    entries = tuple(_joining(plan, joining, places) for joining in each.joinings)
    return RoundEntry(words.round_title(each.number, len(entries)), entries)


def _joining(plan: SewingPlan, joining: Joining, places: dict[int, int]) -> JoiningEntry:
    patch = plan.block.patches[joining.patch]
    others = tuple(places[other] for other in joining.neighbours)
    told = words.joined_to(others, len(joining.edges), len(joining.folds))
    return JoiningEntry(places[joining.patch], patch.id, words.cloth(plan, joining.patch), told)
