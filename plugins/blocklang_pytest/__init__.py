"""The pytest plugin `blocklang`: a workbench, and the blocks of the library one by one.

Every run of pytest loads this module wherever blocklang is installed, so it imports nothing of blocklang until a test
asks for a fixture. It stands outside the package blocklang because pytest rewrites the assertions of the package that
its plugin is in, where that is installed in place, and that takes longer than many a test.
"""

from collections.abc import Iterator
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from blocklang.testing import Workbench

BLOCK = "blocklang_block"
MARK = "blocklang_blocks"
OPTION = "--blocklang-blocks"
TIMES = "blocklang_times"
MOST_SHOWN = 10


def pytest_addoption(parser: pytest.Parser) -> None:
    """Let a person narrow the blocks for one run."""
    words = "Try plugins on these blocks of the library only, such as '*star*'. Can be repeated."
    parser.getgroup("blocklang").addoption(OPTION, metavar="PATTERN", action="append", default=[], help=words)


def pytest_configure(config: pytest.Config) -> None:
    """Make the mark known."""
    config.addinivalue_line("markers", f"{MARK}(*patterns): give `{BLOCK}` only the blocks that fit a pattern")


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """Run a test that asks for a block once for every block."""
    if BLOCK not in metafunc.fixturenames or _is_given(metafunc):
        return
    from blocklang.testing import Workbench

    patterns = [str(one) for mark in metafunc.definition.iter_markers(MARK) for one in mark.args]
    bench = Workbench()
    names = bench.blocks(*patterns)
    if not names:
        raise pytest.UsageError(f"No block of the library fits {' or '.join(patterns)}.")
    chosen = frozenset(bench.blocks(*metafunc.config.getoption(OPTION)))
    metafunc.parametrize(BLOCK, [name for name in names if name in chosen], indirect=True)


def _is_given(metafunc: pytest.Metafunc) -> bool:
    return any(BLOCK in str(mark.args[0]) for mark in metafunc.definition.iter_markers("parametrize") if mark.args)


@pytest.fixture
def blocklang_block(request: pytest.FixtureRequest) -> str:
    """Name a block of the library; a test that asks for one is run once for every block."""
    return str(request.param)


@pytest.fixture(scope="session")
def _blocklang_session_workbench() -> "Workbench":
    """One workbench for all tests, so that a block is planned once."""
    from blocklang.testing import Workbench

    return Workbench()


@pytest.fixture
def blocklang_workbench(
    request: pytest.FixtureRequest, _blocklang_session_workbench: "Workbench"
) -> "Iterator[Workbench]":
    """Plans the blocks of the library, and tries on them what a plugin offers."""
    before = len(_blocklang_session_workbench.times)
    yield _blocklang_session_workbench
    taken = [(one.what, one.block, one.seconds) for one in _blocklang_session_workbench.times[before:]]
    request.node.user_properties.append((TIMES, taken))


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """Say which blocks took longest, where the workbench was used."""
    reports = (one for several in terminalreporter.stats.values() for one in several)
    found = (value for one in reports if getattr(one, "when", "") == "teardown" for name, value in one.user_properties
             if name == TIMES)  # fmt: skip
    times = sorted((tuple(one) for value in found for one in value), key=lambda one: (-one[2], *one[:2]))
    if times:
        terminalreporter.section("blocklang: what took longest", sep="-")
        for what, block, seconds in times[:MOST_SHOWN]:
            terminalreporter.line(f"{seconds:8.2f} s  {what} of {block}")
        terminalreporter.line(f"{sum(one[2] for one in times):8.2f} s  in all, {len(times)} times")
