"""Finding block files by name: the library's folders and packs in a stated order, and what a file may place.

A name is looked for in the package's own blocks, then in the folders and packs of BLOCKLANG_LIBRARY in the order
written, then in those that plugins offer; the first that has it wins. A name that none has is looked for beside the
file that places it. A path with .block at its end is looked for beside that file only. A block in a pack places blocks
of its pack only. Nothing outside the library and the folder of the file asked for is ever opened.
"""

import os
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING

from blocklang.diagnostics import Diagnostic, Severity, SourceText
from blocklang.limits import MOST_LISTED

if TYPE_CHECKING:
    from blocklang.packs.values import Pack

SUFFIX = ".block"
PACK_SUFFIX = ".pack"
VARIABLE = "BLOCKLANG_LIBRARY"

MoreFolders = Callable[[], tuple[tuple[str, Path], ...]]


@dataclass(frozen=True, slots=True)
class Shelf:
    """One library folder or pack, and where we know it from."""

    origin: str
    path: Path


@dataclass(frozen=True, slots=True)
class Entry:
    """A block file in the library; its name is its file's name without .block, its path may lead into a pack."""

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
    named = (Shelf(folder, Path(folder).expanduser().absolute()) for folder in listed if folder)
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
    diagnostics: list[Diagnostic] = field(default_factory=list)
    _own: dict[str, Entry] | None = None
    _all: dict[str, Entry] | None = None
    _packs: "dict[Path, Pack | Diagnostic]" = field(default_factory=dict)

    def find(self, name: str, placing: SourceText) -> "SourceText | Diagnostic | None":
        """Return the text of the block that a file places by name or path, why it must not be read, or None."""
        pack = self._pack_around(placing.name)
        if pack is not None:
            return self._find_in_pack(pack, name, placing)
        if not name.endswith(SUFFIX):
            entry = self.entry(name)
            return self._beside(name, placing) if entry is None else _first(self.read(entry.path))
        return self._by_path(name, placing)

    def read(self, path: Path) -> SourceText | tuple[Diagnostic, ...]:
        """Return the text of a block file, in a folder or in a pack."""
        from blocklang.language import read_source

        at = _pack_path(path.as_posix())
        if at is None:
            return read_source(path)
        pack = self.pack(at)
        if isinstance(pack, Diagnostic):
            return (pack,)
        from blocklang.packs.finding import text_in

        text = text_in(pack, path.as_posix()[len(at.as_posix()) + 1 :])
        return text if isinstance(text, SourceText) else (text,)

    def pack(self, path: Path) -> "Pack | Diagnostic":
        """Return the pack in a file, or why it must not be used."""
        if path not in self._packs:
            from blocklang.packs.reading import read_pack
            from blocklang.packs.signing import required_fault

            pack = read_pack(path)
            self._packs[path] = pack if isinstance(pack, Diagnostic) else required_fault(pack) or pack
        return self._packs[path]

    def open_packs(self) -> "tuple[Pack, ...]":
        """Return the packs that were read so far and may be used."""
        return tuple(pack for pack in self._packs.values() if not isinstance(pack, Diagnostic))

    def leads(self, name: str, path: str) -> bool:
        """Say whether a block placed by name is still the one at a path; a pack's blocks place from the pack alone."""
        entry = self.entry(name)
        return (entry is not None and str(entry.path) == path) or _pack_path(path) is not None

    def _pack_around(self, name: str) -> "Pack | Diagnostic | None":
        at = _pack_path(name)
        return None if at is None else self.pack(at)

    def _find_in_pack(
        self, pack: "Pack | Diagnostic", name: str, placing: SourceText
    ) -> "SourceText | Diagnostic | None":
        if isinstance(pack, Diagnostic):
            return pack
        from blocklang.packs.finding import PackFinder

        return PackFinder(pack).find(name, placing)

    def _by_path(self, name: str, placing: SourceText) -> "SourceText | Diagnostic | None":
        beside = Path(placing.name).parent
        path = Path(os.path.normpath(beside / name))
        if not any(_real(path).is_relative_to(root) for root in self._roots(beside)):
            return _outside(name)
        return _first(self.read(path)) if _is_file(path) else None

    def _beside(self, name: str, placing: SourceText) -> "SourceText | Diagnostic | None":
        """Look for a name that the library lacks in the folder of the file that places it, and in the home folder."""
        if self.home is None or "/" in name or os.sep in name:
            return None
        here = Path(placing.name).parent
        folders = (here, self.home) if _real(here).is_relative_to(_real(self.home)) else ()
        found = (self._by_path(os.path.relpath(folder / f"{name}{SUFFIX}", here), placing) for folder in folders)
        return next((one for one in found if isinstance(one, SourceText)), None)

    def files_in(self, path: Path) -> tuple[Path, ...]:
        """Return the block files in a folder or a pack, in one order on every machine."""
        return tuple(self._paths_on(Shelf(path.as_posix(), path)))

    def names(self) -> tuple[str, ...]:
        """Return every name in the library, in order."""
        return tuple(sorted(self.everything()))

    def suggestions(self, name: str) -> tuple[str, ...]:
        """Return the names most like this one, the best first."""
        from difflib import get_close_matches

        return tuple(get_close_matches(name.lower().replace(" ", "-"), self.names(), n=3, cutoff=0.6))

    def entry(self, name: str) -> Entry | None:
        """Return the library's block file of that name."""
        if self._all is not None:
            return self._all.get(name)
        if self._own is None:
            self._own = self._index(self.shelves)
        return self._own.get(name) or self.everything().get(name)

    def everything(self) -> dict[str, Entry]:
        """Return every block file by name, those of plugins too."""
        if self._all is None:
            added = tuple(Shelf(f"plugin {plugin}", folder) for plugin, folder in self.more_folders())
            self._all = self._index(self.shelves + added)
        return self._all

    def _index(self, shelves: tuple[Shelf, ...]) -> dict[str, Entry]:
        entries: dict[str, Entry] = {}
        for shelf in shelves:
            for path in self._paths_on(shelf):
                name = path.name.removesuffix(SUFFIX)
                entries.setdefault(name, Entry(name, path, shelf))
        return entries

    def _paths_on(self, shelf: Shelf) -> Iterator[Path]:
        """List the block files on a shelf; a pack that must not be used is told once and passed over."""
        if shelf.path.suffix != PACK_SUFFIX or not _is_file(shelf.path):
            yield from islice(_block_files(shelf.path), MOST_LISTED)
            return
        pack = self.pack(shelf.path)
        if not isinstance(pack, Diagnostic):
            yield from (shelf.path / block.file for block in pack.blocks)
        elif (passed := replace(pack, severity=Severity.WARNING)) not in self.diagnostics:
            self.diagnostics.append(passed)

    def _roots(self, beside: Path) -> list[Path]:
        """List the real folders that a file in `beside` may place from; a library block stays in the library."""
        folders = [_real(shelf.path) for shelf in self.shelves]
        folders += [_real(entry.shelf.path) for entry in (self._all or {}).values()]
        home = [] if self.home is None else [_real(self.home)]
        return folders + [folder for folder in home if _real(beside).is_relative_to(folder)]


