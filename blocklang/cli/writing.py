"""Writing results: to standard output, or to files that are either whole or untouched."""

import os
import sys
from collections.abc import Mapping
from pathlib import Path
from typing import IO

from blocklang.cli.failing import CommandFault, ReaderLeftError, reason

STDOUT = Path("-")


def print_text(text: str) -> None:
    """Write a result to standard output as UTF-8, with a newline at its end."""
    print_bytes((text if text.endswith("\n") else f"{text}\n").encode())


def print_bytes(data: bytes) -> None:
    """Write a result to standard output as it is."""
    if sys.stdout is None:
        raise CommandFault("There is no standard output to write to.")
    try:
        sys.stdout.flush()
        sys.stdout.buffer.write(data)
        sys.stdout.buffer.flush()
    except OSError as fault:
        # Python flushes the stream once more when it ends; there it must not fail again.
        os.dup2(os.open(os.devnull, os.O_WRONLY), 1)
        if isinstance(fault, BrokenPipeError):
            raise ReaderLeftError from fault
        raise CommandFault(f"Standard output cannot be written: {reason(fault)}.") from fault


def write_files(files: Mapping[Path, bytes | Path]) -> None:
    """Write files so that each is whole or untouched, and none is touched when one cannot be written.

    What a file holds is given as bytes, or as the path of a file to copy.
    """
    drafts: dict[Path, Path] = {}
    try:
        for path, data in files.items():
            with _naming(path):
                drafts[path] = write_draft(Path(os.path.realpath(path)), data)
        for path, draft in drafts.items():
            with _naming(path):
                draft.replace(os.path.realpath(path))
    finally:
        for draft in drafts.values():
            draft.unlink(missing_ok=True)


def guard(paths: list[Path], force: bool) -> None:
    """Refuse to write over anything unless the person said so."""
    there = next((path for path in paths if path.exists() or path.is_symlink()), None)
    if there is not None and not force:
        raise CommandFault(f"`{there}` is there already, and is left as it is; --force writes over it.")


def require_parent(path: Path) -> None:
    """Refuse to write where there is no folder to write into."""
    if not Path(os.path.realpath(path)).parent.is_dir():
        raise CommandFault(f"There is no folder `{path.parent}`: make it first, or write elsewhere.")


class _naming:  # noqa: N801 - reads as a phrase: with _naming(path)
    """Turns the system's refusal into one sentence that names the file."""

    def __init__(self, path: Path) -> None:
        self.path = path

    def __enter__(self) -> None:
        real = Path(os.path.realpath(self.path))
        if real.is_dir():
            raise CommandFault(f"`{self.path}` is a folder: give a file name.")
        if real.exists() and not real.is_file():
            raise CommandFault(f"`{self.path}` is not a plain file: use `-o -` to write to standard output.")
        require_parent(self.path)

    def __exit__(self, kind: object, fault: BaseException | None, trace: object) -> None:
        if isinstance(fault, OSError):
            raise CommandFault(f"`{self.path}` cannot be written: {reason(fault)}.") from fault


def write_draft(path: Path, data: bytes | Path) -> Path:
    """Write beside the place where the file belongs, on the same disk, so that one rename puts it there; return where."""
    import tempfile

    handle, name = tempfile.mkstemp(prefix=".blocklang-", dir=path.parent)
    draft = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            if isinstance(data, bytes):
                file.write(data)
            else:
                _copy(data, file)
        draft.chmod(_mode_for(path))
    except BaseException:
        draft.unlink(missing_ok=True)
        raise
    return draft


def _copy(path: Path, into: IO[bytes]) -> None:
    import shutil

    with path.open("rb") as file:
        shutil.copyfileobj(file, into)


def _mode_for(path: Path) -> int:
    """Return the mode of the file that is replaced, or what a new file would get."""
    if path.exists():
        return path.stat().st_mode & 0o777
    mask = os.umask(0)
    os.umask(mask)
    return 0o666 & ~mask
