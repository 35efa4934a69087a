"""The targets by name: what each does with bytes, and the bytes it starts from."""

import random
import re
from collections.abc import Callable
from pathlib import Path
from typing import NamedTuple

from tests.fuzz import packs, routes, typed
from tests.fuzz.texts import LIBRARY
from tests.packs.zips import folded

CASES = Path(__file__).parents[1] / "cases"
HOSTILE = Path(__file__).parents[1] / "hostile" / "corpus"
MOST_SEED = 1_500  # bytes of a file to start from; a fuzzer makes more of short ones


class Target(NamedTuple):
    """What is done with bytes, where to start, how long an input may be, and the code whose lines are counted."""

    run: Callable[[bytes], None]
    seeds: Callable[[], list[bytes]]
    longest: int
    covers: tuple[str, ...]


def _files() -> list[bytes]:
    paths = [*sorted(LIBRARY.rglob("*.block")), *sorted(CASES.glob("*.block")), *sorted(HOSTILE.glob("*.block"))]
    texts = [data for path in paths if 0 < len(data := path.read_bytes()) <= MOST_SEED]
    return [data for data in texts if not re.search(rb"counts [1-9]\d\d", data)]  # large blocks take most of the time


def _packs() -> list[bytes]:
    return [folded(), folded("a.block", "parts/b.block")]


def _decisions(count: int, length: int) -> Callable[[], list[bytes]]:
    chance = random.Random(count)  # the same ones every time
    return lambda: [chance.randbytes(length) for _ in range(count)]


def _typed() -> list[bytes]:
    typed.plugged_once()  # before any input is timed
    return _decisions(200, 80)()


ROUTE = (
    "language",
    "graph",
    "assembly",
    "pressing",
    "cutting",
    "plan",
    "thickness",
    "foundation",
    "paper_piecing",
    "bias",
)
READING = (
    "packs/archive",
    "packs/reading",
    "packs/manifest",
    "packs/file_names",
    "packs/finding",
    "packs/verifying",
    "packs/folding",
)
TARGETS = {
    "bytes": Target(routes.check_bytes, _files, 4_000, ("language", "graph", "diagnostics")),
    "route": Target(routes.whole_route, _decisions(300, 200), 400, ROUTE),
    "outputs": Target(routes.outputs_made, _decisions(300, 200), 400, (*ROUTE, "cloth", "blocklang_")),
    "pack-bytes": Target(packs.any_bytes, _packs, 6_000, READING),
    "packs": Target(packs.changed_archive, _decisions(100, 60), 300, READING),
    "records": Target(packs.records, _decisions(100, 60), 600, ("packs/manifest", "packs/signing", "catalogue/index")),
    "command-line": Target(
        typed.command_line, _decisions(200, 80), 300, ("cli", "language/overriding", "catalogue/searching")
    ),
}
