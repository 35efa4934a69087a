"""Nouns in the places where another language would change them: after an article, after a number."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from blocklang.wording.sayings import Message


class Place(StrEnum):
    """Where in a sentence a noun stands; what translators read beside it."""

    ALONE = "a name in a list"
    THE = "after: the"
    THE_PATCH = "after: the (a patch)"
    TWO = "two of these; the English goes on: patches"
    SEVERAL = "after a number"
    EACH = "after: each of the 8"


@dataclass(frozen=True, slots=True)
class Noun:
    """An English noun with its plural; `is_patch` tells that it says by itself that it is a piece of fabric."""

    one: str
    many: str
    is_patch: bool

    def message(self, place: Place) -> Message:
        """Return the message for a place in a sentence."""
        return Message(self._text(place), self.many if place is Place.SEVERAL else "", place.value)

    def messages(self) -> Iterator[Message]:
        """Return the messages for all places."""
        return map(self.message, Place)

    def _text(self, place: Place) -> str:
        match place:
            case Place.EACH:
                return self.many if self.is_patch else f"{self.one} patches"
            case Place.THE_PATCH:
                return self.one if self.is_patch else f"{self.one} patch"
            case _:
                return self.one


def noun(one: str, many: str, *, is_patch: bool = True) -> Noun:
    """Return a noun that is said through the catalogue."""
    return Noun(one, many, is_patch)
