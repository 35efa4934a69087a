"""The index is believed only while files are as they were, and never needed."""

import json
import os
import subprocess
import sys
import time
from dataclasses import replace
from pathlib import Path

import pytest

from blocklang.catalogue.index import Index, Known, Stamp, index_path
from blocklang.catalogue.working_out import facts_of
from tests.support.blocks import grid, star
from tests.support.route import assembly_of

FACTS = facts_of(assembly_of(grid(3, 3)))
OTHER = facts_of(assembly_of(star()))
LONG_AGO = time.time() - 3600


def anywhere(name: str, path: str) -> bool:
    return True


@pytest.fixture
def files(tmp_path):
    """Write two block files an hour ago; the second is placed by the first."""
    paths = [tmp_path / "a.block", tmp_path / "b.block"]
    for path in paths:
        path.write_text(path.name)
        os.utime(path, (LONG_AGO, LONG_AGO))
    return [str(path) for path in paths]


@pytest.fixture
def kept(tmp_path, files):
    """Keep an index of both."""
    index = Index(tmp_path / "cache" / "index.json")
    stamps = [index.stamp(path) for path in files]
    index.learn(files[0], Known(stamps[0], FACTS, (("b", files[1], stamps[1]),)))
    index.learn(files[1], Known(stamps[1], OTHER))
    index.save()
    return index.path


def test_what_was_kept_is_known_again(kept, files) -> None:
    index = Index.load(kept)
    assert index.fresh(files[0], anywhere) == FACTS
    assert index.fresh(files[1], anywhere) == OTHER
    assert index.fresh("elsewhere", anywhere) is None


def test_file_that_has_not_changed_is_not_read(kept, files, monkeypatch) -> None:
    index = Index.load(kept)
    monkeypatch.setattr(Path, "read_bytes", lambda path: pytest.fail(f"{path} was read"))
    assert index.fresh(files[0], anywhere) == FACTS


def test_changed_file_is_not_believed(kept, files) -> None:
    Path(files[1]).write_text("changed")
    assert Index.load(kept).fresh(files[1], anywhere) is None


def test_changed_file_of_the_same_size_is_not_believed(kept, files) -> None:
    Path(files[1]).write_text("B.BLOCK")
    assert Index.load(kept).fresh(files[1], anywhere) is None


def test_block_whose_placed_block_changed_is_not_believed(kept, files) -> None:
    Path(files[1]).write_text("changed")
    assert Index.load(kept).fresh(files[0], anywhere) is None


def test_block_whose_placed_name_leads_elsewhere_is_not_believed(kept, files) -> None:
    index = Index.load(kept)
    assert index.fresh(files[0], lambda name, path: (name, path) != ("b", files[1])) is None


def test_file_only_touched_is_believed_after_a_look(kept, files) -> None:
    os.utime(files[1])
    index = Index.load(kept)
    assert index.fresh(files[1], anywhere) == OTHER
    assert index.changed


def test_file_written_at_the_same_moment_as_the_index_is_looked_into(tmp_path, files) -> None:
    """Within one tick of the clock a file can change twice, at one size and one time."""
    path = Path(files[1])
    path.write_text("first")
    written = path.stat().st_mtime_ns
    index = Index(tmp_path / "index.json")
    index.learn(files[1], Known(index.stamp(files[1]), OTHER))
    index.save()
    path.write_text("other")
    os.utime(path, ns=(written, written))
    assert Index.load(index.path).fresh(files[1], anywhere) is None


def test_gone_file_is_not_believed(kept, files) -> None:
    Path(files[1]).unlink()
    assert Index.load(kept).fresh(files[1], anywhere) is None


def damaged(change) -> bytes:
    def make(data: bytes) -> bytes:
        told = json.loads(data)
        change(told)
        return json.dumps(told).encode()

    return make


