"""A sentence that knows what it is made of, so that it can be said again in another language."""

import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final, Union

#: What goes into a named field: text of the author, a number, or another saying.
Part = Union[str, int]
#: Returns the text of a message in a language; the number is what the message counts, None when it counts nothing.
LookUp = Callable[["Message", int | None], str]

_HERE: Final = str(Path(__file__).parent)
_FIELD: Final = re.compile(r"\{(\w+)\}")
#: Stands before every part while a text is said, so that only words that meet there run together.
SEAM: Final = "\0"


class Saying(str):
    """English text that also keeps what it is made of; wherever text is wanted, it is that English text.

    Sayings are made by `say`, `say_number`, `say_decimal`, `listed` and `joined`. Text that is cut or glued by other
    means is plain text again and stays English.
    """

    __slots__ = ()

    def said(self, look_up: LookUp) -> str:
        """Return the text as a catalogue has it."""
        raise NotImplementedError

    def __deepcopy__(self, _: object) -> "Saying":
        return self

    def __copy__(self) -> "Saying":
        return self


class _Told(Saying):
    __slots__ = ("_count", "_message", "_parts")
    _message: "Message"
    _count: int | None
    _parts: dict[str, Part]

    def said(self, look_up: LookUp) -> str:
        text = look_up(self._message, self._count)
        return _FIELD.sub(lambda field: self._part(field, look_up), text) if self._parts else text

    def _part(self, field: re.Match[str], look_up: LookUp) -> str:
        part = self._parts.get(field[1], field[0])
        return SEAM + (part.said(look_up) if isinstance(part, Saying) else str(part))


@dataclass(frozen=True, slots=True)
class Message:
    """A text of the catalogue, with named fields in braces: English, which is also what it is looked up by.

    `plural` is the English for more than one. `context` tells apart messages that are one in English and two
    elsewhere. `home` is the folder of the catalogues.
    """

    text: str
    plural: str = ""
    context: str = ""
    home: str = _HERE

    def say(self, **parts: Part) -> Saying:
        """Say it with the parts in its fields."""
        saying = _Told(self.text.format(**parts) if parts else self.text)
        saying._message, saying._count, saying._parts = self, None, parts
        return saying

    def number(self, count: int, **parts: Part) -> Saying:
        """Say it of a number of things, which stands in the field `count`."""
        parts["count"] = count
        saying = _Told((self.text if count == 1 else self.plural).format(**parts))
        saying._message, saying._count, saying._parts = self, count, parts
        return saying


@dataclass(frozen=True, slots=True)
class Words:
    """The words of one package: messages whose catalogues lie in its own folder, a file a language ("es.mo")."""

    home: str = _HERE

    @classmethod
    def beside(cls, file: str) -> "Words":
        """Return the words of the module in a file; pass `__file__`."""
        return cls(str(Path(file).parent))

    def message(self, text: str, plural: str = "", /, *, context: str = "") -> Message:
        """Return a message to say later: for tables of sentences."""
        return _message(text, plural, context, self.home)

    def say(self, text: str, /, *, context: str = "", **parts: Part) -> Saying:
        """Say a sentence: `say("Sew {first} to {second}.", first=..., second=...)`."""
        return _message(text, "", context, self.home).say(**parts)

    def say_number(self, one: str, many: str, count: int, /, *, context: str = "", **parts: Part) -> Saying:
        """Say a sentence of a number of things: `say_number("{count} seam", "{count} seams", count)`."""
        return _message(one, many, context, self.home).number(count, **parts)


@cache
def _message(text: str, plural: str, context: str, home: str) -> Message:
    """Return a message; there are as many as sentences in the code, and each is said many times."""
    return Message(text, plural, context, home)


OURS: Final = Words()
message, say, say_number = OURS.message, OURS.say, OURS.say_number