def _real(path: Path) -> Path:
    """Follow the links of a path as far as they lead; one that leads round in a circle stays as it is."""
    return Path(os.path.realpath(path))


def _is_file(path: Path) -> bool:
    """Say whether there is a plain file; a name that the system cannot have has none."""
    try:
        return path.is_file()
    except OSError:
        return False


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


def _pack_path(path: str) -> Path | None:
    """Return the pack that a path leads into, if it does."""
    plain = path.replace(os.sep, "/")
    at = plain.find(f"{PACK_SUFFIX}/")
    while at >= 0:
        pack = Path(plain[: at + len(PACK_SUFFIX)])
        if _is_file(pack):
            return pack
        at = plain.find(f"{PACK_SUFFIX}/", at + 1)
    return None


def _block_files(folder: Path) -> Iterator[Path]:
    """Walk a folder in one order on every machine; a link that leads out of it is passed over."""
    return _walk(str(folder), _real(folder))


def _walk(here: str, root: Path) -> Iterator[Path]:
    try:
        with os.scandir(here) as listed:
            items = sorted(listed, key=lambda item: item.name)
    except OSError:
        return
    for item in items:
        if item.name.endswith(SUFFIX) and item.is_file():
            path = Path(item.path)
            if not item.is_symlink() or _real(path).is_relative_to(root):
                yield path
    for item in items:
        if item.is_dir(follow_symlinks=False):
            yield from _walk(item.path, root)
