"""From what was typed as FILE to a source text: a path, or the name of a block in the library."""

import os
import sys
from pathlib import Path

from blocklang.cli.failing import CommandFault
from blocklang.diagnostics import Diagnostic, SourceText
from blocklang.library import SUFFIX, Library

STDIN = "-"


def open_block(file: str, library: Library) -> SourceText | tuple[Diagnostic, ...]:
    """Read the block that FILE means; the library's home becomes the folder that it lies in."""
    from blocklang.language import decode_source, read_source
    from blocklang.limits import MOST_BYTES

    if file == STDIN:
        library.home = Path()
        return decode_source("standard input", sys.stdin.buffer.read(MOST_BYTES + 1))
    path = locate(file, library)
    library.home = None if path.name == file + SUFFIX else path.parent
    return read_source(path)


def locate(file: str, library: Library) -> Path:
    """Return the path that FILE means, or fail with the nearest names."""
    path = Path(file)
    if _is_path(file):
        if path.exists():
            return path
        raise CommandFault(f"There is no file `{file}`.{_near(path.name.removesuffix(SUFFIX), library)}")
    entry = library.entry(file)
    if entry is not None:
        return entry.path
    if path.exists():
        return path
    raise CommandFault(f"There is no block `{file}` in the library, and no file of that name.{_near(file, library)}")


def _is_path(file: str) -> bool:
    return file.endswith(SUFFIX) or os.sep in file or (os.altsep or os.sep) in file


def _near(name: str, library: Library) -> str:
    names = library.suggestions(name)
    if not names:
        return " `blocklang library` lists the blocks there are."
    return f" Did you mean {' or '.join(f'`{near}`' for near in names)}?"
