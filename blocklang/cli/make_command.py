"""`blocklang make`: sheets, lists and pictures of one block or many, written where the person says."""

from typing import Any

import click

from blocklang.cli.asked import Asked, Errand
from blocklang.cli.choices import block_options, complete_blocks, complete_outputs, plan_options


@click.command("make")
@click.argument("output", shell_complete=complete_outputs)
@click.argument("files", metavar="[FILE...]", nargs=-1, shell_complete=complete_blocks)
@click.option("-o", "place", required=True, metavar="PATH", help="Where to write it; a folder for several results.")
@click.option("-f", "--format", "form", metavar="FORMAT", help="Such as pdf or svg; else the ending of PATH decides.")
@block_options
@plan_options
@click.option("--paper", type=click.Choice(["letter", "a4"]), default="letter", show_default=True, help="Paper size.")
@click.option("--black-and-white", is_flag=True, help="Tell fabrics apart without colour.")
@click.option("--large-print", is_flag=True, help="Set the words larger.")
@click.option(
    "--language", metavar="CODE", default="en", show_default=True, help="The language of the words, such as es."
)
@click.option("--set", "settings", metavar="NAME=VALUE", multiple=True, help="Something only some outputs can do.")
@click.option("--force", is_flag=True, help="In a folder, write over files that are there already.")
@click.option("--processes", type=click.IntRange(1, 64), help="How many processes work at once on many blocks.")
@click.option(
    "--watch", is_flag=True, help="Make it again whenever a file is saved, and say what changed; Ctrl-C ends."
)
def command(
    output: str, files: tuple[str, ...], place: str, form: str | None, settings: tuple[str, ...], force: bool,
    processes: int | None, watch: bool, **typed: Any,
) -> int:  # fmt: skip
    """Make OUTPUT from FILE: a sheet to sew from, a cutting list, a picture; a handout from several.

    `blocklang outputs` lists what OUTPUT can be. Write several with commas (diagram,templates), each with its format behind
    a dot if you like (diagram.png). Several results go into the folder PATH, each named after its block. A folder or a
    pack as FILE means all blocks in it. With -o - the result goes to standard output.
    """
    from blocklang.cli.errands import carry_out

    return carry_out(Errand(Asked(**typed), output, files, place, form, settings, force, processes, watch))
