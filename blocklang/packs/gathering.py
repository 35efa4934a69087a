"""Gathering what goes into a pack: the files asked for, and every block that they place."""

import posixpath
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from blocklang.block import Block, Credit
from blocklang.diagnostics import Diagnostic, Severity, SourceText
from blocklang.language import Cell, Finder, evaluate, parse
from blocklang.language.syntax import BlockFile, Heading
from blocklang.limits import MOST_PACK_BLOCKS
from blocklang.packs.faults import refused
from blocklang.packs.file_names import composed, fault_of_name, fault_of_twins
from blocklang.packs.values import BLOCK_SUFFIX, Pack, PackedBlock

MoreCells = Callable[[], tuple[Cell, ...]]


class Read(NamedTuple):
    """A block file read with all it places: `found` has (placing file, name as written, text) for each placing."""

    block: Block | None
    language: int
    found: tuple[tuple[str, str, SourceText], ...]
    diagnostics: tuple[Diagnostic, ...]

    @property
    def has_errors(self) -> bool:
        """Whether one of the diagnostics is an error."""
        return any(one.severity is Severity.ERROR for one in self.diagnostics)


class Gathered(NamedTuple):
    """A pack, or None when one of the files has errors."""

    pack: Pack | None
    diagnostics: tuple[Diagnostic, ...]


@dataclass(slots=True)
class _Listening:
    """A finder that remembers what was found through it."""

    finder: Finder
    found: dict[tuple[str, str], SourceText] = field(default_factory=dict)

    def find(self, name: str, placing: SourceText) -> "SourceText | Diagnostic | None":
        found = self.finder.find(name, placing)
        if isinstance(found, SourceText):
            self.found[placing.name, name] = found
        return found

    def names(self) -> tuple[str, ...]:
        return self.finder.names()


def read_with_placed(source: SourceText, finder: Finder, more_cells: MoreCells) -> Read:
    """Read a block file, and tell every file that it is drawn with."""
    parsed = parse(source)
    if parsed.tree is None:
        return Read(None, 1, (), parsed.diagnostics)
    listening = _Listening(finder)
    evaluated = evaluate(parsed.tree, finder=listening, more_cells=more_cells)
    found = tuple((placing, name, text) for (placing, name), text in listening.found.items())
    return Read(evaluated.block, _language_of(parsed.tree), found, parsed.diagnostics + evaluated.diagnostics)


def _language_of(tree: BlockFile) -> int:
    """Return the version of the language that a file says it is written in; 1 when it does not say."""
    for item in tree.items:
        for line in item if type(item) is tuple else (item,):
            if isinstance(line, Heading) and line.verb == "language" and line.text.text.isdigit():
                return int(line.text.text)
    return 1


def gather(
    name: str, sources: Sequence[SourceText], finder: Callable[[SourceText], Finder], cells: MoreCells
) -> Gathered:
    """Return the pack of these files; each file keeps its own name, and what it places by path keeps its path."""
    gathering = _Gathering()
    for source in sources:
        file = composed(source.name.replace("\\", "/").rpartition("/")[2])
        gathering.take(file, source, finder(source), cells)
    return gathering.packed(name)


@dataclass(slots=True)
class _Gathering:
    files: dict[str, SourceText] = field(default_factory=dict)
    blocks: dict[str, PackedBlock] = field(default_factory=dict)
    diagnostics: list[Diagnostic] = field(default_factory=list)

    def take(self, file: str, source: SourceText, finder: Finder, cells: MoreCells) -> None:
        """Take in a file and, one by one, all that it places."""
        waiting = [(file, source)]
        while waiting:
            file, source = waiting.pop()
            if not self._is_new(file, source):
                continue
            read = read_with_placed(source, finder, cells)
            self.diagnostics += read.diagnostics
            direct = [(_place_of(file, name), text) for placing, name, text in read.found if placing == source.name]
            waiting += direct
            credited = read.block.credits if read.block is not None else (Credit(""),)
            places = places_of(file, source, read)
            self.blocks[file] = PackedBlock(file, source.text.encode(), read.language, credited, places)

    def _is_new(self, file: str, source: SourceText) -> bool:
        """Say whether a file is still to be packed; another file of its name is an error."""
        known = self.files.setdefault(file, source)
        if known.text != source.text:
            found = f"`{known.name}` and `{source.name}` would both be `{file}`."
            self.diagnostics.append(
                refused("twin-names", "Two files of one name cannot be packed", found, "Rename one.")
            )
        return known is source and file not in self.blocks

    def packed(self, name: str) -> Gathered:
        """Return the pack, unless something keeps it from being one."""
        files = sorted(self.blocks)
        faults = [fault for file in files if (fault := fault_of_name(file))]
        faults += [fault] if (fault := fault_of_twins(files)) else []
        if len(files) > MOST_PACK_BLOCKS:
            faults.append(f"A pack holds at most {MOST_PACK_BLOCKS:,} block files.")
        for fault in faults:
            self.diagnostics.append(refused("bad-file-name", "These files cannot be packed", fault, "Rename it."))
        pack = Pack(name, tuple(self.blocks[file] for file in files))
        for block in pack.blocks:
            if pack.by_name[block.name].data != block.data:
                found = f"Two different files are called `{block.name}{BLOCK_SUFFIX}`."
                self.diagnostics.append(
                    refused("twin-names", "Two blocks of one name cannot be packed", found, "Rename one.")
                )
        told = tuple(dict.fromkeys(self.diagnostics))
        bad = any(one.severity is Severity.ERROR for one in told)
        return Gathered(None if bad else pack, told)


def _place_of(file: str, name: str) -> str:
    """Return where in the pack a block lies that `file` places: by its path, or under its name."""
    if not name.endswith(BLOCK_SUFFIX):
        return composed(f"{name}{BLOCK_SUFFIX}")
    return composed(posixpath.normpath(posixpath.join(posixpath.dirname(file), name)))


def places_of(file: str, source: SourceText, read: Read) -> tuple[str, ...]:
    """Return every file that a file is drawn with, those placed by placed blocks too."""
    at = {source.name: file}
    for placing, name, text in read.found:
        at.setdefault(text.name, _place_of(at.get(placing, file), name))
    return tuple(sorted({place for name, place in at.items() if name != source.name}))
