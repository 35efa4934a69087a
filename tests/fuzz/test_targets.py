"""Each fuzz target for a moment, from its own seeds with small changes; and what counts as a crash is caught."""

import random
from pathlib import Path

import pytest

from tests.fuzz.choices import Choices
from tests.fuzz.targets import TARGETS
from tests.fuzz.texts import drafted
from tests.fuzz.watching import Crashes, PromiseBrokenError, in_time, promise

#: Inputs of each target: about a second of work.
COUNTS = {"bytes": 60, "route": 15, "outputs": 8, "pack-bytes": 300, "packs": 120, "records": 200, "command-line": 8}


@pytest.mark.parametrize("name", TARGETS)
@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_target_runs_without_a_crash(name, tmp_path, monkeypatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    target, chance = TARGETS[name], random.Random(name)
    seeds = target.seeds()
    crashes = Crashes(tmp_path / "crashes")
    for _ in range(COUNTS[name]):
        crashes.watch(target.run, changed(chance.choice(seeds), chance), seconds=20)
    assert crashes.places == {}, [path.read_text() for path in (tmp_path / "crashes").glob("*.txt")][:1]


def changed(data: bytes, chance: random.Random) -> bytes:
    """Put a few bytes in the place of others, up to three times."""
    held = bytearray(data)
    for _ in range(chance.randrange(4)):
        at = chance.randrange(len(held) + 1)
        held[at : at + chance.randrange(4)] = chance.randbytes(chance.randrange(4))
    return bytes(held)


def test_every_target_is_tried() -> None:
    assert set(COUNTS) == set(TARGETS)


def test_drafted_files_are_the_same_every_time_and_mostly_differ() -> None:
    made = [drafted(Choices(random.Random(seed).randbytes(200))) for seed in range(20)]
    assert made == [drafted(Choices(random.Random(seed).randbytes(200))) for seed in range(20)]
    assert len(set(made)) > 15


def throws(data: bytes) -> None:
    raise KeyError(data)


def hangs(_: bytes) -> None:
    while True:
        try:
            sum(range(1_000))
        except Exception:  # noqa: BLE001 - what a program may do, and still be found
            continue


def breaks_a_promise(_: bytes) -> None:
    promise(1 + 1 == 3, "sums come out: not today")


@pytest.mark.parametrize(
    ("run", "place"),
    [
        (throws, "KeyError at outside"),
        (hangs, "Hang"),
        (breaks_a_promise, "PromiseBrokenError at outside sums come out"),
    ],
)
def test_crash_is_kept_once_with_its_input(run, place, tmp_path: Path) -> None:
    crashes = Crashes(tmp_path / "crashes")
    for data in (b"first", b"second"):
        crashes.watch(run, data, seconds=0.2)
    assert crashes.places == {place: 2}
    (kept,) = (tmp_path / "crashes").glob("*.input")
    assert kept.read_bytes() == b"first"


def test_work_in_time_is_left_alone() -> None:
    with in_time(5):
        promise(True, "nothing is wrong")
    with pytest.raises(PromiseBrokenError):
        promise(False, "something is wrong")
