"""`blocklang check`: whether block files are right."""

import click

from blocklang.cli.choices import block_options, complete_blocks, overrides_from
from blocklang.cli.showing import exit_code, show
from blocklang.cli.walking import Walk
from blocklang.cli.writing import print_text
from blocklang.diagnostics import Diagnostic


@click.command("check")
@click.argument("files", nargs=-1, required=True, metavar="FILE...", shell_complete=complete_blocks)
@block_options
@click.option("--format", "form", type=click.Choice(["text", "json"]), default="text", help="Messages as text or JSON.")
def command(files: tuple[str, ...], size: str | None, fabrics: tuple[str, ...], form: str) -> int:
    """Say whether block files are right.

    Each file is read, every mistake is shown with its place, and the patches are checked for gaps and overlaps.
    """
    walk, found = Walk(), list[Diagnostic]()
    overrides = overrides_from(size, fabrics)
    for file in files:
        diagnostics = walk.check(file, overrides).diagnostics
        found += diagnostics
        if form == "text" and not exit_code(diagnostics):
            print_text(f"{file}: fine")
    if form == "text":
        return show(walk.all_of(tuple(found)))
    from blocklang.diagnostics import render_json

    print_text(render_json(walk.all_of(tuple(found))))
    return exit_code(found)
