"""What a line of the cutting list is called."""

import re
from collections.abc import Hashable, Iterable, Sequence

_NOUNS = {
    "half-square-triangle": "half-square triangle",
    "quarter-square-triangle": "quarter-square triangle",
    "half-rectangle-triangle": "half-rectangle triangle",
    "equilateral-triangle": "equilateral triangle",
    "rhombus": "diamond",
    "template": "patch",
}
#: The place of a cell in its grid says nothing about the shape that lies there.
_CELL = re.compile(r"r\d+c\d+|\d+")


def name_of(names: Iterable[str], method: str) -> str:
    """Return what equal patches have in common in their names, else what their shape is called."""
    parts = [[part for part in name.split(".") if not _CELL.fullmatch(part)] for name in names]
    for way in (".".join, _first, _last):
        said = {way(part) for part in parts}
        if len(said) == 1 and said != {""}:
            return said.pop()
    return _noun(method)


def told_apart(names: Sequence[str], methods: Sequence[str], shapes: Sequence[Hashable]) -> tuple[str, ...]:
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


def _told_apart(name: str, kind: tuple[str, Hashable], kinds: list[tuple[str, Hashable]]) -> str:
    if len(kinds) == 1:
        return name
    if len({method for method, _ in kinds}) == len(kinds):
        return f"{name} {_noun(kind[0])}"
    return f"{name} {_letters(kinds.index(kind))}"


def _noun(method: str) -> str:
    return _NOUNS.get(method, method.replace("-", " "))


def _letters(place: int) -> str:
    """Return A, B ... Z, AA, AB ..."""
    before, last = divmod(place, 26)
    return (_letters(before - 1) if before else "") + chr(ord("A") + last)


def _first(parts: list[str]) -> str:
    return parts[0] if parts else ""


def _last(parts: list[str]) -> str:
    return parts[-1] if parts else ""
