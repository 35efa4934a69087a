"""Something to look at while long work goes on, for people at a terminal only."""

import sys
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def working(what: str) -> Iterator[None]:
    """Show what is going on until it is done; nothing where standard error is not a terminal."""
    if not sys.stderr.isatty():
        yield
        return
    from rich.console import Console

    with Console(stderr=True).status(f"{what} ..."):
        yield
