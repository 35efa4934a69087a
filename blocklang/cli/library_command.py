"""`blocklang library`: the blocks there are, where each comes from, and those that a person asks for."""

from dataclasses import asdict
from functools import cache
from typing import TYPE_CHECKING

import click

from blocklang.block import LengthUnit
from blocklang.catalogue.difficulty import Difficulty
from blocklang.catalogue.searching import ANYTHING, Asked, Range, Refused, read_range, read_sizes
from blocklang.catalogue.shapes import SHAPES
from blocklang.cli.cataloguing import Listed, catalogue
from blocklang.cli.failing import say
from blocklang.cli.lengths import shown, shown_size
from blocklang.cli.showing import show
from blocklang.cli.walking import Walk
from blocklang.cli.writing import print_text
from blocklang.diagnostics.snippets import printable

if TYPE_CHECKING:
    from blocklang.catalogue.facts import Facts

NUMBER = "NUMBER"


@click.command("library")
@click.argument("words", nargs=-1)
@click.option("--family", help="Only of this family, such as stars.")
@click.option("--shape", type=click.Choice(SHAPES), help="Only of this outline.")
@click.option("--difficulty", type=click.Choice([level.value for level in Difficulty]), help="Only this hard to sew.")
@click.option("--size", metavar="LENGTH", help="Only of this finished size on the longer side: 12in, ..9in, 6in..9in.")
@click.option("--patches", metavar=NUMBER, help="Only with so many patches: 9, ..40, 20.., 9..16.")
@click.option("--set-in", metavar=NUMBER, help="Only with so many set-in seams: no, some, ..4.")
@click.option("--partial", metavar=NUMBER, help="Only with so many partial seams: no, some, 1.")
@click.option("--curved", metavar=NUMBER, help="Only with so many curved seams: no, some, 4..16.")
@click.option("--picture", is_flag=True, help="Show a small picture of each, how hard it is, and why.")
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="For people or programs.")
def command(
    words: tuple[str, ...], family: str | None, shape: str | None, difficulty: str | None, size: str | None,
    patches: str | None, set_in: str | None, partial: str | None, curved: str | None, picture: bool, form: str,
) -> int:  # fmt: skip
    """List the blocks of the library; with WORDS and options, only those that fit all of them.

    A name is looked for in blocklang's own blocks, then in the folders and packs listed in BLOCKLANG_LIBRARY, then in
    those of plugins; the first that has it wins.
    """
    asked = Asked(
        tuple(word.lower() for word in words), family or "", shape or "", difficulty or "",
        _understood("--size", size, read_sizes(size) if size is not None else ANYTHING),
        *(
            _understood(option, text, read_range(text) if text is not None else ANYTHING)
            for option, text in (("--patches", patches), ("--set-in", set_in), ("--partial", partial), ("--curved", curved))
        ),
    )  # fmt: skip
    walk = Walk()
    found = [one for one in catalogue(walk) if _fits(one, asked)]
    if form == "json":
        import json

        print_text(json.dumps([as_json(one) for one in found], indent=2, ensure_ascii=False))
    elif picture:
        from blocklang.cli.cards import cards

        for card in cards(found, walk):
            print_text(card)
    else:
        _print_table(found)
    if not found and form != "json":
        say(_nothing_found(asked))
    return show(walk.all_of(()))


def _understood(option: str, text: str | None, read: Range | Refused) -> Range:
    if isinstance(read, Refused):
        raise click.UsageError(f"`{option} {text}`: {read.found}")
    return read


def _fits(one: Listed, asked: Asked) -> bool:
    if one.facts is None:
        return asked.only_words and asked.has_words(one.entry.name)
    return asked.fits(one.entry.name, one.facts)


def _nothing_found(asked: Asked) -> str:
    if asked == Asked():
        return "The library is empty."
    return "No block has all of those words." if asked.only_words else "No block is all of that."


def as_json(one: Listed) -> dict[str, object]:
    """Return what is known of a block as JSON values; lengths as text, as on a ruler."""
    told: dict[str, object] = {"name": one.entry.name, "title": "(has mistakes)", "patches": 0}
    if one.facts is not None:
        told |= asdict(one.facts) | {"size": _size(one.facts), "smallest": _smallest(one.facts)}
        del told["width"], told["height"]
    return told | {"origin": one.entry.shelf.origin, "path": str(one.entry.path)}


def _print_table(found: list[Listed]) -> None:
    rows = [_row(one) for one in found]
    widths = [max(len(row[column]) for row in rows) for column in range(len(rows[0]))] if rows else []
    form = "  ".join(f"%-{width}s" for width in widths)
    if rows:
        print_text("\n".join(printable(form % row).rstrip() for row in rows))


def _row(one: Listed) -> tuple[str, ...]:
    name, origin, facts = one.entry.name, one.entry.shelf.origin, one.facts
    if facts is None:
        return name, "(has mistakes)", "", "", "", "", origin
    patches = f"{facts.patches} {'patch' if facts.patches == 1 else 'patches'}"
    return name, facts.title, facts.family, patches, _size(facts), facts.difficulty, origin


def _size(facts: "Facts") -> str:
    return _shown_size(facts.width, facts.height, facts.unit)


@cache  # thousands of blocks have the same few sizes
def _shown_size(width: int, height: int, unit: str) -> str:
    return shown_size((width, height), LengthUnit(unit))


def _smallest(facts: "Facts") -> str:
    return shown(facts.smallest, LengthUnit(facts.unit))
