"""The whole library with facts about each block, from the index where a file is as it was, worked out otherwise."""

from typing import NamedTuple

from blocklang.catalogue.facts import Facts
from blocklang.catalogue.index import Index, Known, Stamp, index_path
from blocklang.cli.waiting import working
from blocklang.cli.walking import Walk
from blocklang.diagnostics import SourceText
from blocklang.library import SUFFIX, Entry


class Listed(NamedTuple):
    """A block of the library; `facts` is None when its file has mistakes."""

    entry: Entry
    facts: Facts | None


def catalogue(walk: Walk) -> list[Listed]:
    """Return every block of the library by name; what is worked out is kept even when the person stops it half-way."""
    index = Index.load(index_path())
    entries = walk.library.everything()
    _stamp_packs(walk, index)

    def leads(name: str, path: str) -> bool:
        return name.endswith(SUFFIX) or walk.library.leads(name, path)

    with _saving(index):
        listed = {name: Listed(entry, index.fresh(str(entry.path), leads)) for name, entry in entries.items()}
        new = [one.entry for one in listed.values() if one.facts is None]
        if new:
            with working("Reading the library"):
                listed |= {entry.name: Listed(entry, _facts(entry, walk, index)) for entry in new}
    return [listed[name] for name in sorted(listed)]


class _saving:  # noqa: N801 - reads as a phrase: with _saving(index)
    def __init__(self, index: Index) -> None:
        self.index = index

    def __enter__(self) -> None:
        pass

    def __exit__(self, *_: object) -> None:
        self.index.save()


def _stamp_packs(walk: Walk, index: Index) -> None:
    """Let the checksums that a pack was read with stand for its files."""
    for pack in walk.library.open_packs():
        for block in pack.blocks:
            index.put_stamp(pack.shown(block), Stamp(len(block.data), 0, block.sha256))


def _facts(entry: Entry, walk: Walk, index: Index) -> Facts | None:
    from blocklang.assembly import assemble
    from blocklang.catalogue.working_out import facts_of
    from blocklang.graph import build_graph
    from blocklang.packs.gathering import read_with_placed

    source = walk.library.read(entry.path)
    if not isinstance(source, SourceText):
        return None
    read = read_with_placed(source, walk.library, walk.plugged.cells)
    graph = None if read.block is None or read.has_errors else build_graph(read.block).graph
    assembly = None if graph is None else assemble(graph).assembly
    if assembly is None:
        return None
    facts = facts_of(assembly)
    stamp = index.stamp(str(entry.path))
    placed = [(name, text.name, index.stamp(text.name)) for _, name, text in read.found]
    if stamp is not None and all(one is not None for *_, one in placed):
        index.learn(str(entry.path), Known(stamp, facts, tuple((a, b, c) for a, b, c in placed if c is not None)))
    return facts
