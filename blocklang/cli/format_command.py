"""`blocklang format`: one tidy layout for every block file."""

from pathlib import Path

import click

from blocklang.cli.choices import complete_blocks
from blocklang.cli.failing import FILE_FAULT, FINE, CommandFault, say
from blocklang.cli.opening import STDIN, leads_into_a_pack, open_block
from blocklang.cli.showing import show
from blocklang.cli.walking import Walk
from blocklang.cli.writing import print_text, write_files
from blocklang.diagnostics import SourceText


@click.command("format")
@click.argument("files", nargs=-1, required=True, metavar="FILE...", shell_complete=complete_blocks)
@click.option("--check", "only_check", is_flag=True, help="Change nothing; only say which files would change.")
def command(files: tuple[str, ...], only_check: bool) -> int:
    """Give block files their one tidy layout.

    What a file means never changes, and a file with mistakes is left alone. With - as FILE the text is read from
    standard input and written to standard output.
    """
    walk = Walk()
    return max(_format(file, walk, only_check) for file in files)


def _format(file: str, walk: Walk, only_check: bool) -> int:
    from blocklang.language import format_text

    source = open_block(file, walk.library)
    if not isinstance(source, SourceText):
        return show(source)
    if leads_into_a_pack(Path(source.name)):
        raise CommandFault(f"`{source.name}` lies in a pack, which is never changed: unpack it first.")
    text, diagnostics = format_text(source)
    if text is None:
        return show(diagnostics)
    if file == STDIN:
        print_text(text)
    elif Path(source.name).read_bytes() != text.encode():
        if only_check:
            say(f"{source.name} would change")
            return FILE_FAULT
        write_files({Path(source.name): text.encode()})
        say(f"{source.name}: laid out")
    return FINE
