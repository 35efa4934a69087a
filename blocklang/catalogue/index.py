"""The index of a library: facts about block files, kept between commands, believed only while the files stay the same.

It is a convenience and nothing more: what cannot be read, has another format, or was made by another blocklang is
passed over and built again, without a word.
"""

import hashlib
import json
import os
import sys
import time
from collections.abc import Callable
from contextlib import suppress
from dataclasses import asdict, dataclass, field, fields
from pathlib import Path
from typing import Any, NamedTuple, get_type_hints

from blocklang import __version__
from blocklang.block import LengthUnit
from blocklang.catalogue.facts import Facts
from blocklang.limits import MOST_INDEX_BYTES, MOST_LISTED

FORMAT = "blocklang.index/1"
#: A file written so shortly before the index may have changed again within one tick of the system's clock.
_JUST_NOW = 2_000_000_000


class Stamp(NamedTuple):
    """How a file is recognised: its size, when it was last written (nanoseconds), its checksum."""

    size: int
    written: int
    sha256: str


class Known(NamedTuple):
    """What is known of a block file without errors; `placed` are the files that it is drawn with."""

    stamp: Stamp
    facts: Facts
    placed: tuple[tuple[str, str, Stamp], ...] = ()  # name as placed, path, stamp


@dataclass(slots=True)
class Index:
    """What is known of block files by path; `path` is where the index lies, None to keep none."""

    path: Path | None
    known: dict[str, Known] = field(default_factory=dict)
    made: int = 0
    changed: bool = False
    _stamps: dict[str, Stamp | None] = field(default_factory=dict)

    @staticmethod
    def load(path: Path | None) -> "Index":
        """Return the index that lies at a path, or an empty one."""
        index = Index(path)
        try:
            if path is not None and path.stat().st_size <= MOST_INDEX_BYTES:
                index.made, index.known = _read(path.read_bytes())
        except (OSError, ValueError, KeyError, TypeError, AttributeError, RecursionError, IndexError):
            index.known, index.made = {}, 0
        return index

    def fresh(self, path: str, leads: Callable[[str, str], bool]) -> Facts | None:
        """Return the facts about a file if it and all that it places are as they were.

        `leads(name, path)` says whether what is placed by that name is still the file at that path.
        """
        known = self.known.get(path)
        if known is None or not self._same(path, known.stamp):
            return None
        for name, placed, stamp in known.placed:
            if not leads(name, placed) or not self._same(placed, stamp):
                return None
        return known.facts

    def stamp(self, path: str) -> Stamp | None:
        """Return how a file is recognised now; its contents are read only when size or time differ from what is known."""
        if path not in self._stamps:
            self._stamps[path] = self._stamped(path)
        return self._stamps[path]

    def put_stamp(self, path: str, stamp: Stamp) -> None:
        """Say how a file is recognised that is no file of its own, but lies in a pack."""
        self._stamps[path] = stamp

    def learn(self, path: str, known: Known) -> None:
        """Keep what was found out about a file."""
        self.known[path] = known
        self.changed = True

    def save(self) -> None:
        """Write the index, whole or not at all; where that is not possible nothing is kept."""
        if self.path is None or not self.changed:
            return
        draft = self.path.with_name(f"{self.path.name}.{os.getpid()}")
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
            draft.write_bytes(_written(self._still_there()))
            draft.replace(self.path)
        except OSError:
            with suppress(OSError):
                draft.unlink()

    def _still_there(self) -> dict[str, Known]:
        """Return what is known of files that were asked for just now, or that other libraries may ask for again."""
        return {path: known for path, known in self.known.items() if self._stamps.get(path) or Path(path).is_file()}

    def _same(self, path: str, stamp: Stamp) -> bool:
        now = self.stamp(path)
        return now is not None and now.sha256 == stamp.sha256

    def _stamped(self, path: str) -> Stamp | None:
        try:
            status = os.stat(path)  # noqa: PTH116 - thousands of these are what a search costs
            known = self.known.get(path)
            old = known.stamp if known is not None else None
            unchanged = old is not None and (old.size, old.written) == (status.st_size, status.st_mtime_ns)
            if unchanged and status.st_mtime_ns < self.made - _JUST_NOW:
                return old
            data = Path(path).read_bytes()
        except (OSError, ValueError):
            return None
        stamp = Stamp(status.st_size, status.st_mtime_ns, hashlib.sha256(data).hexdigest())
        if known is not None and old is not None and old.sha256 == stamp.sha256 and old != stamp:
            self.learn(path, known._replace(stamp=stamp))
        elif self.made and old == stamp:
            self.changed = True  # written again later, the index may believe the time
        return stamp


def index_path() -> Path | None:
    """Return where the index lies: in the user's folder for what programs may lose, or None when there is none."""
    if sys.platform == "win32":
        kept = os.environ.get("LOCALAPPDATA", "")
    elif sys.platform == "darwin":
        kept = "~/Library/Caches"
    else:
        kept = os.environ.get("XDG_CACHE_HOME", "") or "~/.cache"
    try:
        folder = Path(kept).expanduser()
    except RuntimeError:
        return None
    return folder / "blocklang" / "index.json" if kept and folder.is_absolute() else None


def maker() -> str:
    """Return which program wrote the index: its version, and when its own files last changed."""
    package = Path(__file__).parent.parent
    newest = max(file.stat().st_mtime_ns for folder in (package, *package.iterdir()) if folder.is_dir()
                 for file in folder.glob("*.py"))  # fmt: skip
    return f"{__version__} {newest}"


def _written(known: dict[str, Known]) -> bytes:
    kept = list(known.items())[-MOST_LISTED:]
    files = {
        path: [*one.stamp, list(asdict(one.facts).values()), [[name, at, *stamp] for name, at, stamp in one.placed]]
        for path, one in kept
    }  # fmt: skip
    told = {"format": FORMAT, "maker": maker(), "made": time.time_ns(), "files": files}
    return json.dumps(told, ensure_ascii=True, separators=(",", ":")).encode()


def _read(data: bytes) -> tuple[int, dict[str, Known]]:
    told = json.loads(data)
    if told["format"] != FORMAT or told["maker"] != maker() or type(told["made"]) is not int:
        return 0, {}
    return told["made"], {path: _known(*values) for path, values in told["files"].items()}


def _known(size: Any, written: Any, sha256: Any, facts: Any, placed: Any) -> Known:
    if not (type(size) is int and type(written) is int and type(sha256) is str):
        raise ValueError("not an index of ours")
    others = tuple((str(name), str(path), Stamp(int(a), int(b), str(c))) for name, path, a, b, c in placed)
    return Known(Stamp(size, written, sha256), _facts(facts), others)


_TYPES = tuple(get_type_hints(Facts)[one.name] for one in fields(Facts))
_PLACE_OF_REASONS = [one.name for one in fields(Facts)].index("because")


def _facts(values: list[Any]) -> Facts:
    values[_PLACE_OF_REASONS] = tuple(map(str, values[_PLACE_OF_REASONS]))
    for value, kind in zip(values, _TYPES, strict=True):
        if type(value) is not kind and kind in (int, str):
            raise ValueError("not an index of ours")
        str(value).encode()  # half a letter, which JSON can say and no terminal can show, is a ValueError
    facts = Facts(*values)
    LengthUnit(facts.unit)
    return facts
