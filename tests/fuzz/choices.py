"""Bytes as a row of decisions, so that a fuzzer that changes bytes changes what is drafted from them."""

from collections.abc import Sequence
from typing import TypeVar

Item = TypeVar("Item")


class Choices:
    """Takes decisions from bytes; when they are used up, every further decision is the first one offered."""

    def __init__(self, data: bytes) -> None:
        """Stand at the first byte."""
        self.data = data
        self.at = 0

    @property
    def used_up(self) -> bool:
        """Whether no byte is left."""
        return self.at >= len(self.data)

    def below(self, count: int) -> int:
        """Return a number from 0 up to one less than count, which is at most 65,536."""
        width = 1 if count <= 256 else 2
        taken = int.from_bytes(self.take(width), "big")
        return taken % count

    def take(self, count: int) -> bytes:
        """Return the next bytes as they are, fewer at the end."""
        taken = self.data[self.at : self.at + count]
        self.at += count
        return taken

    def rest(self) -> bytes:
        """Return all that is left."""
        return self.take(len(self.data))

    def one_of(self, items: Sequence[Item]) -> Item:
        """Return one of the items."""
        return items[self.below(len(items))]

    def some_of(self, items: Sequence[Item], most: int) -> list[Item]:
        """Return up to `most` of the items, repeats allowed."""
        return [self.one_of(items) for _ in range(self.below(most + 1))]

    def yes(self, times: int, of: int = 16) -> bool:
        """Say yes so many times of sixteen; no when the bytes are used up."""
        return not self.used_up and self.below(of) < times
