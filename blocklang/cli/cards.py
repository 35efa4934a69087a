"""A block of the library at a glance: a small picture beside what there is to know before sewing it."""

import os
import sys
from collections.abc import Iterable, Iterator, Mapping
from itertools import zip_longest
from typing import TYPE_CHECKING

from blocklang.block import LengthUnit
from blocklang.catalogue.facts import Facts
from blocklang.catalogue.picture import small_picture
from blocklang.cli.cataloguing import Listed
from blocklang.cli.choices import overrides_from
from blocklang.cli.lengths import shown_size
from blocklang.diagnostics.snippets import printable

if TYPE_CHECKING:
    from blocklang.block import Block
    from blocklang.cli.walking import Walk

#: Lines of a picture; two columns are about as wide as one line is high.
ROWS = 8
MOST_COLUMNS = 48
#: The eight colours of a plain terminal, as most terminals show them.
EIGHT = ((0, 0, 0), (205, 0, 0), (0, 205, 0), (205, 205, 0), (0, 0, 238), (205, 0, 205), (0, 205, 205), (229, 229, 229))
RESET = "\x1b[0m"


def cards(found: Iterable[Listed], walk: "Walk") -> Iterator[str]:
    """Return one card for each block."""
    paint = colours_of_terminal()
    for one in found:
        block = walk.draft(str(one.entry.path), overrides_from(None, ())).block if one.facts else None
        if one.facts is None or block is None:
            yield f"{one.entry.name}: (has mistakes), {one.entry.shelf.origin}\n"
        else:
            yield _card(picture_lines(block, paint), list(_lines(one, one.facts)))


def colours_of_terminal() -> str:
    """Return how standard output shows colours: "24 bit", "8 colours", or "" for not at all."""
    plain = not sys.stdout.isatty() or os.environ.get("NO_COLOR") or os.environ.get("TERM") in ("dumb", None)
    if plain:
        return ""
    return "24 bit" if os.environ.get("COLORTERM") in ("truecolor", "24bit") else "8 colours"


def picture_lines(block: "Block", paint: str) -> list[str]:
    """Return the picture: half blocks in full colour, letters on eight colours, or letters alone."""
    width, height = block.size
    columns = max(2, min(MOST_COLUMNS, round(2 * ROWS * width / height)))
    colours = {fabric.id: fabric.colour for fabric in block.fabrics}
    if paint == "24 bit":
        rows = small_picture(block, columns, 2 * ROWS)
        return [_half_blocks(upper, lower, colours) for upper, lower in zip(rows[::2], rows[1::2], strict=True)]
    letters = _letters(block)
    rows = small_picture(block, columns, ROWS)
    if not paint:
        return ["".join(letters[fabric] for fabric in row) for row in rows]
    return ["".join(_on_colour(letters[fabric], colours.get(fabric, "")) for fabric in row) + RESET for row in rows]


def _half_blocks(upper: tuple[str, ...], lower: tuple[str, ...], colours: Mapping[str, str]) -> str:
    cells = []
    for above, below in zip(upper, lower, strict=True):
        over, under = ((_rgb(colours[fabric]) if fabric else None) for fabric in (above, below))
        if over is None and under is None:
            cells.append(f"{RESET} ")
        elif over is None or under is None:
            red, green, blue = over or under or (0, 0, 0)
            cells.append(f"{RESET}\x1b[38;2;{red};{green};{blue}m{'▀' if under is None else '▄'}")
        else:
            cells.append("\x1b[38;2;{};{};{};48;2;{};{};{}m▀".format(*over, *under))
    return "".join(cells) + RESET


def _on_colour(letter: str, colour: str) -> str:
    if not colour:
        return f"{RESET} "
    red, green, blue = _rgb(colour)
    near = min(range(8), key=lambda n: sum((a - b) ** 2 for a, b in zip(EIGHT[n], (red, green, blue), strict=True)))
    return f"\x1b[{30 if near in (2, 3, 6, 7) else 37};{40 + near}m{letter}"


def _rgb(colour: str) -> tuple[int, int, int]:
    return int(colour[1:3], 16), int(colour[3:5], 16), int(colour[5:7], 16)


def _letters(block: "Block") -> dict[str, str]:
    """Give each fabric a letter of its own name where it can have one; the background is a dot."""
    letters = {"": " "}
    spare = [*"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz"]
    for fabric in block.fabrics:
        if fabric.role == "background" and "." not in letters.values():
            letters[fabric.id] = "."
            continue
        own = [sign for sign in fabric.id.upper() if sign in spare]
        letters[fabric.id] = (own or spare or ["?"])[0]
        if letters[fabric.id] in spare:
            spare.remove(letters[fabric.id])
    return letters


def _lines(one: Listed, facts: Facts) -> Iterator[str]:
    unit = LengthUnit(facts.unit)
    yield f"{one.entry.name}: {facts.title}"
    yield f"{_count(facts.patches, 'patch', 'patches')}, {_count(facts.seams, 'seam', 'seams')}"
    yield f"{facts.shape}, finished {shown_size((facts.width, facts.height), unit)}"
    yield facts.difficulty + (f": {', '.join(facts.because)}" if facts.because else "")
    yield (
        ", ".join(part for part in (f"by {facts.author}" if facts.author else "", facts.licence) if part) or "no credit"
    )
    yield facts.source
    yield f"from {one.entry.shelf.origin}"


def _card(picture: list[str], lines: list[str]) -> str:
    pairs = zip_longest(picture, (printable(line) for line in lines if line), fillvalue="")
    return "".join(f"{left}  {right}".rstrip(" ") + "\n" for left, right in pairs)


def _count(count: int, one: str, many: str) -> str:
    return f"{count} {one if count == 1 else many}"
