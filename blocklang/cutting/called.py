"""What equal patches are called, alone and in a sentence: "corner", "the corner", "4 corners"."""

import re
from dataclasses import dataclass, replace
from typing import Final

from blocklang.wording import LookUp, Message, Noun, Place, Saying, message, say

#: Ends in a letter of its own ("unit A", "patch B"), so that it has no plural.
_LETTERED: Final = re.compile(r" [A-Z]+$")
#: Names of authors that end so say by themselves that they are patches.
_SHAPES: Final = ("patch", "triangle", "square", "rectangle", "parallelogram", "trapezoid", "hexagon")

_ALONE: Final = message("{name}", context="a name that the author gave to patches, in a list")
_THE: Final = message("{name}", context="a name that the author gave to patches, after: the")
_THE_PATCH: Final = message("{name} patch", context="a name that the author gave to patches, after: the")
_TWO: Final = message(
    "{name}", context="a name that the author gave to patches, two of them; the English goes on: patches"
)
_EACH: Final = message("{name} patches", context="a name that the author gave to patches, after: each of the 8")
_EACH_S: Final = message("{name}s", context="a name that the author gave to patches, after: each of the 8")
_EACH_ES: Final = message("{name}es", context="a name that the author gave to patches, after: each of the 8")
_SEVERAL: Final = message("{name}", context="a name that the author gave to patches, after a number")
_SEVERAL_S: Final = message("{name}s", context="a name that the author gave to patches, after a number")
_SEVERAL_ES: Final = message("{name}es", context="a name that the author gave to patches, after a number")


@dataclass(frozen=True, slots=True)
class Thing:
    """What a name is made of: the author's own word, else a shape, or both; a letter and a fabric tell some apart."""

    name: str = ""
    shape: Noun | None = None
    letter: str = ""
    fabric: str = ""

    def said(self, place: Place, count: int = 2) -> Saying:
        """Say it for a place in a sentence, of a number of patches."""
        said = self._core(place, count)
        if self.letter:
            said = say("{patch} {letter}", patch=said, letter=self.letter)
        return say("{fabric} {patch}", fabric=self.fabric, patch=said) if self.fabric else said

    def _core(self, place: Place, count: int) -> Saying:
        if self.shape is None:
            return _message(self.name, place).say(name=self.name)
        wanted = self.shape.message(place)
        shape = wanted.number(count) if wanted.plural else wanted.say()
        return say("{name} {shape}", name=self.name, shape=shape) if self.name else shape


def _message(name: str, place: Place) -> Message:
    match place:
        case Place.THE_PATCH:
            return _THE if name.endswith(_SHAPES) else _THE_PATCH
        case Place.EACH:
            return (_EACH_ES if name.endswith("patch") else _EACH_S) if name.endswith(_SHAPES) else _EACH
        case Place.SEVERAL:
            return _SEVERAL_ES if name.endswith(("x", "ch", "sh")) else _SEVERAL if name.endswith("s") else _SEVERAL_S
        case _:
            return {Place.ALONE: _ALONE, Place.THE: _THE, Place.TWO: _TWO}[place]


class PatchName(Saying):
    """What patches are called in a list, with what that is made of, so that it can be said elsewhere too."""

    __slots__ = ("thing",)
    thing: Thing

    def said(self, look_up: LookUp) -> str:
        """Return the name as a catalogue has it."""
        return self.thing.said(Place.ALONE).said(look_up)


def called(thing: Thing) -> PatchName:
    """Return the name of something."""
    name = PatchName(thing.said(Place.ALONE))
    name.thing = thing
    return name


def thing_of(name: str) -> Thing:
    """Return what a name is made of; any text that is no such name is taken for an author's."""
    if isinstance(name, PatchName):
        return name.thing
    letter = _LETTERED.search(name)
    return Thing(name[: letter.start()], letter=letter[0].strip()) if letter else Thing(name)


def of_fabric(name: str, fabric: str) -> PatchName:
    """Return a name with a fabric, which tells it from one that is else the same: "Fog corner"."""
    return called(replace(thing_of(name), fabric=fabric))


def the(name: str) -> Saying:
    """Say one of a kind: "the corner"."""
    return say("the {patch}", patch=thing_of(name).said(Place.THE))


def the_patch(name: str) -> Saying:
    """Say one of a kind and that it is a patch: "the corner patch", "the square"."""
    return say("the {patch}", patch=thing_of(name).said(Place.THE_PATCH))


def two_patches(name: str) -> Saying:
    """Say a pair: "two corner patches"."""
    return say("two {patch} patches", patch=thing_of(name).said(Place.TWO))


def each_of(name: str, count: int) -> Saying:
    """Say all of a kind, one by one: "each of the 8 corner patches"; of one alone "the corner patch"."""
    if count == 1:
        return the_patch(name)
    return say("each of the {count} {patches}", count=count, patches=thing_of(name).said(Place.EACH, count))


def several(name: str, count: int) -> Saying:
    """Say a number of a kind: "the corner", "two corners", "4 corners", "4 of ray A"."""
    if count == 1:
        return the(name)
    if _LETTERED.search(name):
        return say("two of {name}", name=name) if count == 2 else say("{count} of {name}", count=count, name=name)
    patches = thing_of(name).said(Place.SEVERAL, count)
    return (
        say("two {patches}", patches=patches) if count == 2 else say("{count} {patches}", count=count, patches=patches)
    )
