"""Writing a whole folder: filled under another name, and moved to its place when all of it is there."""

import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass, field
from pathlib import Path

from blocklang.cli.failing import CommandFault, reason
from blocklang.cli.writing import guard, require_parent, write_files


@dataclass(frozen=True, slots=True)
class FolderDraft:
    """A folder that is being filled; `names` are the files in it so far, relative and with slashes."""

    root: Path
    names: list[str] = field(default_factory=list)

    def add(self, name: str, data: bytes) -> None:
        """Put a file into the folder; whoever calls has seen that its name stays inside."""
        path = self.root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(data)
        self.names.append(name)


@contextmanager
def folder_for_results(folder: Path | None) -> Iterator[None]:
    """Make the folder that results go into one by one; if nothing comes to lie in it, it is taken away again."""
    if folder is None or folder.is_dir():
        yield
        return
    require_parent(folder)
    if folder.exists() or folder.is_symlink():
        raise CommandFault(f"`{folder}` is not a folder, and several results need one.")
    try:
        folder.mkdir()
    except OSError as fault:
        raise CommandFault(f"`{folder}` cannot be written: {reason(fault)}.") from fault
    try:
        yield
    finally:
        with suppress(OSError):  # there is something in it
            folder.rmdir()


@contextmanager
def whole_folder(folder: Path, force: bool) -> Iterator[FolderDraft]:
    """Give a draft to fill, and put it in its place at the end; where anything goes wrong before, nothing of it stays.

    A folder that is there already is left as it is, unless `force` says to write over the files in it that have the
    same names.
    """
    over = folder.is_dir() and force
    if not over:
        guard([folder], force=False)
    require_parent(folder)
    place = folder.absolute()
    try:
        hidden = Path(tempfile.mkdtemp(prefix=".blocklang-", dir=place.parent))
        try:
            draft = FolderDraft(hidden / "whole")
            draft.root.mkdir()  # made here, it gets the mode that the person's new folders get
            yield draft
            if over:
                _write_over(draft, folder)
            else:
                draft.root.rename(place)
        finally:
            shutil.rmtree(hidden, ignore_errors=True)
    except OSError as fault:
        raise CommandFault(f"`{folder}` cannot be written: {reason(fault)}.") from fault


def _write_over(draft: FolderDraft, folder: Path) -> None:
    """Write into a folder that is there, each file whole or untouched, and none through a link that leads out of it."""
    root = Path(os.path.realpath(folder))
    paths: dict[Path, bytes | Path] = {folder / name: draft.root / name for name in draft.names}
    for path in paths:
        if path.is_symlink() or not Path(os.path.realpath(path)).is_relative_to(root):
            raise CommandFault(
                f"`{path}` is a link, or lies behind one that leads out of `{folder}`: nothing is written."
            )
    for path in paths:
        path.parent.mkdir(parents=True, exist_ok=True)
    write_files(paths)
