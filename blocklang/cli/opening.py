"""From what was typed as FILE to a source text: a path, or the name of a block in the library."""

import os
import sys
from pathlib import Path

from blocklang.cli.failing import CommandFault
from blocklang.cli.showing import show
from blocklang.diagnostics import Diagnostic, Severity, SourceText
from blocklang.library import PACK_SUFFIX, SUFFIX, Library

STDIN = "-"


def open_block(file: str, library: Library) -> SourceText | tuple[Diagnostic, ...]:
    """Read the block that FILE means; the library's home becomes the folder that it lies in."""
    from blocklang.language import decode_source
    from blocklang.limits import MOST_BYTES

    if file == STDIN:
        library.home = Path()
        return decode_source("standard input", sys.stdin.buffer.read(MOST_BYTES + 1))
    path = locate(file, library)
    library.home = None if path.name == file + SUFFIX else path.parent
    if path.suffix == PACK_SUFFIX and path.is_file():
        return (_is_a_pack(path, library),)
    return library.read(path)


def locate(file: str, library: Library) -> Path:
    """Return the path that FILE means, or fail with the nearest names."""
    path = Path(file)
    if _is_path(file):
        if path.exists() or leads_into_a_pack(path):
            return path
        raise CommandFault(f"There is no file `{file}`.{_near(path.name.removesuffix(SUFFIX), library)}")
    entry = library.entry(file)
    if entry is not None:
        return entry.path
    if path.exists():
        return path
    show(library.diagnostics)  # it may lie in a pack that must not be used
    raise CommandFault(f"There is no block `{file}` in the library, and no file of that name.{_near(file, library)}")


def leads_into_a_pack(path: Path) -> bool:
    """Say whether a path leads to a file in a pack, as if the pack were a folder."""
    return any(parent.suffix == PACK_SUFFIX and parent.is_file() for parent in path.parents)


def _is_a_pack(path: Path, library: Library) -> Diagnostic:
    """Tell how a block in a pack is named."""
    pack = library.pack(path)
    if isinstance(pack, Diagnostic):
        return pack
    advice = f"Name a block in it, such as `{path}/{pack.blocks[0].name}`." if pack.blocks else ""
    return Diagnostic("is-a-pack", Severity.ERROR, f"`{path}` is a pack", "A block is one file in it.", advice)


def _is_path(file: str) -> bool:
    return file.endswith(SUFFIX) or os.sep in file or (os.altsep or os.sep) in file


def _near(name: str, library: Library) -> str:
    names = library.suggestions(name)
    if not names:
        return " `blocklang library` lists the blocks there are."
    return f" Did you mean {' or '.join(f'`{near}`' for near in names)}?"