@pytest.mark.parametrize(
    "damage",
    [
        lambda data: b"",
        lambda data: data[: len(data) // 2],
        lambda data: b"[" * 100_000,
        lambda data: b"null",
        lambda data: b"\xff" + data,
        damaged(lambda told: told.update(format="blocklang.index/0")),
        damaged(lambda told: told.update(maker="someone")),
        damaged(lambda told: told.update(made="today")),
        damaged(lambda told: told.update(files=[])),
        damaged(lambda told: told.update(files={"a": 7})),
        damaged(lambda told: told["files"].update(x=[1, 2, "3", [], []])),
        damaged(lambda told: [values[3].__setitem__(7, "nine") for values in told["files"].values()]),
        damaged(lambda told: [values[3].pop() for values in told["files"].values()]),
        damaged(lambda told: [values.__setitem__(0, "1") for values in told["files"].values()]),
    ],
)
def test_broken_index_is_an_empty_one(kept, files, damage) -> None:
    kept.write_bytes(damage(kept.read_bytes()))
    index = Index.load(kept)
    assert index.known == {}
    assert index.fresh(files[0], anywhere) is None


def test_index_that_cannot_be_written_is_nobodys_fault(tmp_path, files) -> None:
    (tmp_path / "file").write_text("")
    index = Index(tmp_path / "file" / "index.json")
    index.learn(files[0], Known(Stamp(1, 1, ""), FACTS))
    index.save()
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a.block", "b.block", "file"]


def test_index_is_whole_or_as_before(kept, files, monkeypatch) -> None:
    before = kept.read_bytes()
    index = Index.load(kept)
    index.learn(files[0], Known(Stamp(1, 1, ""), replace(FACTS, title="New")))

    def full(path, data):
        raise OSError("no space left")

    monkeypatch.setattr(Path, "write_bytes", full)
    index.save()
    assert kept.read_bytes() == before
    assert [path.name for path in kept.parent.iterdir()] == ["index.json"]


def test_place_of_the_index(monkeypatch, tmp_path) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path))
    assert index_path() == tmp_path / "blocklang" / "index.json"
    monkeypatch.setenv("XDG_CACHE_HOME", "relative")
    assert index_path() is None


def test_gone_files_are_forgotten(kept, files) -> None:
    Path(files[1]).unlink()
    index = Index.load(kept)
    index.learn(files[0], Known(index.stamp(files[0]), FACTS))
    index.save()
    assert list(Index.load(kept).known) == [files[0]]


def test_index_is_whole_or_as_before_wherever_it_is_killed(kept, files, tmp_path) -> None:
    """A child is killed at the first thing it does to the disk, the next one at the second, until one is through."""
    before = kept.read_bytes()
    code = f"""
import os, signal, sys
from dataclasses import replace
from pathlib import Path
from blocklang.catalogue.index import Index
WRITES = {{"os.mkdir", "os.rename", "os.remove", "os.chmod"}}

def killed_at(number):
    pid = os.fork()
    if pid:
        return os.WIFSIGNALED(os.waitpid(pid, 0)[1])
    index, seen = Index.load(Path({str(kept)!r})), 0
    path, known = next(iter(index.known.items()))
    index.learn(path, known._replace(facts=replace(known.facts, title="New")))
    def listen(event, details):
        nonlocal seen
        if event in WRITES or event == "open" and (details[2] or 0) & (os.O_WRONLY | os.O_RDWR | os.O_CREAT):
            seen += 1
            if seen == number:
                os.kill(os.getpid(), signal.SIGKILL)
    sys.addaudithook(listen)
    index.save()
    os._exit(0)

number = 1
while killed_at(number):
    print(number, len(Index.load(Path({str(kept)!r})).known))
    number += 1
"""
    ran = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert ran.stdout.splitlines() == ["1 2", "2 2", "3 2"]  # the folder, the draft, the renaming
    assert kept.read_bytes() != before
    assert Index.load(kept).fresh(files[0], anywhere) == replace(FACTS, title="New")


def test_index_of_the_largest_size_is_read_and_a_larger_one_is_not(kept, files, monkeypatch) -> None:
    monkeypatch.setattr("blocklang.catalogue.index.MOST_INDEX_BYTES", kept.stat().st_size)
    assert Index.load(kept).fresh(files[0], anywhere) == FACTS
    monkeypatch.setattr("blocklang.catalogue.index.MOST_INDEX_BYTES", kept.stat().st_size - 1)
    assert Index.load(kept).known == {}
