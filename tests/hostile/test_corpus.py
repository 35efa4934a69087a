"""Every file and pack of the corpus is answered as it says: exit code, messages and places, soon, and in little memory.

A file of the corpus begins with its answer as a comment, such as `# 1: no-area 9:1`. To renew the comments after a
change, run `BLOCKLANG_RENEW=1 pytest tests/hostile/test_corpus.py` and read the difference. What is no readable text
is made: files in made.py, packs in packs.py.
"""

import os
import resource
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.hostile.answering import answer, pack_answer
from tests.hostile.made import FILES
from tests.hostile.packs import PACKS

CORPUS = Path(__file__).with_name("corpus")
WRITTEN = sorted(path.name for path in CORPUS.glob("*.block"))
RENEW = bool(os.environ.get("BLOCKLANG_RENEW"))
MOST_MEMORY = 300_000  # kilobytes that all of the corpus together adds to this process


@pytest.fixture(scope="module", autouse=True)
def memory() -> Iterator[None]:
    before = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    yield
    assert resource.getrusage(resource.RUSAGE_SELF).ru_maxrss - before < MOST_MEMORY


@pytest.fixture(scope="module", autouse=True)
def warmed_up(memory) -> None:
    """Load what planning needs, so that the time of the first file is its own."""
    answer(CORPUS / "the-same-wish-ten-times.block")


@pytest.mark.parametrize("name", WRITTEN)
def test_written_file_is_answered(name, monkeypatch) -> None:
    monkeypatch.chdir(CORPUS)
    first, _, rest = (CORPUS / name).read_bytes().partition(b"\n")
    answered = answer(Path(name))
    if RENEW:
        (CORPUS / name).write_bytes(f"# {answered}\n".encode() + rest)
        return
    assert first.decode() == f"# {answered}"


@pytest.mark.parametrize("name", FILES)
def test_made_file_is_answered(name, monkeypatch, tmp_path) -> None:
    monkeypatch.chdir(tmp_path)
    Path("hostile.block").write_bytes(FILES[name].make())
    assert answer(Path("hostile.block"), plan=False) == FILES[name].answer


@pytest.mark.parametrize("name", PACKS)
@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_pack_is_answered(name, monkeypatch, tmp_path) -> None:
    monkeypatch.chdir(tmp_path)
    Path("tides.pack").write_bytes(PACKS[name].make())
    assert pack_answer(Path("tides.pack")) == PACKS[name].answer


def test_corpus_is_as_large_as_it_says() -> None:
    assert len(WRITTEN) + len(FILES) + len(PACKS) >= 400
