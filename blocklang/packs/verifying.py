"""Verifying a pack: every block read with the pack alone, its patches fitted together, its credits compared."""

from collections.abc import Iterator
from typing import NamedTuple

from blocklang.block import Block, Credit
from blocklang.diagnostics import Diagnostic, Severity, SourceText
from blocklang.diagnostics.snippets import printable
from blocklang.graph import build_graph
from blocklang.packs.faults import broken
from blocklang.packs.finding import PackFinder, text_of
from blocklang.packs.gathering import MoreCells, Read, places_of, read_with_placed
from blocklang.packs.values import Pack, PackedBlock


class Verified(NamedTuple):
    """A pack's blocks as drawn (None for one with errors), in its order, and everything there is to say about them."""

    blocks: tuple[tuple[PackedBlock, Block | None], ...]
    diagnostics: tuple[Diagnostic, ...]


def verify(pack: Pack, more_cells: MoreCells) -> Verified:
    """Check every block of a pack."""
    found: list[Diagnostic] = []
    blocks = []
    for packed in pack.blocks:
        block, diagnostics = _verified(pack, packed, more_cells)
        blocks.append((packed, block))
        found += diagnostics
    return Verified(tuple(blocks), tuple(dict.fromkeys(found)))


def _verified(pack: Pack, packed: PackedBlock, more_cells: MoreCells) -> tuple[Block | None, tuple[Diagnostic, ...]]:
    source = text_of(pack, packed)
    if not isinstance(source, SourceText):
        return None, (source,)
    read = read_with_placed(source, PackFinder(pack), more_cells)
    if read.block is None or read.has_errors:
        return None, read.diagnostics
    graphed = build_graph(read.block)
    about = (*_about_listing(pack, packed, source, read), *_about_credits(pack, packed, read.block))
    diagnostics = (*read.diagnostics, *graphed.diagnostics, *about)
    return (None if graphed.graph is None else read.block), diagnostics


def _about_listing(pack: Pack, packed: PackedBlock, source: SourceText, read: Read) -> Iterator[Diagnostic]:
    if packed.language != read.language or packed.places != places_of(packed.file, source, read):
        found = (
            f"The manifest does not say of `{packed.file}` what the file itself says: its language, or what it places."
        )
        yield broken(pack.name, "listing-differs", found)


def _about_credits(pack: Pack, packed: PackedBlock, block: Block) -> Iterator[Diagnostic]:
    shown = pack.shown(packed)
    if block.credits != packed.credits:
        found = f"The manifest does not credit `{packed.file}` as the file itself does."
        yield broken(pack.name, "credits-differ", found)
    for credit in block.credits:
        lacking = " and ".join(
            what for what, said in (("who made it", credit.author), ("under which licence", credit.licence)) if not said
        )
        if lacking:
            yield Diagnostic(
                "no-credit",
                Severity.WARNING,
                f"“{credit.name}” has no full credit",
                f"`{shown}` does not say {lacking}.",
                'Write a line such as `by "Odile Fenwick" licence CC-BY-4.0`.',
            )


def credit_line(credit: Credit) -> str:
    """Return whom a block is from, under which licence, in one line."""
    by = f"by {credit.author}" if credit.author else "nobody is named"
    licence = credit.licence or "no licence is named"
    return printable(f"{credit.name}, {by}, {licence}" + (f" ({credit.source})" if credit.source else ""))
