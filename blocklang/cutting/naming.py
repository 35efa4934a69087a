"""What a line of the cutting list is called."""

import re
from collections.abc import Hashable, Iterable, Sequence
from dataclasses import replace

from blocklang.cutting.called import PatchName, Thing, called, thing_of
from blocklang.cutting.nouns import NOUNS

#: The place of a cell in its grid says nothing about the shape that lies there.
_CELL = re.compile(r"r\d+c\d+|\d+")


def name_of(names: Iterable[str], method: str) -> PatchName:
    """Return what equal patches have in common in their names, else what their shape is called."""
    parts = [[part for part in name.split(".") if not _CELL.fullmatch(part)] for name in names]
    for way in (".".join, _first, _last):
        said = {way(part) for part in parts}
        if len(said) == 1 and said != {""}:
            return called(Thing(said.pop()))
    return called(_shape(method))


def told_apart(names: Sequence[PatchName], methods: Sequence[str], shapes: Sequence[Hashable]) -> tuple[PatchName, ...]:
    """Return the names of lines, with more behind those that would mean several kinds.

    That is the shape where it tells them apart ("toes square", "toes half-square triangle"), else a letter ("ray A").
    """
    kinds = list(zip(methods, shapes, strict=True))
    known: dict[str, list[tuple[str, Hashable]]] = {}
    for name, kind in zip(names, kinds, strict=True):
        places = known.setdefault(name, [])
        if kind not in places:
            places.append(kind)
    return tuple(_told_apart(name, kind, known[name]) for name, kind in zip(names, kinds, strict=True))


def _told_apart(name: PatchName, kind: tuple[str, Hashable], kinds: list[tuple[str, Hashable]]) -> PatchName:
    if len(kinds) == 1:
        return name
    if len({method for method, _ in kinds}) == len(kinds):
        return called(_with_shape(name, _shape(kind[0])))
    return called(replace(thing_of(name), letter=_letters(kinds.index(kind))))


def _with_shape(name: PatchName, shape: Thing) -> Thing:
    return Thing(thing_of(name).name or name, shape.shape) if shape.shape else Thing(f"{name} {shape.name}")


def _shape(method: str) -> Thing:
    """Return the shape that a method cuts; a method without a word for it has its own name said."""
    shape = NOUNS.get(method)
    return Thing(method.replace("-", " ")) if shape is None else Thing(shape=shape)


def _letters(place: int) -> str:
    """Return A, B ... Z, AA, AB ..."""
    before, last = divmod(place, 26)
    return (_letters(before - 1) if before else "") + chr(ord("A") + last)


def _first(parts: list[str]) -> str:
    return parts[0] if parts else ""


def _last(parts: list[str]) -> str:
    return parts[-1] if parts else ""
