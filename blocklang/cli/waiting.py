"""Something to look at while long work goes on, for people at a terminal only."""

import sys
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from typing import TYPE_CHECKING

from blocklang.cli.failing import FINE, say
from blocklang.cli.showing import show

if TYPE_CHECKING:
    from rich.progress import Progress, TaskID

    from blocklang.diagnostics import Diagnostic


@contextmanager
def working(what: str) -> Iterator[None]:
    """Show what is going on until it is done; nothing where standard error is not a terminal."""
    if not sys.stderr.isatty():
        yield
        return
    from rich.console import Console

    with Console(stderr=True).status(f"{what} ..."):
        yield


@dataclass(frozen=True, slots=True)
class Going:
    """Work of several parts that goes on; without a bar nothing is shown of it."""

    bar: "Progress | None" = None
    task: "TaskID | None" = None

    def on(self, what: str) -> None:
        """Say what is being done now."""
        if self.bar is not None and self.task is not None:
            # Shown at once: what follows may keep the processor so busy that the bar does not move for seconds.
            self.bar.update(self.task, description=f"{what} ...", refresh=True)

    def done(self, parts: int = 1) -> None:
        """Count parts as done."""
        if self.bar is not None and self.task is not None:
            self.bar.advance(self.task, parts)

    @property
    def is_seen(self) -> bool:
        """Whether somebody sees how far the work has come."""
        return self.bar is not None

    def say(self, sentence: str) -> None:
        """Say a sentence above the bar."""
        with self._aside():
            say(sentence)

    def show(self, diagnostics: "Iterable[Diagnostic]") -> int:
        """Show diagnostics above the bar, as wide as they are, and return the exit code that they call for."""
        diagnostics = tuple(diagnostics)
        if not diagnostics:
            return FINE
        with self._aside():
            return show(diagnostics)

    @contextmanager
    def _aside(self) -> Iterator[None]:
        """Take the bar away for a moment, so that what is said is not broken to its width."""
        if self.bar is None:
            yield
            return
        self.bar.stop()
        try:
            yield
        finally:
            self.bar.start()


@contextmanager
def going_through(parts: int) -> Iterator[Going]:
    """Show how far work of several parts has come; a turning sign alone when there is one part."""
    if sys.stderr is None or not sys.stderr.isatty():
        yield Going()
        return
    from rich.console import Console
    from rich.progress import BarColumn, MofNCompleteColumn, Progress, SpinnerColumn, TextColumn

    counted = (BarColumn(), MofNCompleteColumn()) if parts > 1 else ()
    words = TextColumn("{task.description}", markup=False)
    with Progress(SpinnerColumn(), *counted, words, console=Console(stderr=True), transient=True) as bar:
        yield Going(bar, bar.add_task("", total=parts))
