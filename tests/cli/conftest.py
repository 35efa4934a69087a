"""A way to run commands in this process and look at everything a person would see."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from blocklang.cli.program import run

GOOD = """\
block "Harbour Steps"
language 1
size 9 in

fabric fog  background light #e8eef2
fabric deep accent     dark  #1f3a5f

rows
  deep fog  deep
  fog  deep fog
  deep fog  deep
end
"""
BAD = GOOD.replace("  deep fog  deep\nend", "  deap fog  deep\nend")


@dataclass(frozen=True)
class Ran:
    """What a command did: its exit code, standard output and standard error."""

    code: int
    out: str
    err: str
    raw: bytes


Command = Callable[..., Ran]


@pytest.fixture(autouse=True, scope="session")
def index_of_its_own(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """Keep the library's index in a folder of the tests, and build it once for all of them."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


@pytest.fixture
def command(capsysbinary: pytest.CaptureFixture[bytes]) -> Command:
    """Run one command line."""

    def run_command(*arguments: str | Path) -> Ran:
        capsysbinary.readouterr()
        code = run([str(argument) for argument in arguments])
        out, err = capsysbinary.readouterr()
        return Ran(code, out.decode("utf-8", "replace"), err.decode(), out)

    return run_command


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Stand in an empty folder, with no library but the one that ships."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("BLOCKLANG_LIBRARY", raising=False)
    return tmp_path


@pytest.fixture
def good(folder: Path) -> Path:
    """Write a block that is right."""
    path = folder / "good.block"
    path.write_text(GOOD, encoding="utf-8")
    return path


@pytest.fixture
def bad(folder: Path) -> Path:
    """Write a block with one mistake: a fabric that is not there."""
    path = folder / "bad.block"
    path.write_text(BAD, encoding="utf-8")
    return path
