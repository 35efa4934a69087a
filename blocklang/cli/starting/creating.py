"""Writing what is new: files that were not there before, and never over anything that was."""

from pathlib import Path

from blocklang.cli.failing import CommandFault, reason
from blocklang.cli.writing import require_parent, write_draft


def refuse_if_there(path: Path) -> None:
    """Say so when something of that name is there, even a link that leads nowhere."""
    if path.exists() or path.is_symlink():
        raise CommandFault(f"`{path}` is there already, and is left as it is.")


def create_file(path: Path, data: bytes) -> None:
    """Write a file that must not be there yet; it is there whole or not at all."""
    require_parent(path)
    try:
        draft = write_draft(path, data)
        try:
            _put(draft, path)
        finally:
            draft.unlink(missing_ok=True)
    except FileExistsError as fault:
        raise CommandFault(f"`{path}` is there already, and is left as it is.") from fault
    except OSError as fault:
        raise CommandFault(f"`{path}` cannot be written: {reason(fault)}.") from fault


def _put(draft: Path, path: Path) -> None:
    """Give a draft its name; a link, unlike a renaming, never takes the place of what came there in the meantime."""
    try:
        path.hardlink_to(draft)
    except FileExistsError:
        raise
    except (OSError, NotImplementedError):  # a disk that has no links
        refuse_if_there(path)
        draft.rename(path)
