"""Names of files in a pack: only what every system can write, inside one folder, and no two that could be one."""

import re
import unicodedata
from collections.abc import Iterable

from blocklang.limits import DEEPEST_FOLDERS, LONGEST_FILE_NAME
from blocklang.packs.values import BLOCK_SUFFIX

_DRIVE = re.compile(r"[A-Za-z]:")
_NOT_EVERYWHERE = frozenset('<>:"|?*')
#: Names that stand for devices on some systems, whatever follows the first dot.
_DEVICES = frozenset(
    [
        "con",
        "prn",
        "aux",
        "nul",
        "conin$",
        "conout$",
        *(f"{port}{n}" for port in ("com", "lpt") for n in "0123456789¹²³"),
    ]
)


def fault_of_name(name: str) -> str:
    """Return in one sentence why a name cannot stand in a pack, or ""."""
    fault = fault_of_path(name)
    return fault or ("" if name.endswith(BLOCK_SUFFIX) else f"It holds `{name}`, which is no block file.")


def fault_of_path(name: str) -> str:
    """Return in one sentence why a name cannot be a file's inside one folder on every system, or ""."""
    shown = name[:LONGEST_FILE_NAME].encode("unicode_escape").decode("ascii") if not name.isprintable() else name
    if len(name) > LONGEST_FILE_NAME:
        return f"The name of a file in it is longer than {LONGEST_FILE_NAME} characters."
    if not name.isprintable():
        return f"The name `{shown}` in it has characters that cannot be seen."
    if "\\" in name:
        return f"The name `{name}` in it has a backslash."
    if name.startswith("/"):
        return f"The name `{name}` in it begins at the root of a disk."
    if _DRIVE.match(name):
        return f"The name `{name}` in it begins with a drive letter."
    if name.endswith("/"):
        return f"It holds the folder `{name}`, and a pack holds only files."
    return _fault_of_parts(name, name.split("/"))


def _fault_of_parts(name: str, parts: list[str]) -> str:
    if ".." in parts:
        return f"The name `{name}` in it leads out of the pack."
    if any(not part or part.startswith((".", " ", "-")) or part.endswith((".", " ")) for part in parts):
        return (
            f"A part of the name `{name}` in it is empty, or begins or ends with a sign that systems treat differently."
        )
    if _NOT_EVERYWHERE.intersection(name):
        return f"The name `{name}` in it has a sign that not every system allows."
    if any(part.partition(".")[0].rstrip().lower() in _DEVICES for part in parts):
        return f"The name `{name}` in it stands for a device on some systems."
    if len(parts) > DEEPEST_FOLDERS + 1:
        return f"The name `{name}` in it lies more than {DEEPEST_FOLDERS} folders deep."
    return ""


def fault_of_twins(names: Iterable[str]) -> str:
    """Return in one sentence which names are one name on some system, or ""."""
    seen: dict[str, str] = {}
    for name in names:
        folded = _folded(name)
        if folded in seen:
            return _twins(seen[folded], name)
        seen[folded] = name
    for folded, name in seen.items():
        parts = folded.split("/")
        inside = next((seen[up] for up in ("/".join(parts[:n]) for n in range(1, len(parts))) if up in seen), None)
        if inside is not None:
            return f"It holds the file `{inside}` and a folder of the same name, for `{name}`."
    return ""


def _twins(one: str, other: str) -> str:
    if one == other:
        return f"It holds two files called `{one}`."
    if composed(one) == composed(other):
        return f"It holds two files called `{composed(one)}`, whose letters are only written differently inside."
    return f"It holds `{one}` and `{other}`, which differ only in capitals."


def _folded(name: str) -> str:
    return composed(composed(name).casefold())


def composed(name: str) -> str:
    """Return a name with each accented letter as one sign (NFC), as a pack has it; some systems split them in two."""
    return unicodedata.normalize("NFC", name)
