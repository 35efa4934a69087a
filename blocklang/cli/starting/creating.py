"""Writing what is new: files that were not there before, and never over anything that was."""

from pathlib import Path

from blocklang.cli.failing import CommandFault, reason


def refuse_if_there(path: Path) -> None:
    """Say so when something of that name is there, even a link that leads nowhere."""
    if path.exists() or path.is_symlink():
        raise CommandFault(f"`{path}` is there already, and is left as it is.")


def create_file(path: Path, data: bytes) -> None:
    """Write a file that must not be there yet; what cannot be written whole is taken away again."""
    if not path.parent.is_dir():
        raise CommandFault(f"There is no folder `{path.parent}`: make it first, or write elsewhere.")
    try:
        with path.open("xb") as file:
            try:
                file.write(data)
            except BaseException:
                path.unlink(missing_ok=True)
                raise
    except FileExistsError as fault:
        raise CommandFault(f"`{path}` is there already, and is left as it is.") from fault
    except OSError as fault:
        raise CommandFault(f"`{path}` cannot be written: {reason(fault)}.") from fault
