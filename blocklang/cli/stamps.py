"""Whether files changed: looked at now and then, because that needs nothing and works wherever files are kept.

The system's own notices of changes are quicker, but they are lost on many network drives and shared folders, and an
editor that saves under another name and renames takes the watched file away. A glance at a few files costs nothing.
"""

import time
from collections.abc import Iterable
from pathlib import Path
from stat import S_ISDIR

from blocklang.library import SUFFIX

#: Seconds between two glances: soon enough for somebody who turns from the editor to the picture.
GLANCE = 0.25
#: Seconds for which nothing may change any more, so that a file is not read while it is being saved.
SETTLED = 0.15

Stamp = tuple[object, ...]


def stamp(path: str) -> Stamp:
    """Return what changes when a file is saved; of a folder, the names of the block files in it."""
    try:
        seen = Path(path).stat()
        if S_ISDIR(seen.st_mode):
            return tuple(sorted(inside.name for inside in Path(path).iterdir() if inside.name.endswith(SUFFIX)))
    except OSError:
        return ()
    return seen.st_mtime_ns, seen.st_size, seen.st_ino


def stamps(paths: Iterable[str]) -> dict[str, Stamp]:
    """Return the stamps of files and folders."""
    return {path: stamp(path) for path in paths}


def wait_for_change(known: dict[str, Stamp]) -> None:
    """Wait until one of these is not as it was, and then until they all rest."""
    while (now := stamps(known)) == known:
        time.sleep(GLANCE)
    while True:
        time.sleep(SETTLED)
        later = stamps(known)
        if later == now:
            return
        now = later
