"""How much of the code a corpus reaches, in lines: every kept input is run once more with an eye on each line."""

import os
import sys
import threading
import time
from collections.abc import Iterator
from pathlib import Path
from types import CodeType, FrameType
from typing import Any

from tests.fuzz.targets import TARGETS
from tests.fuzz.watching import Hang, in_time

ROOT = Path(__file__).parents[2]
FOLDERS = (ROOT / "blocklang", ROOT / "plugins")
MOST_SECONDS = 30  # of processor time, since watching lines takes several times as long


def lines_reached(name: str, corpus: Path) -> dict[str, int | str]:
    """Return how many lines of a target's code its corpus reaches, of how many."""
    target = TARGETS[name]
    seen: set[tuple[str, int]] = set()

    def watch(frame: FrameType, event: str, _: Any) -> Any:
        if not frame.f_code.co_filename.startswith(str(ROOT)) or f"{os.sep}tests{os.sep}" in frame.f_code.co_filename:
            return None
        if event == "line":
            seen.add((frame.f_code.co_filename, frame.f_lineno))
        return watch

    traced, begun = 0, time.process_time()
    for path in sorted(corpus.iterdir(), key=lambda path: path.name[::-1]):  # seeds among those that were found
        if time.process_time() - begun > MOST_SECONDS:
            break
        traced += 1
        threading.settrace(watch)
        sys.settrace(watch)
        try:
            with in_time(MOST_SECONDS):
                target.run(path.read_bytes())
        except (Exception, Hang):  # noqa: BLE001 - crashes were kept already
            pass
        finally:
            sys.settrace(None)
            threading.settrace(None)  # type: ignore[arg-type]
    files = [path for path in _files() if any(part in str(path.relative_to(ROOT)) for part in target.covers)]
    whole = {(str(path), line) for path in files for line in _lines(path)}
    return {"lines": len(whole & seen), "of_lines": len(whole), "traced": traced}


def _files() -> list[Path]:
    return [path for folder in FOLDERS for path in sorted(folder.rglob("*.py"))]


def _lines(path: Path) -> Iterator[int]:
    """Yield the lines in functions that can be run; what runs on import says nothing."""
    waiting = [compile(path.read_text(encoding="utf-8"), str(path), "exec")]
    while waiting:
        code = waiting.pop()
        inner = [constant for constant in code.co_consts if isinstance(constant, CodeType)]
        waiting += inner
        if code.co_name != "<module>" and code.co_flags & 0x1:  # functions, not class bodies
            yield from {line for *_, line in code.co_lines() if line is not None and line != code.co_firstlineno}


if __name__ == "__main__":
    print(lines_reached(sys.argv[1], Path(sys.argv[2])))
