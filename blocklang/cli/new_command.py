"""`blocklang new`: a small block file to start from, or the folder of a plugin."""

import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import click

from blocklang.cli.failing import say
from blocklang.library import SUFFIX

if TYPE_CHECKING:
    from blocklang.cli.starting.choosing import Ask, Typed

PLUGIN = "plugin"


@click.command("new")
@click.argument("words", metavar="NAME", nargs=-1, required=True)
@click.option("--title", metavar="TEXT", help="The title of the block; else it is made of NAME.")
@click.option("--start", metavar="START", help="What to start from: nine-patch, four-patch, star, pinwheel, log-cabin, "
              "bars or cut-square.")  # fmt: skip
@click.option("--size", metavar="LENGTH", help="The finished size, such as 12in or 30cm.")
@click.option(
    "--fabric",
    "fabrics",
    metavar="FABRIC",
    multiple=True,
    help="A fabric: a name of the palette, or NAME ROLE VALUE #COLOUR. Two to four times, the background first.",
)
@click.option("--by", "author", metavar="TEXT", help="Who drafted it.")
@click.option("--licence", metavar="TEXT", help="What others may do with it, such as CC-BY-4.0.")
@click.option("--no-questions", is_flag=True, help="Ask nothing; what no option says is as usual.")
def command(
    words: tuple[str, ...], title: str | None, start: str | None, size: str | None, fabrics: tuple[str, ...],
    author: str | None, licence: str | None, no_questions: bool,
) -> int:  # fmt: skip
    """Start a new block file NAME.block, or with `plugin NAME` the folder of a new plugin.

    At a terminal it asks for what no option says.
    """
    from blocklang.cli.starting.choosing import Typed

    typed = Typed(title, start, size, fabrics, author, licence)
    if words[0] == PLUGIN:
        return _plugin(words[1:], typed)
    if len(words) > 1:
        raise click.UsageError(f"A new file has one name: write `{'-'.join(words)}`.")
    path = Path(words[0] if words[0].endswith(SUFFIX) else f"{words[0]}{SUFFIX}")
    return _block(path, typed, None if no_questions else asker())


def asker() -> "Ask | None":
    """Return a way to ask the person at the terminal; None when there is none."""
    if not at_a_terminal():
        return None

    def ask(question: str, usual: str) -> str:
        answer: str = click.prompt(question, default=usual, show_default=bool(usual), type=str)
        return answer

    return ask


def at_a_terminal() -> bool:
    """Say whether somebody can read a question and type an answer."""
    return all(stream is not None and stream.isatty() for stream in (sys.stdin, sys.stdout))


def _block(path: Path, typed: "Typed", ask: "Ask | None") -> int:
    from blocklang.cli.starting.answers import Answers, write_block
    from blocklang.cli.starting.choosing import choose
    from blocklang.cli.starting.creating import create_file, refuse_if_there

    refuse_if_there(path)
    answers = choose(Answers(title_of(path)), typed, ask, click.echo)
    create_file(path, write_block(answers).encode())
    say(f"Wrote {path}. `blocklang check {path}` says whether it is right.")
    return 0


def _plugin(names: tuple[str, ...], typed: "Typed") -> int:
    from blocklang.cli.starting.choosing import Typed

    if len(names) != 1:
        raise click.UsageError(
            f"`blocklang new plugin NAME` starts a plugin; for a block of that name write `blocklang new plugin{SUFFIX}`."
        )
    if typed != Typed():
        raise click.UsageError("Title, start, size, fabrics, author and licence are for a new block, not for a plugin.")
    from blocklang.cli.starting.plugin_folder import create_plugin

    folder = create_plugin(names[0])
    say(f"Wrote {folder}. `pip install -e {folder}` installs it, `pytest {folder}` tests it.")
    return 0


def title_of(path: Path) -> str:
    """Return a title made of the file's name; only what can stand between quotes on a line."""
    words = re.sub(r"[\W_]+", " ", path.name.removesuffix(SUFFIX)).strip()
    return words[:60].title() or "New Block"
