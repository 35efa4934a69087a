"""The cutting list as words, fabric by fabric: what the formats have in common."""

from dataclasses import dataclass

from blocklang_drawing import say_role

from blocklang.block import LengthUnit
from blocklang.cutting import (
    FabricNeed,
    describe_need,
    describe_offer,
    describe_piece,
    describe_strip_set,
    format_measure,
)
from blocklang.hooks import OutputOptions
from blocklang.plan import SewingPlan
from blocklang_cutting_list import words


@dataclass(frozen=True, slots=True)
class Cut:
    """One kind of piece: how it is cut, and what its sizes come out at where a mark on the ruler is not the same."""

    name: str
    sentence: str
    exactly: str


@dataclass(frozen=True, slots=True)
class Entry:
    """One fabric: what to buy, its strips, and a sentence for each kind of piece."""

    id: str
    title: str
    role: str
    buy: str
    strips: tuple[str, ...]
    pieces: tuple[Cut, ...]


@dataclass(frozen=True, slots=True)
class OtherWay:
    """Another way to cut and sew some units: its title and its sentences."""

    title: str
    units: str
    sentences: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Headings:
    """What stands above the parts, and what is always said."""

    title: str = words.TITLE
    strip_sets: str = words.STRIP_SETS
    notes: str = words.NOTES
    other_ways: str = words.OTHER_WAYS
    other_ways_are: str = words.OTHER_WAYS_ARE
    blade: str = words.BLADE


@dataclass(frozen=True, slots=True)
class Listing:
    """The whole list."""

    name: str
    page: str
    headings: Headings
    made_for: str
    entries: tuple[Entry, ...]
    strip_sets: tuple[str, ...]
    notes: tuple[str, ...]
    other_ways: tuple[OtherWay, ...]


def list_cutting(plan: SewingPlan, options: OutputOptions) -> Listing:
    """Return the list of a plan, in the language that is asked for."""
    cutting, unit = plan.cutting, options.unit
    made_for = words.for_copies(cutting.options, unit)
    sets = tuple(describe_strip_set(made, unit) for made in cutting.strip_sets)
    entries = tuple(_entry(plan, need, unit) for need in cutting.needs)
    ways = tuple(OtherWay(offer.title, words.units(offer), describe_offer(offer, unit)) for offer in cutting.offers)
    return options.language.tell(
        Listing(plan.block.name, words.page(plan.block.name), Headings(), made_for, entries, sets, cutting.notes, ways)
    )


def _entry(plan: SewingPlan, need: FabricNeed, unit: LengthUnit) -> Entry:
    fabric = plan.block.fabric(need.fabric)
    pieces = (p for p in plan.cutting.pieces if p.fabric == need.fabric)
    return Entry(
        id=fabric.id,
        title=fabric.title or fabric.id,
        role=say_role(fabric),
        buy=describe_need(need, plan.cutting.options, unit),
        strips=tuple(words.strips(count, format_measure(width, unit)) for width, count in need.strips),
        pieces=tuple(Cut(piece.name, describe_piece(piece, unit), words.exactly(piece, unit)) for piece in pieces),
    )
