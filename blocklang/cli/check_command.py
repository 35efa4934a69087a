"""`blocklang check`: whether block files are right."""

import click

from blocklang.cli.checking import check_files
from blocklang.cli.choices import block_options, complete_blocks, overrides_from


@click.command("check")
@click.argument("files", nargs=-1, required=True, metavar="FILE...", shell_complete=complete_blocks)
@block_options
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "short", "json"]),
    default="text",
    help="Messages at length, one line each for editors, or as JSON for programs.",
)
def command(files: tuple[str, ...], size: str | None, fabrics: tuple[str, ...], form: str) -> int:
    """Say whether block files are right.

    Each file is read, every mistake is shown with its place, and the patches are checked for gaps and overlaps.
    """
    return check_files(files, overrides_from(size, fabrics), form)
