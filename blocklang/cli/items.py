"""The blocks that were typed as FILE, one by one: a folder or a pack stands for all that are in it."""

import os
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from blocklang.cli.failing import FILE_FAULT, CommandFault
from blocklang.cli.opening import STDIN, locate
from blocklang.cli.showing import show
from blocklang.diagnostics import Diagnostic
from blocklang.library import PACK_SUFFIX, SUFFIX, Library


@dataclass(frozen=True, slots=True)
class Item:
    """One block to work on: what FILE means it, and what its results are called; nothing for standard input."""

    file: str
    stem: str


def items_of(files: tuple[str, ...], library: Library) -> tuple[Item, ...]:
    """Return the blocks that were typed, in order, or fail with the nearest names; no FILE means the whole library."""
    if not files:
        return tuple(Item(name, name) for name in library.names())
    return tuple(item for file in files for item in _items(file, library))


def _items(file: str, library: Library) -> Iterator[Item]:
    if file == STDIN:
        yield Item(file, "")
    elif _holds_blocks(file, library):
        yield from (Item(path.as_posix(), path.name.removesuffix(SUFFIX)) for path in _inside(Path(file), library))
    else:
        yield Item(file, locate(file, library).name.removesuffix(SUFFIX))


def _holds_blocks(file: str, library: Library) -> bool:
    path = Path(file)
    if path.suffix == PACK_SUFFIX and path.is_file():
        return True
    if path.suffix == SUFFIX or not path.is_dir():  # a name with .block at its end means a file
        return False
    return any(sign in file for sign in (os.sep, os.altsep or os.sep)) or library.entry(file) is None


def _inside(path: Path, library: Library) -> tuple[Path, ...]:
    pack = None if path.is_dir() else library.pack(path)
    if isinstance(pack, Diagnostic):
        show([pack])
        raise CommandFault(f"Nothing is made of `{path}`.", FILE_FAULT)
    paths = library.files_in(path)
    if not paths:
        raise CommandFault(f"There is no block in `{path}`.")
    return paths
