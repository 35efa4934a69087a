"""Runs one command again and again in copies of a folder, each time killed one write later: what is there after each?

`python -m tests.hostile.dying FOLDER WORDS...` prints one JSON line for each death, the files with their checksums, and a
last one for the run that lived. SIGKILL comes before the nth thing that the command does to the disk.
"""

import hashlib
import json
import os
import shutil
import signal
import sys
from pathlib import Path

from blocklang.cli.program import run

ALL = 12  # deaths one write after the other; of a command that writes more, some of the later ones
WRITES = {"open", "os.rename", "os.mkdir", "os.chmod", "os.remove", "os.rmdir", "os.truncate", "os.link", "os.symlink"}


def main(folder: Path, words: list[str]) -> None:
    """Run the command once to its end, and then let it die.

    The first run loads all that the others need, unless it starts threads (a solver's), which no child would have.
    """
    lived = _copy(folder, "lived")
    code = run(words) if words[1] != "gallery" else _in_a_child(words)
    os.chdir(folder.parent)
    number = 1
    while (state := _after_death(folder, words, number)) is not None:
        print(json.dumps(state), flush=True)
        number = number + 1 if number < ALL else number * 4 // 3
    print(json.dumps(_state(lived) | {"": str(code)}), flush=True)


def _in_a_child(words: list[str]) -> int:
    child = os.fork()
    if not child:
        os._exit(run(words))
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def _copy(folder: Path, name: str) -> Path:
    copy = folder.parent / name
    shutil.rmtree(copy, ignore_errors=True)
    shutil.copytree(folder, copy, symlinks=True)
    os.chdir(copy)
    return copy


def _after_death(folder: Path, words: list[str], number: int) -> dict[str, str] | None:
    """Return what is in a copy of the folder after the command was killed in it; None when it lived."""
    copy = _copy(folder, "died")
    child = os.fork()
    if not child:
        _die_at(number)
        os._exit(run(words))
    killed = os.WIFSIGNALED(os.waitpid(child, 0)[1])
    return _state(copy) if killed else None


def _die_at(number: int) -> None:
    seen = 0

    def listen(event: str, details: tuple[object, ...]) -> None:
        nonlocal seen
        if event in WRITES and (event != "open" or _writes(details)):
            seen += 1
            if seen == number:
                os.kill(os.getpid(), signal.SIGKILL)

    sys.addaudithook(listen)


def _writes(details: tuple[object, ...]) -> bool:
    name, _, flags = details
    return bool(int(flags or 0) & (os.O_WRONLY | os.O_RDWR | os.O_CREAT)) and name != os.devnull  # type: ignore[call-overload]


def _state(folder: Path) -> dict[str, str]:
    """Return every file and folder, hidden drafts left out."""
    found = {}
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if not any(part.startswith(".blocklang-") for part in name.split("/")):
            found[name] = hashlib.sha256(path.read_bytes()).hexdigest() if path.is_file() else "folder"
    return found


if __name__ == "__main__":
    main(Path(sys.argv[1]).absolute(), sys.argv[2:])
