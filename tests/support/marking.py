"""Marks for the parts of a long test: some run every time, some with every change, the rest in the sweep alone."""

import pytest


def marks_of(number: int, quick: int, every_time: int) -> tuple[pytest.MarkDecorator, ...]:
    """Return the marks of a part: none below `quick`, slow below `every_time`, and left to the sweep from there on."""
    if number < quick:
        return ()
    return (pytest.mark.slow,) if number < every_time else (pytest.mark.slow, pytest.mark.sweep)
