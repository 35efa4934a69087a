"""Finding block files by name: the library's folders in a stated order, and what a file may place.

A name is looked for in the package's own blocks, then in the folders of BLOCKLANG_LIBRARY in the order written, then
in those that plugins offer; the first folder that has it wins. A path with .block at its end is looked for beside the
file that places it. Nothing outside those folders and the folder of the file asked for is ever opened.
"""

import os
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from pathlib import Path

from blocklang.diagnostics import Diagnostic, Severity, SourceText

SUFFIX = ".block"
VARIABLE = "BLOCKLANG_LIBRARY"

MoreFolders = Callable[[], tuple[tuple[str, Path], ...]]


@dataclass(frozen=True, slots=True)
class Shelf:
    """One library folder, and where we know it from."""

    origin: str
    path: Path


@dataclass(frozen=True, slots=True)
class Entry:
    """A block file in the library; its name is its file's name without .block."""

    name: str
    path: Path
    shelf: Shelf


def no_more_folders() -> tuple[tuple[str, Path], ...]:
    """Offer no folders; what a library has that asks no plugins."""
    return ()


def package_blocks() -> Path:
    """Return the folder of the blocks that ship: inside the installed package, or beside it in a source tree."""
    package = Path(__file__).parent
    inside = package / "blocks"
    return inside if inside.is_dir() else package.parent / "blocks"


def own_shelves() -> tuple[Shelf, ...]:
    """Return the shelves that are there without any plugin."""
    listed = os.environ.get(VARIABLE, "").split(os.pathsep)
    named = (Shelf(VARIABLE, Path(folder).expanduser().absolute()) for folder in listed if folder)
    return (Shelf("blocklang", package_blocks()), *named)


@dataclass(slots=True)
class Library:
    """The library as one command sees it; `home` is the folder of the file asked for, if it is not in the library.

    Plugins are asked for their folders (`more_folders`) only when the other shelves lack a name, since loading
    plugins takes longer than checking a block. What was found is kept for as long as the command runs.
    """

    home: Path | None = None
    more_folders: MoreFolders = no_more_folders
    shelves: tuple[Shelf, ...] = field(default_factory=own_shelves)
    _own: dict[str, Entry] | None = None
    _all: dict[str, Entry] | None = None

    def find(self, name: str, placing: SourceText) -> "SourceText | Diagnostic | None":
        """Return the text of the block that a file places by name or path, why it must not be read, or None."""
        from blocklang.language import read_source

        if not name.endswith(SUFFIX):
            entry = self.entry(name)
            return None if entry is None else _first(read_source(entry.path))
        beside = Path(placing.name).parent
        path = Path(os.path.normpath(beside / name))
        if not any(path.resolve().is_relative_to(root) for root in self._roots(beside)):
            return _outside(name)
        return _first(read_source(path)) if path.is_file() else None

    def names(self) -> tuple[str, ...]:
        """Return every name in the library, in order."""
        return tuple(sorted(self.everything()))

    def suggestions(self, name: str) -> tuple[str, ...]:
        """Return the names most like this one, the best first."""
        from difflib import get_close_matches

        return tuple(get_close_matches(name.lower().replace(" ", "-"), self.names(), n=3, cutoff=0.6))

    def entry(self, name: str) -> Entry | None:
        """Return the library's block file of that name."""
        if self._own is None:
            self._own = _index(self.shelves)
        return self._own.get(name) or self.everything().get(name)

    def everything(self) -> dict[str, Entry]:
        """Return every block file by name, those of plugins too."""
        if self._all is None:
            added = tuple(Shelf(f"plugin {plugin}", folder) for plugin, folder in self.more_folders())
            self._all = _index(self.shelves + added)
        return self._all

    def _roots(self, beside: Path) -> list[Path]:
        """List the real folders that a file in `beside` may place from; a library block stays in the library."""
        folders = [shelf.path.resolve() for shelf in self.shelves]
        folders += [entry.shelf.path.resolve() for entry in (self._all or {}).values()]
        home = [] if self.home is None else [self.home.resolve()]
        return folders + [folder for folder in home if beside.resolve().is_relative_to(folder)]


def _first(read: SourceText | tuple[Diagnostic, ...]) -> SourceText | Diagnostic:
    return read if isinstance(read, SourceText) else read[0]


def _outside(name: str) -> Diagnostic:
    return Diagnostic(
        "outside-the-library",
        Severity.ERROR,
        "This file may not be placed",
        f"`{name}` lies outside the folder of the block and outside the library.",
        "Move it beside the block that places it, or into a library folder.",
    )


def _index(shelves: tuple[Shelf, ...]) -> dict[str, Entry]:
    entries: dict[str, Entry] = {}
    for shelf in shelves:
        for path in _block_files(shelf.path):
            entries.setdefault(path.name.removesuffix(SUFFIX), Entry(path.name.removesuffix(SUFFIX), path, shelf))
    return entries


def _block_files(folder: Path) -> Iterator[Path]:
    """Walk a folder in one order on every machine; a link that leads out of it is passed over."""
    real = folder.resolve()
    for here, folders, files in os.walk(folder):
        folders.sort()
        for file in sorted(files):
            path = Path(here, file)
            if file.endswith(SUFFIX) and path.is_file() and path.resolve().is_relative_to(real):
                yield path
