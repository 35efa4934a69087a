"""A block that is watched: the files that it is drawn with, and what a change of them means to whoever sews it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from blocklang.cli.items import Item
from blocklang.cli.opening import locate, open_block
from blocklang.cli.stamps import Stamp, stamps
from blocklang.cli.walking import Walk
from blocklang.diagnostics import SourceText

if TYPE_CHECKING:
    from blocklang.packs.comparing import Version
    from blocklang.plan import SewingPlan


@dataclass(slots=True)
class Followed:
    """A block as it was last looked at; `plan` is None while it has errors, `version` is how it last was right."""

    stamps: dict[str, Stamp]
    data: bytes
    plan: "SewingPlan | None" = None
    version: "Version | None" = None

    def changed(self, now: Mapping[str, Stamp]) -> Iterator[str]:
        """Return its files that are not as they were when it was last looked at."""
        return (path for path, stamped in self.stamps.items() if now.get(path) != stamped)

    def take(self, plan: "SewingPlan | None") -> None:
        """Keep a new plan."""
        self.plan = plan
        if plan is not None:
            self.version = _version(self.data, plan)


class Files(NamedTuple):
    """The files that a block is drawn with: their stamps, its own and its folder's first, and all that they say.

    The folder counts because a block with errors may wait for a file that is not there yet.
    """

    stamps: dict[str, Stamp]
    data: bytes


def files_of(item: Item, walk: Walk) -> Files:
    """Return the files that a block is drawn with.

    The first stamps are taken before anything is read, so that a change in between is seen at the next glance.
    """
    from blocklang.packs.gathering import read_with_placed

    path = _file(locate(item.file, walk.library).as_posix())
    first = stamps((path, str(Path(path).parent)))
    source = open_block(item.file, walk.library)
    if not isinstance(source, SourceText):
        return Files(first, b"")
    found = read_with_placed(source, walk.library, walk.plugged.cells).found
    texts = dict.fromkeys((source, *(text for _, _, text in found)))
    placed = stamps(_file(text.name) for text in texts)
    return Files(first | placed | first, "\0".join(text.text for text in texts).encode())


def told(item: Item, before: Followed, plan: "SewingPlan | None", changed: set[str]) -> str:
    """Return a sentence on what changed since the block last was right; nothing when it is seen for the first time."""
    from blocklang.packs.comparing import compare

    if plan is None:
        return f"{item.stem} is made as soon as this is right:"
    if before.version is None:
        return ""
    changes = compare({item.stem: before.version}, {item.stem: _version(before.data, plan)})
    phrases = [phrase for change in changes for phrase in change.phrases]
    where = ", ".join(_others(before, changed))
    return f"{item.stem}{f' ({where})' if where else ''}: {'; '.join(phrases) or 'right again, and as it was'}."


def _version(data: bytes, plan: "SewingPlan") -> "Version":
    from blocklang.catalogue.working_out import facts_of
    from blocklang.packs.comparing import Version

    return Version(data, plan.block, facts_of(plan.assembly))


def _others(followed: Followed, changed: set[str]) -> Iterator[str]:
    """Name the changed files that the block places."""
    _, _, *placed = followed.stamps
    return (Path(path).name for path in placed if path in changed)


def _file(path: str) -> str:
    """Return the file that a path leads to or into; a block in a pack changes with its pack."""
    whole = Path(path)
    return next((str(part) for part in (whole, *whole.parents) if part.is_file()), path)
