"""`blocklang library`: the blocks there are, and where each comes from."""

from dataclasses import asdict, dataclass
from typing import TYPE_CHECKING

import click

from blocklang.cli.choices import overrides_from
from blocklang.cli.failing import say
from blocklang.cli.showing import show
from blocklang.cli.walking import Walk
from blocklang.cli.writing import print_text
from blocklang.library import Entry

if TYPE_CHECKING:
    from blocklang.block import Block


@dataclass(frozen=True, slots=True)
class Listed:
    """One line of the list; a file with mistakes has only its name and place."""

    name: str
    title: str
    family: str
    patches: int
    size: str
    author: str
    licence: str
    origin: str
    path: str

    def has(self, word: str) -> bool:
        """Say whether a word stands somewhere in what a person would look for."""
        return any(word in text.lower() for text in (self.name, self.title, self.family, self.author))


@click.command("library")
@click.argument("words", nargs=-1)
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="For people or programs.")
def command(words: tuple[str, ...], form: str) -> int:
    """List the blocks of the library; with WORDS, only those that have all of them.

    A name is looked for in blocklang's own blocks, then in the folders listed in BLOCKLANG_LIBRARY, then in those of
    plugins; the first that has it wins.
    """
    walk = Walk()
    everything = [_listed(entry, walk) for _, entry in sorted(walk.library.everything().items())]
    found = [one for one in everything if all(one.has(word.lower()) for word in words)]
    if form == "json":
        import json

        print_text(json.dumps([asdict(one) for one in found], indent=2, ensure_ascii=False))
    else:
        _print_table(found)
        if not found:
            say("No block has all of those words." if words else "The library is empty.")
    return show(walk.plugged.diagnostics)


def _listed(entry: Entry, walk: Walk) -> Listed:
    block = walk.draft(entry.name, overrides_from(None, ())).block
    place = (entry.shelf.origin, str(entry.path))
    if block is None:
        return Listed(entry.name, "(has mistakes)", "", 0, "", "", "", *place)
    return _from_block(entry.name, block, place)


def _from_block(name: str, block: "Block", place: tuple[str, str]) -> Listed:
    from blocklang.cli.lengths import shown_size

    author, licence = (block.credits[0].author, block.credits[0].licence) if block.credits else ("", "")
    size = shown_size(block.size, block.unit)
    return Listed(name, block.name, block.family, len(block.patches), size, author, licence, *place)


def _print_table(found: list[Listed]) -> None:
    rows = [(one.name, one.title, one.family, f"{one.patches} patches", one.size, one.origin) for one in found]
    widths = [max(len(row[column]) for row in rows) for column in range(6)] if rows else []
    for row in rows:
        print_text("  ".join(text.ljust(width) for text, width in zip(row, widths, strict=True)).rstrip())
